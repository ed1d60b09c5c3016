import { expect, test } from 'vitest';
import { readAmounts } from '../../../../src/core/exchange/draft/amounts.js';

test('an amount of a draft is read as cooks write it; none is to taste', () => {
  const value = (text: string, unit?: string) => readAmounts(text, unit);
  expect(value('')).toEqual({ value: { amount: null, amountTo: null } });
  expect(value('2 x 400', 'g')).toEqual({ value: { amount: '800', amountTo: null } });
  expect(value('2–3')).toEqual({ value: { amount: '2', amountTo: '3' } });
  expect(value('1 1/2')).toEqual({ value: { amount: '1.5', amountTo: null } });
  expect(value('2 x 400')).toHaveProperty('sentence');
});
