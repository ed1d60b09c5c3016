import fc from 'fast-check';
import { expect, test } from 'vitest';
import { prepFor } from '../../src/core/prep.js';
import { anyKitchen } from './kitchens.js';
import { dish, factsOf, food, party, steps } from './small.js';

// Stock is boiled, strained at the bench and goes into the sauce, which goes on the pie: three ways from station to
// station, so the day begins at the stove though nothing but the stock can be done there yet. The tarts are rolled at
// the bench when the stock is strained there, and baked once the bench has nothing more.
test('a day goes from station to station in the order in which it can be worked', () => {
  const ring = { rings: 1 };
  const facts = factsOf([
    dish('tart', '10 portions', ['1 kg leek'], steps({}, { oven: { heat: 180 } })),
    dish('pie', '10 portions', ['1 kg @sauce'], steps({})),
    dish('sauce', '1 kg', ['500 ml @stock'], steps(ring, ring)),
    dish('stock', '1 l', ['1 kg leek'], steps(ring, {})),
    food('leek'),
  ]);
  const [day] = prepFor([party(10, ['tart', 'pie'])], facts).value;
  const told = day!.stations.map(({ station, again, jobs }) => [
    again ? `${station} again` : station,
    ...jobs.map(({ recipe, number }) => `${recipe.key} ${number}`),
  ]);
  expect(told).toEqual([
    ['Stove', 'stock 1'],
    ['Bench', 'tart 1', 'stock 2'],
    ['Stove again', 'sauce 1', 'sauce 2'],
    ['Bench again', 'pie 1'],
    ['Oven', 'tart 2'],
  ]);
});

test('no job stands before a step or a component that it waits for', () => {
  fc.assert(
    fc.property(anyKitchen, ({ facts, events }) => {
      const open = events.filter(({ served }) => !served);
      for (const { stations } of prepFor(open, facts).value) {
        const jobs = stations.flatMap((stay) => stay.jobs);
        for (const [at, { recipe, number }] of jobs.entries())
          for (const later of jobs.slice(at + 1)) {
            expect(later.recipe === recipe && later.number < number).toBe(false);
            const takes = recipe.lines.some(
              ({ item }) => 'component' in item && item.component === later.recipe.key,
            );
            expect(takes).toBe(false);
          }
      }
    }),
  );
});
