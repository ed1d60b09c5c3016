import { describe, expect, test } from 'vitest';
import { selling } from '../../../src/core/selling/selling.js';
import { costs, groups, kitchenOf, pays, priced, vat } from './sold.js';

const cost = costs('84086', '26636');
const kitchen = kitchenOf({ marginFloor: '30' });
const sold = (price: object, more: object = {}, ways: object = {}) =>
  selling(priced(46, price, more), cost, kitchenOf({ marginFloor: '30', ...ways }));
const amounts = ({ rows }: ReturnType<typeof selling>) => rows.map(({ each, amount }) => [each, amount]);

// A party of 46 costs 840.86. At 26.00 it brings 1,196.00, of which 355.14 are left: 29.69 per cent. To keep 30 per cent
// it must bring 840.86 / 0.7 = 1,201.2286, so 5.23 are short; 26.11 a guest brings 1,201.06, 26.12 brings 1,201.52.
test('26.00 a guest: what it leaves, and what would keep the margin', () => {
  const { margin, floor, aGuest, ...rest } = sold({ by: { aGuest: 2600 } });
  expect(margin?.toFixed(2)).toBe('29.69');
  expect(rest).toMatchObject({ gross: 119600, minimum: 0, discount: 0, net: 119600, tax: 0, total: 119600 });
  expect(floor).toEqual({ margin: '30', short: 523, aGuest: 2612, total: undefined });
  expect(rest.problems.map(({ code }) => code)).toEqual(['below-floor']);
  expect(rest.foodCost?.toFixed(2)).toBe('22.27');
});

// 1,201.2286 over 46 guests is 26.1137: up to 26.12; in half pounds to 26.50. With 20 per cent in it the price is 1.2
// times as much, 31.34, of which 1,441.64 hold 240.27 of VAT. Food of 266.36 at 25 per cent: 1,065.44 over 46 is 23.17.
test('a price worked out goes up, and the margin it really leaves is shown', () => {
  const byMargin = (more: object = {}, ways: object = {}) =>
    sold({ by: { margin: '30' }, ...more }, {}, ways);
  expect(byMargin()).toMatchObject({ aGuest: 2612, net: 120152, problems: [], floor: { short: 0 } });
  expect(byMargin().margin?.toFixed(3)).toBe('30.017');
  expect(byMargin({ roundTo: 50 })).toMatchObject({ aGuest: 2650, net: 121900 });
  expect(byMargin({ roundTo: 50 }).margin?.toFixed(2)).toBe('31.02');
  expect(byMargin({}, vat({ included: true }))).toMatchObject({ aGuest: 3134, tax: 24027, total: 144164 });
  expect(byMargin({}, vat())).toMatchObject({ aGuest: 2612, net: 120152, tax: 24030, total: 144182 });
  expect(sold({ by: { foodCost: '25' } })).toMatchObject({ aGuest: 2317, net: 106582 });
});

// 40 adults, 12 children at half, 2 helpers: 46 full prices. 26.12 and 13.06 bring 1,044.80 + 156.72 = 1,201.52; 26.11
// with 13.06 only 1,201.12. Children at 8.00 bring 96.00, so 40 adults bring the other 1,105.2286: 27.64 each.
test('groups with a price of their own: the whole reaches the margin', () => {
  const half = sold({ by: { margin: '30' }, ...pays('50') }, groups(40, 12, 2));
  expect(half.aGuest).toBe(2612);
  expect(amounts(half)).toEqual([
    [2612, 104480],
    [1306, 15672],
    [0, 0],
  ]);
  const own = { groups: [{ group: 'children', pays: { aGuest: 800 } }] };
  const eight = sold({ by: { margin: '30' }, ...own }, groups(40, 12));
  expect([eight.aGuest, eight.net]).toEqual([2764, 120160]);
  // A half of 26.25 is 13.125, up to 13.13, and in half pounds 13.50; a share never costs more than a full price.
  const each = (roundTo: number, percent: string) =>
    sold({ by: { aGuest: 2625 }, roundTo, ...pays(percent) }, groups(1, 1)).rows[1]?.each;
  expect([each(0, '50'), each(50, '50'), each(50, '100'), each(50, '99.9')]).toEqual([
    1313, 1350, 2625, 2625,
  ]);
});

// 10 guests at 26.00 are 260.00; 240.00 reach the minimum of 500.00; 10 per cent of that, 50.00, come off; 20 per cent of
// 450.00 is 90.00. A tenth off the price that keeps 30 per cent: 1,201.2286 / 0.9 / 46 = 29.0152, so 29.02.
test('first the minimum, then the discount, then tax', () => {
  const ways = { minimum: 50000, discount: { percent: '10' } };
  expect(sold({ by: { aGuest: 2600 }, ...ways }, groups(10, 0), vat())).toMatchObject({
    gross: 26000,
    minimum: 24000,
    discount: 5000,
    net: 45000,
    tax: 9000,
    total: 54000,
  });
  const off = sold({ by: { margin: '30' }, discount: { percent: '10' } });
  expect(off).toMatchObject({ aGuest: 2902, gross: 133492, discount: 13349, net: 120143 });
  // What raises a party to its minimum comes on top of a price that keeps the margin by itself.
  expect(sold({ by: { margin: '30' }, minimum: 200000 })).toMatchObject({ aGuest: 2612, minimum: 79848 });
  expect(sold({ by: { margin: '30' }, discount: { off: 10000 } })).toMatchObject({
    aGuest: 2829,
    net: 120134,
  });
});

