import type { Discount } from '../../core/facts/price.js';
import type { Offer, Option } from '../../core/facts/quote.js';
import { isRead, type Read, readMoney, readPercent, readWhole } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { nextKey } from '../keys.js';
import { typedAmount } from '../typed.js';
import { readMenu } from './menu-words.js';

/** The menus of a draft with their prices, each under the key it had. */
export const readOptions = (reading: Reading, stood: Offer): Option[] => {
  const taken = [...stood.options.map(({ key }) => key), ...rows(reading.form, 'options').map(keyOf)];
  return rows(reading.form, 'options').map((row, i) => {
    const key = keyOf(row) || nextKey('o', taken);
    taken.push(key);
    return readOption(reading, `options[${i}]`, key, stood);
  });
};

const keyOf = (row: Form): string => text(row, 'key');

const readOption = (reading: Reading, at: string, key: string, { currency, options }: Offer): Option => {
  const money = (name: string, label: string) =>
    reading.maybe(name, label, (typed) => readMoney(typed, currency));
  const known = options.find((option) => option.key === key);
  return {
    key,
    name: reading.text(`${at}.name`),
    menu: readMenu(reading.text(`${at}.menu`)),
    lines: filled(reading, `${at}.lines`, ['count', 'words', 'each'], (line) => ({
      words: reading.words(`${line}.words`, 'What is sold', 'Say what it is for: guests, children to 12.'),
      count: reading.take(
        `${line}.count`,
        'How many',
        (typed) => readWhole(typed, 'how many', 0, 100_000),
        0,
      ),
      each: reading.take(`${line}.each`, 'Price each', (typed) => readMoney(typed, currency), 0),
    })),
    tiers: readTiers(reading, `${at}.tiers`, currency),
    minimum: money(`${at}.minimum`, 'The least it comes to'),
    discount: reading.maybe(`${at}.discount`, 'Taken off', (typed) =>
      readDiscount(typed, currency, known?.discount ?? null),
    ),
    discountFor: reading.text(`${at}.discountFor`),
  };
};

/** Prices by head-count, the fewest first; two from the same one are refused. */
const readTiers = (reading: Reading, at: string, currency: string): Option['tiers'] => {
  const seen = new Set<number>();
  return filled(reading, at, ['from', 'each'], (tier) => {
    const from = reading.take(
      `${tier}.from`,
      'From',
      (typed) => readWhole(typed, 'from how many', 1, 100_000),
      1,
    );
    if (seen.has(from))
      reading.refuse(`${tier}.from`, 'From', `There are two prices from ${from} guests: keep one.`);
    seen.add(from);
    return {
      from,
      each: reading.take(`${tier}.each`, 'Price a guest', (typed) => readMoney(typed, currency), 0),
    };
  }).sort((a, b) => a.from - b.from);
};

/** Rows in which something was typed, in their order. */
export const filled = <T>(reading: Reading, at: string, names: string[], read: (row: string) => T): T[] =>
  rows(reading.form, at).flatMap((_, i) => {
    const row = `${at}[${i}]`;
    return names.some((name) => reading.text(`${row}.${name}`) !== '') ? [read(row)] : [];
  });

const readDiscount = (typed: string, currency: string, stood: Discount | null): Read<Discount> => {
  if (!typed.includes('%')) {
    const off = readMoney(typed, currency);
    return isRead(off) ? { value: { off: off.value } } : off;
  }
  const read = readPercent(typed, 'what is taken off');
  if (!isRead(read)) return read;
  const same = stood && 'percent' in stood && typedAmount(stood.percent) === typed.replace('%', '').trim();
  return { value: same ? stood : { percent: read.value } };
};
