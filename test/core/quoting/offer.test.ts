import { describe, expect, test } from 'vitest';
import { offer } from '../../../src/core/facts/quote.js';
import { draftOffer } from '../../../src/core/quoting/draft-offer.js';
import { offerComes } from '../../../src/core/quoting/offer-comes.js';
import { quoteNow } from '../../../src/core/quoting/quote-now.js';
import { selling } from '../../../src/core/selling/selling.js';
import { quoteSheet } from '../../../src/core/sheets/quote-sheet.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { groups, vat } from '../selling/sold.js';
import { kitchenAt, quoteOf, supper } from './quoted.js';

const facts = kitchenAt(2500);
const drafted = (event = supper(), today = '2026-09-26', of = facts) =>
  draftOffer(event, of, selling(event, wholeCost(event, of, 'used'), of.kitchen), today);

// On 26 September 46 guests are offered 26.00 each for 28 November: open for ten days, the number final three days before,
// a quarter on acceptance and the rest two days before.
test('an event as it is first offered', () => {
  const made = drafted();
  expect(offer.parse(made)).toEqual(made);
  expect(made).toMatchObject({
    title: 'Winter supper',
    client: 'Ines and Tom',
    from: 'Cold Ash Kitchen',
    when: '2026-11-28',
    place: '',
    serve: 'served at 18:00',
    guests: 46,
    validUntil: '2026-10-06',
    finalCount: '2026-11-25',
    dues: [
      { words: 'deposit, one quarter', percent: '25', date: null },
      { words: 'balance', percent: null, date: '2026-11-26' },
    ],
    options: [
      {
        menu: [{ course: 'Main', dishes: ['Poached salmon'] }],
        lines: [{ words: 'guests', count: 46, each: 2600 }],
      },
    ],
  });
  expect(made.terms.allergies).toMatch(/traces in any dish are possible/);
  expect(JSON.stringify(made)).not.toMatch(/\bsafe|suitable for|guarantee|margin|cost/i);
  expect(drafted(supper(), '2026-11-25').validUntil).toBe('2026-11-28');
  expect(
    drafted(supper(), '2026-09-26', kitchenAt(2500, { terms: { allergies: 'Ask us.' } })).terms.allergies,
  ).toBe('Ask us.');
});

test('groups have a line each, and a total that does not divide is a sum for them together', () => {
  const price = { groups: [{ group: 'helpers', pays: { aGuest: 500 } }] };
  const lines = (by: object) =>
    drafted(supper(0, { ...groups(40, 12, 2), price: { by, ...price } })).options[0]!.lines;
  expect(lines({ aGuest: 2600 })).toEqual([
    { words: 'adults', count: 40, each: 2600 },
    { words: 'children to 12', count: 12, each: 2600 },
    { words: 'helpers', count: 2, each: 500 },
  ]);
  expect(lines({ total: 120001 })).toEqual([
    { words: 'for 52 guests together', count: 1, each: 119001 },
    { words: 'helpers', count: 2, each: 500 },
  ]);
});

// 46 at 26.00 with 20 per cent added: 1,196.00 + 239.20. From 40 guests 25.00, from 50 24.00: 46 pay 25.00, 1,150.00.
describe('what an option comes to', () => {
  const made = drafted(supper(), '2026-09-26', kitchenAt(2500, vat()));
  const [option] = made.options;
  const tiered = {
    ...option!,
    tiers: [
      { from: 50, each: 2400 },
      { from: 40, each: 2500 },
    ],
  };

  test('by its lines, its tiers and its tax', () => {
    expect(offerComes(option!, made)).toMatchObject({
      gross: 119600,
      net: 119600,
      tax: 23920,
      total: 143520,
    });
    const nets = [39, 40, 46, 50].map((guests) => offerComes(tiered, made, guests).net);
    expect(nets).toEqual([39 * 2600, 40 * 2500, 46 * 2500, 50 * 2400]);
  });

  test('fewer guests leave the first line and then the next; a sum for all stays', () => {
    const two = {
      ...option!,
      lines: [
        { words: 'adults', count: 6, each: 100 },
        { words: 'children', count: 40, each: 50 },
      ],
    };
    expect(offerComes(two, made, 50).lines.map(({ count }) => count)).toEqual([10, 40]);
    expect(offerComes(two, made, 38).lines.map(({ count }) => count)).toEqual([0, 38]);
    const all = { ...tiered, lines: [{ words: 'for 46 guests together', count: 1, each: 119001 }] };
    expect(offerComes(all, made, 40).net).toBe(119001);
  });

  test('to the minimum, and less the discount', () => {
    const more = { ...option!, minimum: 130000, discount: { percent: '10' } };
    expect(offerComes(more, made)).toMatchObject({
      gross: 119600,
      minimum: 10400,
      discount: 13000,
      net: 117000,
    });
  });
});

test('an issued quote is open to the last day it may be accepted, and has expired after it', () => {
  const issued = quoteOf(supper(), facts, { state: 'issued', answered: null, taken: null });
  expect([quoteNow(issued, '2026-10-06'), quoteNow(issued, '2026-10-07')]).toEqual(['issued', 'expired']);
  expect(quoteNow(quoteOf(supper(), facts), '2026-10-07')).toBe('accepted');
  expect(quoteSheet(issued, '2026-10-07').about.state).toBe('expired');
});