// 1,196.00 is 26.00 for each of 46, or of 40 and 12 halves. 1,200.00 does not divide: 40 of 46 parts are 1,043.48, 12
// halves 156.52. Helpers at 10.00 take 20.00 of it first, which leaves 1,180.00.
test('a total is a price a guest where it divides, else it stands and is shared out', () => {
  expect(sold({ by: { total: 119600 } })).toMatchObject({ aGuest: 2600, gross: 119600 });
  const half = sold({ by: { total: 119600 }, ...pays('50') }, groups(40, 12));
  expect([half.aGuest, ...amounts(half)]).toEqual([2600, [2600, 104000], [1300, 15600]]);
  const rest = sold({ by: { total: 120000 }, ...pays('50') }, groups(40, 12));
  expect(rest.aGuest).toBeUndefined();
  expect(amounts(rest)).toEqual([
    [undefined, 104348],
    [undefined, 15652],
  ]);
  const helpers = { groups: [{ group: 'helpers', pays: { aGuest: 1000 } }] };
  const own = sold({ by: { total: 120000 }, ...helpers }, groups(45, 1, 2));
  expect(amounts(own)).toEqual([
    [undefined, 115435],
    [undefined, 2565],
    [1000, 2000],
  ]);
  expect(sold({ by: { total: 119600 } }).floor).toEqual({
    margin: '30',
    short: 523,
    aGuest: undefined,
    total: 120123,
  });
});

describe('what no price can be said for is said in words, and nothing is charged', () => {
  const problem = (price: object, more: object = {}, of = cost) => {
    const { problems, rows, total, margin, aGuest } = selling(priced(46, price, more), of, kitchen);
    expect({ rows, total, margin, aGuest }).toEqual({
      rows: [],
      total: 0,
      margin: undefined,
      aGuest: undefined,
    });
    return problems.map(({ sentence }) => sentence);
  };

  test.each([
    ['no price', {}, {}, 'No price is set yet.'],
    ['all of it', { by: { margin: '100' } }, {}, /below 100 %.*You entered 100\./],
    ['more', { by: { margin: '120' } }, {}, /You entered 120\./],
    ['no food', { by: { foodCost: '0' } }, {}, /more than 0 %/],
    ['nobody', { by: { aGuest: 2600 } }, groups(0, 0), /^No guests/],
    [
      'helpers alone',
      { by: { margin: '30' }, ...pays('0') },
      groups(0, 5, 2),
      /nothing or a price of its own/,
    ],
    [
      'a total of theirs',
      { by: { total: 100 }, ...pays('0') },
      groups(0, 5, 2),
      /nothing or a price of its own/,
    ],
    ['all off', { by: { margin: '30' }, discount: { percent: '100' } }, {}, /takes everything off/],
    ['out of reach', { by: { margin: '99.999999999' } }, {}, /No price that could be written down/],
  ])('%s', (_, price, more, sentence) => {
    expect(problem(price, more)).toEqual([expect.stringMatching(sentence)]);
  });

  test('own prices above the total', () => {
    const own = { groups: [{ group: 'adults', pays: { aGuest: 3000 } }] };
    expect(problem({ by: { total: 100 }, ...own })).toEqual([expect.stringMatching(/more than the total/)]);
  });

  test('a cost that is not known is never free', () => {
    const open = { ...cost, complete: false };
    expect(problem({ by: { margin: '30' } }, {}, open)).toEqual([
      expect.stringMatching(/not all of the cost/),
    ]);
    const food = { ...open, food: { ...cost.food, complete: false } };
    expect(problem({ by: { foodCost: '30' } }, {}, food)).toEqual([
      expect.stringMatching(/not all of its cost/),
    ]);
    expect(problem({ by: { margin: '30' } }, {}, costs('0'))).toEqual([
      expect.stringMatching(/^Nothing has/),
    ]);
    const fixed = selling(priced(46, { by: { aGuest: 2600 } }), open, kitchen);
    expect(fixed).toMatchObject({ net: 119600, margin: undefined, floor: undefined });
    expect(fixed.foodCost?.toFixed(2)).toBe('22.27');
  });
});

test('more taken off than there is leaves nothing, and that is said', () => {
  const { net, discount, margin, problems } = sold({ by: { aGuest: 100 }, discount: { off: 10000 } });
  expect({ net, discount, margin }).toEqual({ net: 0, discount: 4600, margin: undefined });
  expect(problems.map(({ code }) => code)).toContain('discount-over');
});
