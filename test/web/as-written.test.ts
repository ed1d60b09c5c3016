import { expect, test } from 'vitest';
import { asWritten } from '../../src/web/as-written.js';
import { typedAmount, typedMeasure, typedYield } from '../../src/web/typed.js';

test('a figure that is the same keeps the way it was written; words and others do not', () => {
  const before = { note: '1/2', lines: [{ key: 'a', amount: '5/2', preparation: '1/2' }] };
  const after = {
    note: '0.5',
    lines: [
      { key: 'b', amount: '5/2' },
      { key: 'a', amount: '2.5', preparation: '0.5' },
    ],
  };
  expect(asWritten(before, after)).toEqual({
    note: '0.5',
    lines: [
      { key: 'b', amount: '5/2' },
      { key: 'a', amount: '5/2', preparation: '0.5' },
    ],
  });
  expect(asWritten({ amount: '2' }, { amount: null })).toEqual({ amount: null });
  expect(asWritten({ yield: { portions: '2' } }, { yield: { portions: '2.1' } })).toEqual({
    yield: { portions: '2.1' },
  });
});

test('fields hold figures as cooks write them', () => {
  expect([typedAmount('5/2'), typedAmount('1/3'), typedAmount(null)]).toEqual(['2 1/2', '1/3', '']);
  expect(typedMeasure({ amount: '3', unit: 'l' })).toBe('3 L');
  expect([typedYield('0.885'), typedYield('1'), typedYield('3.05')]).toEqual(['88.5 %', '100 %', '3.05']);
});
