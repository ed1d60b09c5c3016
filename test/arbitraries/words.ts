import fc from 'fast-check';

export const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: null });

export const keptWords = (maxLength: number) =>
  fc.string({ unit: 'grapheme', maxLength }).filter((text) => !text.includes('\0') && !/\p{Cs}/u.test(text));

export const title = keptWords(20).filter((text) => text.trim() !== '' && text.trim().length <= 60);

export const anyKey = fc.stringMatching(/^[a-z0-9][a-z0-9-]{0,12}$/).filter((key) => key !== 'new');

export const keysOf = (max: number) => fc.uniqueArray(anyKey, { maxLength: max });

export const anyAmount: fc.Arbitrary<string> = fc.oneof(
  fc.integer({ min: 1, max: 999_999 }).map(String),
  fc.tuple(fc.nat(9999), fc.integer({ min: 1, max: 999 })).map(([whole, part]) => `${whole}.${part}`),
  fc.tuple(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 1, max: 99 })).map(([n, d]) => `${n}/${d}`),
);

const measuredIn = (...units: string[]) => fc.record({ amount: anyAmount, unit: fc.constantFrom(...units) });

export const anyWeight = measuredIn('g', 'kg', 'oz');
export const anyVolume = measuredIn('ml', 'l', 'cup');
export const anyMeasure = fc.oneof(anyWeight, anyVolume, measuredIn('each', 'clove'));

export const anyDate = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2035-12-31'), noInvalidDate: true })
  .map((day) => day.toISOString().slice(0, 10));

export const anyClock = fc
  .tuple(fc.nat(23), fc.nat(59))
  .map((parts) => parts.map((n) => String(n).padStart(2, '0')).join(':'));

export const anyMinutes = fc.nat(2000);

export const anyMoney = fc.nat(10_000_000);

export const span = fc
  .uniqueArray(anyClock, { minLength: 2, maxLength: 2 })
  .map((two) => two.toSorted())
  .map(([from, to]) => ({ from, to }));

export const origin = fc.constantFrom('own', 'example');

export const rowsWith = <T>(keys: readonly string[], row: fc.Arbitrary<T>) =>
  fc.tuple(...keys.map((key) => row.map((fields) => ({ key, ...fields })))) as fc.Arbitrary<
    (T & { key: string })[]
  >;

export const keyed = <T>(max: number, row: fc.Arbitrary<T>) =>
  keysOf(max).chain((keys) => rowsWith(keys, row));

export type There = { ingredients: readonly string[]; recipes: readonly string[]; places: readonly string[] };
