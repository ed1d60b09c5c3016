import { addDays } from '../../core/calendar.js';
import type { Cancellation, Discount } from '../../core/facts/price.js';
import { type Due, type Offer, type Option, offer as offerType } from '../../core/facts/quote.js';
import { isRead, type Read, readDay, readMoney, readPercent, readWhole } from '../../core/reading.js';
import { duesFault } from '../../core/rules/quote.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { nextKey } from '../keys.js';
import { typedAmount } from '../typed.js';
import { readMenu } from './menu-words.js';

/** What a form of a draft makes of its offer; faults are noted. What the form does not show stays as it stood. */
export const readOffer = (reading: Reading, stood: Offer): Offer => {
  const dayIn = (name: string, label: string) =>
    reading.maybe(name, label, (typed) => readDay(typed, addDays(stood.when, -183)));
  const when = dayIn('when', 'Day of the party');
  if (when === null && reading.text('when') === '')
    reading.refuse('when', 'Day of the party', 'Enter the day, such as 4 Dec or 2026-12-04.');
  const offer: Offer = {
    ...stood,
    title: reading.words('title', 'The party', 'Say what the party is: Silver wedding buffet.'),
    client: reading.text('client'),
    when: when ?? stood.when,
    place: reading.text('place'),
    serve: reading.text('serve'),
    guests: reading.take(
      'guests',
      'Guests',
      (typed) => readWhole(typed, 'the number of guests', 0, 100_000),
      0,
    ),
    options: readOptions(reading, stood),
    terms: {
      ...stood.terms,
      included: reading.text('included'),
      guestNumbers: reading.text('guestNumbers'),
      allergies: reading.words(
        'allergies',
        'Allergies',
        'Say what holds for allergies: a client must find it on the quote.',
      ),
      more: reading.text('more'),
      fewerPercent: percentIn(reading, 'fewerPercent', 'Fewer guests', stood.terms.fewerPercent),
      cancellation: readCancellation(reading, stood),
    },
    validUntil: dayIn('validUntil', 'Open until'),
    finalCount: dayIn('finalCount', 'Final number by'),
    dues: readDues(reading, stood, dayIn),
  };
  return reading.faults.length === 0 ? fitting(reading, offer, stood) : offer;
};

const readOptions = (reading: Reading, stood: Offer): Option[] => {
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
    tiers: filled(reading, `${at}.tiers`, ['from', 'each'], (tier) => ({
      from: reading.take(`${tier}.from`, 'From', (typed) => readWhole(typed, 'from how many', 1, 100_000), 1),
      each: reading.take(`${tier}.each`, 'Price a guest', (typed) => readMoney(typed, currency), 0),
    })).sort((a, b) => a.from - b.from),
    minimum: money(`${at}.minimum`, 'The least it comes to'),
    discount: reading.maybe(`${at}.discount`, 'Taken off', (typed) =>
      readDiscount(typed, currency, known?.discount ?? null),
    ),
    discountFor: reading.text(`${at}.discountFor`),
  };
};

/** Rows in which something was typed, in their order. */
const filled = <T>(reading: Reading, at: string, names: string[], read: (row: string) => T): T[] =>
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

/** A per cent; one that still says what it was drawn with stays exactly as it was kept. */
const percentIn = (
  reading: Reading,
  name: string,
  label: string,
  stood: string | null | undefined,
): string | null =>
  stood && typedAmount(stood) === reading.text(name)
    ? stood
    : reading.maybe(name, label, (typed) => readPercent(typed, 'the share'));

const readDues = (
  reading: Reading,
  stood: Offer,
  dayIn: (name: string, label: string) => string | null,
): Due[] => {
  const dues = filled(reading, 'dues', ['words', 'percent', 'date'], (due) => ({
    words: reading.words(`${due}.words`, 'What is due', 'Say what it is called: deposit, balance.'),
    percent: percentIn(reading, `${due}.percent`, 'Share', shareOf(reading, due, stood)),
    date: dayIn(`${due}.date`, 'Due on'),
  }));
  const unread = reading.faults.some(({ field }) => field.startsWith('dues['));
  const wrong = unread ? '' : duesFault(dues);
  if (wrong !== '') reading.refuse('dues[0].percent', 'What is due', wrong);
  return dues;
};

const shareOf = (reading: Reading, due: string, { dues }: Offer) =>
  dues.find(({ words }) => words === reading.text(`${due}.words`))?.percent;

const readCancellation = (reading: Reading, { terms }: Offer): Cancellation[] =>
  filled(reading, 'cancellation', ['days', 'percent'], (row) => ({
    days: reading.take(`${row}.days`, 'Days before', (typed) => readWhole(typed, 'the days', 0, 3650), 0),
    percent: reading.take(
      `${row}.percent`,
      'Owed',
      (typed) => {
        const known = terms.cancellation.find(({ percent }) => typedAmount(percent) === typed.trim());
        return known ? { value: known.percent } : readPercent(typed, 'what is owed');
      },
      '0',
    ),
  }));

/** Refuses what is longer, or more, than can be kept. */
const fitting = (reading: Reading, offer: Offer, stood: Offer): Offer => {
  const parsed = offerType.safeParse(offer);
  if (parsed.success) return parsed.data;
  for (const { path, code, ...issue } of parsed.error.issues) {
    const most = code === 'too_big' && 'maximum' in issue ? ` It takes at most ${issue.maximum}.` : '';
    reading.refuse(fieldAt(path), labelAt(path), `This is more than can be kept here.${most}`);
  }
  return stood;
};

/** "terms/included" is the field "included", a dish of a menu the menu's. */
const fieldAt = (path: readonly PropertyKey[]): string => {
  const [first, ...rest] = path[0] === 'terms' ? path.slice(1) : path;
  const menu = rest.indexOf('menu');
  const shown = menu < 0 ? rest : rest.slice(0, menu + 1);
  return [first, ...shown]
    .map((step, i) => (typeof step === 'number' ? `[${step}]` : i === 0 ? String(step) : `.${String(step)}`))
    .join('');
};

const labelAt = (path: readonly PropertyKey[]): string => {
  const last = String(path.findLast((step) => typeof step === 'string') ?? '');
  return last.charAt(0).toUpperCase() + last.slice(1);
};
