import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays } from '../../../src/core/calendar.js';
import { type Job, prepFor } from '../../../src/core/prep.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { requirementsOf } from '../../../src/core/requirements.js';
import { anyKitchen, type Kitchen } from '../kitchens.js';

const jobsOf = ({ facts, events }: Kitchen): Job[] =>
  prepFor(events, facts).value.flatMap(({ stations }) => stations.flatMap(({ jobs }) => jobs));
const plus = (a: Rational | undefined, b: Rational | undefined) => a && b && a.plus(b);

test('each step’s jobs over all days are the batches that the events need', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      const needed = new Map<string, Rational | undefined>();
      for (const event of events)
        for (const { dishes } of requirementsOf(event, facts))
          for (const { recipes } of dishes)
            for (const { recipe, factor } of recipes)
              for (const key of recipe.steps.length ? recipe.steps.map((step) => step.key) : ['']) {
                const at = `${recipe.key} ${key}`;
                needed.set(at, needed.has(at) ? plus(needed.get(at), factor) : factor);
              }
      const made = new Map<string, Rational | undefined>();
      for (const { recipe, step, batches, shares } of jobsOf({ facts, events })) {
        const at = `${recipe.key} ${step?.key ?? ''}`;
        made.set(at, made.has(at) ? plus(made.get(at), batches) : batches);
        const all = shares.reduce(
          (sum, share) => plus(sum, share.batches),
          Rational.zero as Rational | undefined,
        );
        expect(all?.toString()).toBe(batches?.toString());
      }
      const text = (map: Map<string, Rational | undefined>) => [...map].map(([at, n]) => `${at} ${n}`).sort();
      expect(text(made)).toEqual(text(needed));
    }),
  );
});

const textOf = ({ key, station, batches, makes, lines, shares, trays, minutes, useBy }: Job): string =>
  [
    key,
    station,
    batches,
    makes?.value,
    lines.map(({ amount, prepared, bought }) => `${amount} ${prepared} ${bought?.value}`),
    shares.map(({ event, batches: share }) => `${event.key} ${share}`).sort(),
    trays,
    minutes,
    useBy,
  ].join('; ');
const asText = (kitchen: Kitchen) => jobsOf(kitchen).map(textOf);

test('the order of the events makes no difference, not even to the order of the jobs', () => {
  const shuffled = anyKitchen.chain((kitchen) =>
    fc.shuffledSubarray(kitchen.events, { minLength: 3 }).map((events) => ({ kitchen, events })),
  );
  fc.assert(
    fc.property(shuffled, ({ kitchen, events }) => {
      expect(asText({ ...kitchen, events })).toEqual(asText(kitchen));
    }),
  );
});

test('a list of some days says what the whole list says of them', () => {
  const asked = fc.constantFrom(...['2026-11-26', '2026-11-27', '2026-11-28', '2026-11-30'].entries());
  fc.assert(
    fc.property(anyKitchen, asked, ({ facts, events }, [length, from]) => {
      const to = addDays(from, length);
      const whole = prepFor(events, facts).value.filter(({ date }) => from <= date && date <= to);
      const days = prepFor(events, facts, { from, to }).value;
      expect(days.map(({ date, jobs, attended }) => [date, jobs, attended])).toEqual(
        whole.map(({ date, jobs, attended }) => [date, jobs, attended]),
      );
      const texts = (list: typeof days) =>
        list.flatMap(({ stations }) => stations.flatMap(({ jobs }) => jobs.map(textOf)));
      expect(texts(days)).toEqual(texts(whole));
    }),
  );
});

test('no component is made after what uses it, in its own event', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      for (const event of events) {
        const jobs = jobsOf({ facts, events: [event] });
        const last = (key: string) =>
          jobs
            .filter(({ recipe }) => recipe.key === key)
            .map(({ date }) => date)
            .sort()
            .at(-1)!;
        for (const { recipe, date } of jobs) {
          expect(date <= event.date).toBe(true);
          const first = jobs.filter((job) => job.recipe === recipe).map((job) => job.date);
          for (const { item } of recipe.lines)
            if ('component' in item) expect(last(item.component) <= first.sort()[0]!).toBe(true);
        }
      }
    }),
  );
});
