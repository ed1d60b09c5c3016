import fc from 'fast-check';
import { amount } from '../../src/core/facts/common.js';
import { scalings } from '../../src/core/facts/recipe.js';
import { Rational } from '../../src/core/quantity/rational.js';
import { anyAmount, keptWords, keyed, maybe, type There } from './words.js';

type Written = { amount: string | null; amountTo?: string | null; unit?: string; scales?: string };

/** Lines of every kind that can be saved; none where there is nothing to name. */
export const anyLines = (there: There) => {
  const item = anyItem(there);
  if (!item) return fc.constant([]);
  const kinds: fc.Arbitrary<Written>[] = [measured(item), toTaste(item), shares(item)];
  const food = anyItem({ ...there, recipes: [] });
  if (food) kinds.push(cooked(food));
  return keyed(6, fc.oneof(...kinds)).map(withOneFlour);
};

const anyItem = ({ ingredients, recipes }: There): fc.Arbitrary<object> | undefined => {
  const items = [
    ...ingredients.map((key) => ({ ingredient: key })),
    ...recipes.map((key) => ({ component: key })),
  ];
  return items.length === 0 ? undefined : fc.constantFrom(...items);
};

const ways = fc.constantFrom('roasted', 'Boiled');

const measured = (item: fc.Arbitrary<object>) =>
  fc
    .record({
      amount: anyAmount,
      more: maybe(anyAmount),
      unit: fc.constantFrom('g', 'ml', 'each'),
      item,
      preparation: keptWords(20),
      stated: fc.constantFrom('usual', 'prepared', 'bought'),
      cooked: fc.oneof(fc.constant(''), ways),
      scales: fc.constantFrom(...scalings),
    })
    .map(upTo);

const cooked = (item: fc.Arbitrary<object>) =>
  fc
    .record({
      amount: anyAmount,
      more: maybe(anyAmount),
      unit: fc.constantFrom('g', 'kg', 'oz'),
      item,
      stated: fc.constant('cooked'),
      cooked: ways,
    })
    .map(upTo);

const toTaste = (item: fc.Arbitrary<object>) =>
  fc.record({ amount: maybe(anyAmount), item, scales: fc.constant('taste') });

const shares = (item: fc.Arbitrary<object>) =>
  fc.record({ amount: anyAmount, more: maybe(anyAmount), unit: fc.constant('percent'), item }).map(upTo);

/** A range goes up from its amount; its end is kept where the store keeps such a figure. */
const upTo = <T extends { amount: string; more: string | null }>({ more, ...line }: T) => {
  const end = more && Rational.parse(line.amount).plus(Rational.parse(more)).toString();
  return { ...line, amountTo: end && amount.safeParse(end).success ? end : null };
};

/** What others are a per cent of is no range. */
const withOneFlour = <T extends Written>(lines: T[]): T[] =>
  lines.some(({ unit }) => unit === 'percent')
    ? lines.map((line) => (line.scales === 'flour' ? { ...line, amountTo: null } : line))
    : lines;
