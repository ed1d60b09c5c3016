import fc from 'fast-check';
import { diets } from '../../src/core/diets.js';
import { type Event, event, states } from '../../src/core/facts/event.js';
import { anyAfterwards } from './afterwards.js';
import { anyCostLines, anyPrice } from './costs.js';
import {
  anyAmount,
  anyClock,
  anyDate,
  anyKey,
  anyMeasure,
  anyMoney,
  keptWords,
  keyed,
  maybe,
  origin,
  rowsWith,
  type There,
  title,
} from './words.js';

const anyEaters = (groups: readonly string[]) =>
  fc.oneof(
    fc.constant({ everybody: true }),
    fc
      .subarray([...groups], { minLength: 1 })
      .map((list) => ({ shares: list.map((group) => ({ group, percent: '12.5' })) })),
    fc
      .subarray([...groups], { minLength: 1 })
      .map((list) => ({ counts: list.map((group) => ({ group, guests: 7 })) })),
  );

const anyCourses = (groups: readonly string[], { recipes }: There) => {
  const dishes =
    recipes.length === 0
      ? fc.constant([])
      : keyed(
          4,
          fc.record({
            recipe: fc.constantFrom(...recipes),
            portion: maybe(anyMeasure),
            eaters: anyEaters(groups),
            price: maybe(anyMoney),
          }),
        );
  return keyed(3, fc.record({ name: title, time: anyClock, dayAfter: fc.boolean(), dishes }));
};

const anyGuests = (groups: readonly string[]) =>
  keyed(
    5,
    fc.record({
      name: keptWords(12),
      count: fc.integer({ min: 1, max: 9 }),
      group: fc.constantFrom(...groups),
      answered: fc.boolean(),
      diets: fc.subarray(
        diets.map(({ id }) => id),
        { maxLength: 3 },
      ),
      other: keptWords(20),
    }),
  );

export const anyEvent = (key: string, there: There): fc.Arbitrary<Event> =>
  fc.uniqueArray(anyKey, { minLength: 1, maxLength: 3 }).chain((groups) =>
    fc
      .record({
        name: title,
        client: keptWords(20),
        date: anyDate,
        place: fc.constantFrom(...there.places),
        state: fc.constantFrom(...states.filter((state) => state !== 'done')),
        groups: rowsWith(groups, fc.record({ name: title, guests: fc.nat(300), portion: anyAmount })),
        guests: anyGuests(groups),
        eatsAll: fc.nat(50),
        overCatering: anyAmount,
        courses: anyCourses(groups, there),
        costs: anyCostLines,
        price: anyPrice(groups),
        afterwards: maybe(anyAfterwards),
        note: keptWords(60),
        archived: fc.boolean(),
        origin,
      })
      .map((doc) => event.parse({ key, ...doc })),
  );
