import { expect, test } from 'vitest';
import {
  type NumberedPaper,
  type Offer,
  type Option,
  type Payment,
  payment,
  type Quote,
  quote,
} from '../../src/core/facts/quote.js';
import {
  acceptedOf,
  basisOf,
  counting,
  creditFor,
  nextNumber,
  openInvoice,
  paidUpOn,
  wordedAs,
} from '../../src/core/quotes-of-event.js';
import { duesFault, notYetIssuable } from '../../src/core/rules/quote.js';
import { fortyAtTwenty } from '../store/quote-world.js';
import { exampleKitchen } from '../world.js';

const paid = (date: string, amount: number, more: Partial<Payment> = {}): Payment =>
  payment.parse({ key: `p${date}${amount}`, event: 'party', date, amount, ...more });
const numbered = (number: number, state: Quote['state'] = 'draft') => ({
  doc: { ...quote.parse({ key: `q${number}`, event: 'party', number, offer: fortyAtTwenty }), state },
});

test('quotes count on from the highest number, and the last accepted one holds', () => {
  expect(nextNumber([])).toBe(1);
  expect(nextNumber([numbered(1), numbered(4), numbered(2)])).toBe(5);
  expect(
    acceptedOf([numbered(1, 'replaced'), numbered(2, 'accepted'), numbered(3, 'issued')])?.doc.number,
  ).toBe(2);
  expect(acceptedOf([numbered(1, 'declined')])).toBeUndefined();
});

// A deposit of 200 and a balance of 600: 150 on Monday, 50 on Tuesday; 30 back on Wednesday and paid again on Friday.
test('a part is received on the day from which it stayed paid', () => {
  const dues = [
    { amount: 200, open: 0 },
    { amount: 600, open: 600 },
  ];
  const [monday, tuesday] = [paid('2026-11-02', 150), paid('2026-11-03', 50)];
  expect(paidUpOn(dues, [tuesday, monday])).toEqual(['2026-11-03', null]);
  const back = [paid('2026-11-04', 30, { back: true }), paid('2026-11-06', 30)];
  expect(paidUpOn(dues, [monday, tuesday, ...back])).toEqual(['2026-11-06', null]);
  expect(counting([monday, { ...tuesday, struck: '2026-11-05' }])).toEqual([monday]);
});

test('the next quote keeps the client’s words; the menu too, while it is the same', () => {
  const event = exampleKitchen().events.find(({ key }) => key === 'retirement-lunch')!;
  const served = {
    date: '2026-10-14',
    kitchen: exampleKitchen().kitchen,
    places: [],
    ingredients: [],
    recipes: [],
  };
  const [option] = fortyAtTwenty.options;
  const last: Quote = {
    ...numbered(1, 'accepted').doc,
    offer: {
      ...fortyAtTwenty,
      title: 'Gwen’s lunch',
      options: [{ ...option!, menu: [{ course: 'First', dishes: ['Toast'] }] }],
    },
    basis: basisOf(event, served),
  };
  const fresh = { ...fortyAtTwenty, guests: 50 };
  expect(wordedAs(fresh, undefined, event)).toBe(fresh);
  const again = wordedAs(fresh, last, event);
  expect(again).toMatchObject({ title: 'Gwen’s lunch', guests: 50 });
  expect(again.options[0]?.menu).toEqual([{ course: 'First', dishes: ['Toast'] }]);
  const moved = { ...fresh, when: '2026-12-05', dues: [] };
  expect([again.dues, wordedAs(moved, last, event).dues]).toEqual([fortyAtTwenty.dues, []]);
  const shorter = wordedAs(fresh, last, { ...event, courses: event.courses.slice(1) });
  expect(shorter.options[0]?.menu).toEqual(option?.menu);
});

test('what is kept of an event names no guest, and nothing that stands there for one', () => {
  const workbook = exampleKitchen();
  const event = workbook.events.find(({ key }) => key === 'retirement-lunch')!;
  const { kitchen, places, recipes, ingredients } = workbook;
  const stranger = { ...ingredients[0]!, key: 'durian', name: 'Durian' };
  const marked = {
    ...event,
    note: 'Gwen sits by the door',
    courses: event.courses.map((course) => ({
      ...course,
      dishes: course.dishes.map((dish) => ({ ...dish, keptFor: ['gwen'], keptApart: 'a tray for Gwen' })),
    })),
  };
  const kept = basisOf(marked, {
    date: '2026-10-14',
    kitchen,
    places,
    recipes,
    ingredients: [...ingredients, stranger],
  });
  expect(JSON.stringify({ ...kept.event, client: '' })).not.toMatch(/gwen/i);
  expect(kept.served.ingredients.map(({ key }) => key)).not.toContain('durian');
  expect(kept.served.ingredients.length).toBeGreaterThan(10);
});

test('an invoice stands until a credit takes it back', () => {
  const paper = (kind: NumberedPaper['kind'], number: number, of: number | null = null) =>
    ({ kind, number, of }) as NumberedPaper;
  const [one, two, credit] = [paper('invoice', 1), paper('invoice', 2), paper('credit', 7, 1)];
  expect(creditFor(one, [one, two, credit])).toBe(credit);
  expect(creditFor(paper('receipt', 1), [credit])).toBeUndefined();
  expect(openInvoice([one, two, credit])).toBe(two);
  expect(openInvoice([one, credit])).toBeUndefined();
});

test('parts of a total add up to it, one of them may be all that is left', () => {
  const shares = (...percents: (string | null)[]) => duesFault(percents.map((percent) => ({ percent })));
  expect([shares(), shares('25', null), shares('100/3', '200/3'), shares(null)]).toEqual(['', '', '', '']);
  expect(shares('25', '50')).toContain('leave something over');
  expect(shares('60', '60', null)).toContain('more than 100');
  expect(shares(null, null)).toContain('Only one part');
});

test('menus to choose from have names of their own before they are issued', () => {
  const [option] = fortyAtTwenty.options;
  const both = (...names: string[]) =>
    notYetIssuable({ ...fortyAtTwenty, options: names.map((name) => ({ ...option!, name })) }, '2026-11-20');
  expect(both('Fish', 'Meat')).toEqual([]);
  expect(both('Fish', 'fish ')[0]).toContain('give each a name of its own');
  expect(both('')).toEqual([]);
});

test('an offer that could not be charged as it says is not issued', () => {
  const [option] = fortyAtTwenty.options;
  const why = (change: Partial<Offer>, priced: Partial<Option> = {}) =>
    notYetIssuable({ ...fortyAtTwenty, options: [{ ...option!, ...priced }], ...change }, '2026-11-20');
  expect(why({})).toEqual([]);
  expect(why({ guests: 0 })[0]).toContain('0 guests');
  expect(why({}, { discount: { off: 80_001 } })[0]).toContain('More is taken off');
  expect(why({}, { discount: { off: 80_000 } })).toEqual([]);
  expect(why({}, { discount: { percent: '100' } })).toEqual([]);
  expect(why({ finalCount: '2027-01-30' })[0]).toContain('after the party');
  expect(why({}, { lines: [{ words: 'guests', count: 100_000, each: 999_999_999_900 }] })[0]).toContain(
    'more than can be kept',
  );
});
