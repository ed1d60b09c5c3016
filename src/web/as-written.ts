import { amount } from '../core/facts/common.js';
import { exact } from '../core/quantity/amount.js';

/** Fields that hold an exact figure, which may be written in several ways: 5/2 and 2.5. */
const figures = new Set([
  'amount',
  'amountTo',
  'portions',
  'cookingLoss',
  'portionsPerShelf',
  'pan',
  'litres',
  'diameter',
  'side',
  'length',
  'width',
  'hole',
  'depth',
  'yield',
  'gramsPerMl',
  'grams',
  'ratio',
]);

/** A document as changed, where a figure that is the same as before keeps the way in which it was written. */
export const asWritten = <T>(before: unknown, after: T): T => {
  if (Array.isArray(after)) return after.map((row) => asWritten(counterpart(before, row), row)) as T;
  if (typeof after !== 'object' || after === null || typeof before !== 'object' || before === null)
    return after;
  const was = before as Record<string, unknown>;
  return Object.fromEntries(
    Object.entries(after).map(([name, value]) => [
      name,
      figures.has(name) && isSame(was[name], value) ? was[name] : asWritten(was[name], value),
    ]),
  ) as T;
};

const counterpart = (before: unknown, row: unknown): unknown => {
  const name = (one: unknown) => {
    const { key, unit, name } = (one ?? {}) as { key?: unknown; unit?: unknown; name?: unknown };
    return key ?? unit ?? name;
  };
  return Array.isArray(before) ? before.find((one) => name(one) === name(row)) : undefined;
};

const isSame = (before: unknown, after: unknown): boolean =>
  typeof before === 'string' &&
  typeof after === 'string' &&
  amount.safeParse(before).success &&
  amount.safeParse(after).success &&
  exact(before).equals(exact(after));
