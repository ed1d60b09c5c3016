import fc from 'fast-check';
import { addDays } from '../../src/core/calendar.js';
import type { PrepPeriod, Tick } from '../../src/core/facts/prep-period.js';
import { anyAmount, anyDate, anyKey, keysOf, maybe, title } from './words.js';

export const anyInstant = fc
  .date({ min: new Date('2020-01-01'), max: new Date('2035-12-31'), noInvalidDate: true })
  .map((at) => at.toISOString().replace(/\.\d+Z$/, 'Z'));

const anyTicks = (from: string, days: number, events: readonly string[]) =>
  events.length === 0
    ? fc.constant<Tick[]>([])
    : fc.uniqueArray(
        fc.record({
          date: fc.nat(days).map((n) => addDays(from, n)),
          recipe: anyKey,
          step: maybe(anyKey),
          event: fc.constantFrom(...events),
          batches: maybe(anyAmount),
          who: title.map((words) => words.trim()),
          at: anyInstant,
        }),
        {
          maxLength: 5,
          selector: ({ date, recipe, step, event }) => `${date} ${recipe} ${step} ${event}`,
        },
      );

/** A few periods one after the other, for some of the events and with some of their jobs ticked. */
export const anyPrepPeriods = (events: readonly string[]): fc.Arbitrary<PrepPeriod[]> =>
  fc.record({ first: anyDate, keys: keysOf(3), days: fc.nat(9) }).chain(({ first, keys, days }) =>
    fc.tuple(
      ...keys.map((key, place) => {
        const from = addDays(first, place * 10);
        return fc.subarray([...events]).chain((own) =>
          fc.record({
            key: fc.constant(key),
            from: fc.constant(from),
            to: fc.constant(addDays(from, days)),
            events: fc.constant(own),
            ticks: anyTicks(from, days, own),
          }),
        );
      }),
    ),
  );
