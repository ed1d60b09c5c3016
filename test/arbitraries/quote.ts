import fc from 'fast-check';
import { event } from '../../src/core/facts/event.js';
import {
  type NumberedPaper,
  numberedPaper,
  offer,
  type Payment,
  payment,
  type Quote,
  quote,
} from '../../src/core/facts/quote.js';
import { anyDiscount, anyTax, anyTerms } from './costs.js';
import { anyEvent } from './event.js';
import { anyKitchen } from './kitchen.js';
import { anyDate, anyMoney, keptWords, keyed, maybe, type There, title } from './words.js';

const anyOption = fc.record({
  name: keptWords(20),
  menu: fc.array(fc.record({ course: title, dishes: fc.array(title, { maxLength: 3 }) }), { maxLength: 2 }),
  lines: fc.array(fc.record({ words: title, count: fc.nat(300), each: anyMoney }), { maxLength: 3 }),
  minimum: maybe(anyMoney),
  discount: anyDiscount,
});

const anyOffer = keyed(2, anyOption).chain((options) =>
  fc
    .record({
      title,
      client: keptWords(20),
      when: anyDate,
      guests: fc.nat(300),
      options: fc.constant(options.length > 0 ? options : [{ key: 'option-0' }]),
      terms: anyTerms,
      validUntil: maybe(anyDate),
      tax: maybe(anyTax),
      currency: fc.constantFrom('GBP', 'JPY', 'KWD'),
      from: title,
    })
    .map((one) => offer.parse(one)),
);

const anyBasis = (there: There) =>
  fc.tuple(anyEvent('the-party', there), anyKitchen, anyDate).map(([party, kitchen, date]) => {
    const { guests: _, served: __, ...rest } = event.parse(party);
    return { event: rest, served: { date, kitchen, places: [], ingredients: [], recipes: [] } };
  });

/** A draft and an issued quote of some events. */
export const anyQuotes = (events: readonly string[], there: There): fc.Arbitrary<Quote[]> =>
  fc.subarray([...events]).chain((some) =>
    fc.tuple(
      ...some.flatMap((key) => [
        anyOffer.map((one) => quote.parse({ key: `${key}-q1`, event: key, number: 1, offer: one })),
        fc.record({ offer: anyOffer, basis: anyBasis(there), issued: anyDate }).map((one) =>
          quote.parse({
            key: `${key}-q2`,
            event: key,
            number: 2,
            state: 'accepted',
            answered: one.issued,
            ...one,
          }),
        ),
      ]),
    ),
  );

export const anyPayments = (events: readonly string[]): fc.Arbitrary<Payment[]> =>
  fc.subarray([...events]).chain((some) =>
    fc.tuple(
      ...some.map((key) =>
        fc
          .record({
            date: anyDate,
            amount: fc.integer({ min: 1, max: 90_000 }),
            back: fc.boolean(),
            words: keptWords(20),
            struck: maybe(anyDate),
          })
          .map((one) => payment.parse({ key: `${key}-p1`, event: key, ...one })),
      ),
    ),
  );

export const anyNumberedPapers = (events: readonly string[]): fc.Arbitrary<NumberedPaper[]> =>
  fc.subarray([...events]).chain((some) =>
    fc.tuple(
      ...some.map((key, at) =>
        fc
          .record({ date: anyDate, client: keptWords(20), title, when: anyDate, total: anyMoney })
          .map((one) =>
            numberedPaper.parse({
              kind: 'invoice',
              number: at + 1,
              event: key,
              from: 'The kitchen',
              lines: [{ words: 'guests', count: 4, each: 1000, amount: 4000 }],
              tax: null,
              taxAmount: 0,
              paid: 0,
              currency: 'GBP',
              ...one,
            }),
          ),
      ),
    ),
  );
