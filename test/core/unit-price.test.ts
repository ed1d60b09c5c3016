import { expect, test } from 'vitest';
import { pack } from '../../src/core/facts/ingredient.js';
import { unitPrice } from '../../src/core/unit-price.js';

const of = (amount: string, unit: string, ...prices: [date: string, price: number][]) =>
  pack.parse({
    key: 'p',
    size: { amount, unit },
    prices: prices.map(([date, price], i) => ({ key: `p${i}`, date, price })),
  });
const metric = { units: 'metric', cup: 'metric' } as const;
const us = { units: 'us', cup: 'us' } as const;

test('2.5 kg for 16.90 is 6.76 a kilo, and 700 ml for 1.00 is 1.43 a litre', () => {
  expect(unitPrice(of('2.5', 'kg', ['2026-11-25', 1690]), metric)).toMatchObject({ minor: 676, unit: 'kg' });
  expect(unitPrice(of('700', 'ml', ['2026-11-25', 100]), metric)).toMatchObject({ minor: 143, unit: 'l' });
});

test('two dozen eggs for 6.00 are 0.25 each; the latest price stands', () => {
  const eggs = of('2', 'dozen', ['2026-11-01', 480], ['2026-11-25', 600]);
  expect(unitPrice(eggs, metric)).toEqual({ minor: 25, unit: 'each', date: '2026-11-25', guess: false });
});

test('a kitchen that shows US units reads pounds and quarts', () => {
  expect(unitPrice(of('5', 'lb', ['2026-11-25', 1000]), us)).toMatchObject({ minor: 200, unit: 'lb' });
  expect(unitPrice(of('1', 'gallon', ['2026-11-25', 800]), us)).toMatchObject({ minor: 200, unit: 'quart' });
});

test('without a price there is none', () => {
  expect(unitPrice(of('1', 'kg'), metric)).toBeUndefined();
});
