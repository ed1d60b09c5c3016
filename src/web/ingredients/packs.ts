import { costsMoved } from '../../core/costs-moved.js';
import type { Ingredient, Pack, Price } from '../../core/facts/ingredient.js';
import { costsWith } from '../../core/kitchen-costs.js';
import { labelForgotten, labelInDoubt, labelReadAgain } from '../../core/label-again.js';
import { minorDigits } from '../../core/money.js';
import { Rational } from '../../core/quantity/rational.js';
import { readMoney } from '../../core/reading.js';
import { readPastDay, typedDay } from '../../core/reading-days.js';
import { readMeasure } from '../../core/reading-measures.js';
import { asWritten } from '../as-written.js';
import { costsNow, movedInWords } from '../costs.js';
import { Reading } from '../faults.js';
import { type Form, rows, text, texts } from '../form.js';
import { formatFor } from '../format.js';
import { keyFrom } from '../keys.js';
import { rowsChanged } from '../rows.js';
import { typedMeasure } from '../typed.js';
import type { At, Part } from './part.js';

export type OldPrice = { key: string; words: string };
export type PacksAround = {
  currency: string;
  money: string;
  /** The prices of each pack of the form, newest first. */
  prices: OldPrice[][];
  /** How many statements of the label the change puts in doubt. */
  doubt: number;
  /** Which recipes' costs the form would move, once that is asked. */
  moves: string;
};

/** What is bought, from whom, at what price. */
export const packs: Part<PacksAround> = {
  name: 'packs',
  title: 'Packs and prices',
  button: 'Save packs and prices',
  form: (doc, { today }) => ({
    packs: doc.packs.length > 0 ? doc.packs.map((pack) => packForm(pack, today)) : [emptyPack(today)],
    preferred: String(doc.packs.findIndex(({ preferred }) => preferred)),
  }),
  press: (form, _doc, { today }) => {
    if (text(form, 'do') === 'moves') return { form: { ...form, moves: 'asked' }, at: 'moves' };
    const changed = rowsChanged(form);
    if (!changed) return undefined;
    const all = rows(changed.form, 'packs');
    if (text(form, 'do') === 'add:packs') Object.assign(all.at(-1)!, emptyPack(today));
    return { ...changed, form: { ...changed.form, preferred: preferredAfter(form) } };
  },
  read: (reading, doc, at) => {
    const read = readPacks(reading, doc, at);
    const doubt = labelInDoubt(doc, { ...doc, packs: read });
    const label = doubt > 0 ? readDoubt(reading, doubt, at) : () => ({});
    return (before) => asWritten(before, { ...before, packs: read, ...label(before) });
  },
  around: async (doc, form, at) => {
    const { kitchen } = at;
    const f = formatFor(kitchen);
    const old = new Map(doc.packs.map(({ key, prices }) => [key, prices]));
    return {
      currency: kitchen.currency,
      money: Rational.of(340n, 100n).toFixed(minorDigits(kitchen.currency)),
      prices: rows(form, 'packs').map((row) =>
        [...(old.get(text(row, 'key')) ?? [])]
          .sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0))
          .map(({ key, date, price, guess }) => ({
            key,
            words: `${f.money(price)} on ${f.dateYear(date)}${guess ? ', a guess' : ''}`,
          })),
      ),
      doubt: text(form, 'doubt') === '' ? 0 : Number(text(form, 'doubt')),
      moves: text(form, 'moves') === '' ? '' : await movesOf(doc, form, at),
    };
  },
};

const movesOf = async (doc: Ingredient, form: Form, at: At): Promise<string> => {
  const reading = new Reading(structuredClone(form));
  const read = readPacks(reading, doc, at);
  if (reading.faults.length > 0) return 'A figure above can’t be read yet; saving says which.';
  const costs = await costsNow(at.db);
  return movedInWords(costsMoved(costs, costsWith(costs, [{ ...doc, packs: read }])), formatFor(at.kitchen));
};

const packForm = ({ key, supplier, brand, size }: Pack, today: string): Form => ({
  key,
  supplier,
  brand,
  size: typedMeasure(size),
  price: '',
  date: typedDay(today),
});

const emptyPack = (today: string): Form => ({ key: '', size: '', date: typedDay(today) });

/** Which row is preferred once a row above it is taken out. */
const preferredAfter = (form: Form): string => {
  const [what, list, place] = text(form, 'do').split(':');
  const preferred = Number(text(form, 'preferred') || -1);
  if (what !== 'out' || list !== 'packs') return String(preferred);
  if (Number(place) === preferred) return '-1';
  return String(Number(place) < preferred ? preferred - 1 : preferred);
};

const isBlank = (row: Form): boolean =>
  ['key', 'supplier', 'brand', 'size', 'price'].every((name) => text(row, name).trim() === '');

const readPacks = (reading: Reading, doc: Ingredient, at: At): Pack[] => {
  const all = rows(reading.form, 'packs');
  const preferred = text(reading.form, 'preferred');
  const filled = all.flatMap((row, i) => (isBlank(row) ? [] : [{ row, i }]));
  const taken = all.map((row) => text(row, 'key'));
  return filled.map(({ row, i }) => {
    const before = doc.packs.find(({ key }) => key === text(row, 'key'));
    const supplier = text(row, 'supplier').trim();
    const brand = text(row, 'brand').trim();
    const key = before?.key ?? keyFrom(`${supplier} ${brand}`.trim() || 'pack', (one) => taken.includes(one));
    row.key = key;
    taken.push(key);
    const label = filled.length > 1 ? `Pack ${i + 1}` : 'Pack';
    return {
      key,
      supplier,
      brand,
      code: before?.code ?? '',
      size: reading.take(`packs[${i}].size`, `${label}: size`, readMeasure, { amount: '1', unit: 'each' }),
      preferred: preferred === String(i) || (filled.length === 1 && preferred === '0'),
      prices: readPrices(reading, row, `packs[${i}]`, label, before?.prices ?? [], at),
    };
  });
};

const readPrices = (
  reading: Reading,
  row: Form,
  at: string,
  label: string,
  before: readonly Price[],
  { kitchen, today }: At,
): Price[] => {
  const wrong = texts(row, 'wrong');
  const kept = before.filter(({ key }) => !wrong.includes(key));
  const price = reading.maybe(`${at}.price`, `${label}: price`, (typed) =>
    readMoney(typed, kitchen.currency),
  );
  if (price === null) return kept;
  const date = reading.take(
    `${at}.date`,
    `${label}: day of the price`,
    (typed) => readPastDay(typed, today),
    today,
  );
  const key = keyFrom(date, (one) => before.some((other) => other.key === one));
  return [...kept, { key, date, price, guess: text(row, 'guess') === 'on' }];
};

/** What becomes of the label: the form asks, and nothing is chosen for the cook. */
const readDoubt = (reading: Reading, doubt: number, { today, who }: At) => {
  reading.form.doubt = String(doubt);
  reading.form.readOn ??= typedDay(today);
  reading.form.by ??= who;
  const chosen = reading.oneOf('relabel', ['same', 'forget'], 'ask');
  if (chosen === 'ask')
    reading.refuse(
      'relabel',
      'The label',
      'The brand, the supplier or the preferred pack changes. Choose below what that means for the label.',
    );
  const date =
    chosen === 'same'
      ? reading.take('readOn', 'Label read again on', (typed) => readPastDay(typed, today), today)
      : today;
  const by = reading.text('by');
  return (before: Ingredient) =>
    chosen === 'same' ? labelReadAgain(before, date, by) : labelForgotten(before);
};
