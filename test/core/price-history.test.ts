import { expect, test } from 'vitest';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { movedSince, priceHistory, priceMoves } from '../../src/core/price-history.js';

const metric = { units: 'metric', cup: 'metric' } as const;

/** Invented: butter in quarter kilos from one shop, and by the case of ten from another. */
const butter = ingredient.parse({
  key: 'butter',
  name: 'Butter',
  packs: [
    {
      key: 'quarter',
      supplier: 'Dairy',
      size: { amount: '250', unit: 'g' },
      preferred: true,
      prices: [
        { key: 'p3', date: '2026-11-27', price: 225 },
        { key: 'p1', date: '2026-03-02', price: 180 },
        { key: 'p2', date: '2026-09-18', price: 205, guess: true },
        { key: 'p4', date: '2026-11-27', price: 246 },
      ],
    },
    {
      key: 'case',
      supplier: 'Wholesale',
      size: { amount: '2.5', unit: 'kg' },
      prices: [{ key: 'c1', date: '2026-10-01', price: 1900 }],
    },
    {
      key: 'tub',
      supplier: 'Market',
      size: { amount: '1', unit: 'tub' },
      prices: [{ key: 't1', date: '2026-10-02', price: 500 }],
    },
    { key: 'never', supplier: 'Farm', size: { amount: '1', unit: 'kg' } },
  ],
});

// 1.80, 2.05, 2.25 and then 2.46 for 250 g are 7.20, 8.20, 9.00 and 9.84 a kilo; up 13.9, 9.8 and 9.3 per cent.
test('prices of every pack by the kilo, in the order of their days, with what each is up or down', () => {
  const [byKilo, byTub, ...none] = priceHistory(butter, metric);
  expect(none).toEqual([]);
  expect(byKilo?.unit).toBe('kg');
  expect(byKilo?.packs.map(({ pack }) => pack.key)).toEqual(['quarter', 'case']);
  const points = byKilo!.packs[0]!.points;
  expect(points.map(({ price }) => price.key)).toEqual(['p1', 'p2', 'p3', 'p4']);
  expect(points.map(({ each }) => each.toFixed(0))).toEqual(['720', '820', '900', '984']);
  expect(points.map(({ since }) => since?.toFixed(1))).toEqual([undefined, '13.9', '9.8', '9.3']);
  expect(byKilo!.packs[1]!.points[0]!.each.toString()).toBe('760');
  expect(byTub).toMatchObject({ unit: 'tub', packs: [{ pack: { key: 'tub' } }] });
});

test('a pack sold by the piece stands beside those by weight once the weight of one is known', () => {
  const weighed = { ...butter, weights: [{ unit: 'tub', grams: '500', of: 'bought' as const, source: '' }] };
  const [line, ...none] = priceHistory(weighed, metric);
  expect(none).toEqual([]);
  expect(line?.packs.map(({ pack, points }) => [pack.key, points.at(-1)?.each.toString()])).toEqual([
    ['quarter', '984'],
    ['case', '760'],
    ['tub', '1000'],
  ]);
});

// From 8.20 to 9.84 is a fifth more.
test('since a day: the price that stood on it beside the one that stands; none where none stood', () => {
  const move = movedSince(butter, '2026-10-14', metric)!;
  expect([move.before.price.key, move.after.price.key]).toEqual(['p2', 'p4']);
  expect(move.percent?.toString()).toBe('20');
  expect(movedSince(butter, '2026-03-01', metric)).toBeUndefined();
  expect(
    movedSince(
      { ...butter, packs: butter.packs.map((p) => ({ ...p, preferred: false })) },
      '2026-10-14',
      metric,
    ),
  ).toBeUndefined();
});

test('a price of nothing gives no per cent, and no price is no move', () => {
  const free = {
    ...butter,
    packs: [
      {
        ...butter.packs[1]!,
        preferred: true,
        prices: [
          { key: 'a', date: '2026-01-01', price: 0, guess: false },
          { key: 'b', date: '2026-02-01', price: 100, guess: false },
        ],
      },
    ],
  };
  expect(priceHistory(free, metric)[0]?.packs[0]?.points[1]?.since).toBeUndefined();
  expect(movedSince(free, '2026-01-15', metric)).toMatchObject({ percent: undefined });
});

test('what moved most first, what never had a price then by itself, what stands still left out', () => {
  const priced = (key: string, ...prices: [string, number][]) =>
    ingredient.parse({
      key,
      name: key,
      packs: [
        {
          key: 'p',
          size: { amount: '1', unit: 'kg' },
          prices: prices.map(([date, price], i) => ({ key: `k${i}`, date, price })),
        },
      ],
    });
  const { moves, first } = priceMoves(
    [
      priced('up', ['2026-01-01', 100], ['2026-02-01', 108]),
      priced('down', ['2026-01-01', 100], ['2026-02-01', 70]),
      priced('still', ['2026-01-01', 100], ['2026-02-01', 100]),
      priced('new', ['2026-02-01', 100]),
      priced('none'),
    ],
    '2026-01-15',
    metric,
  );
  expect(moves.map(({ ingredient: { key }, percent }) => [key, percent?.toString()])).toEqual([
    ['down', '-30'],
    ['up', '8'],
  ]);
  expect(first.map(({ key }) => key)).toEqual(['new']);
});
