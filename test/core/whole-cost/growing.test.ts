import fc from 'fast-check';
import { expect, test } from 'vitest';
import { costOfEvent } from '../../../src/core/costing.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { headCount } from '../../../src/core/requirements.js';
import { growingOf, stemsAt, straight, sumAt } from '../../../src/core/whole-cost/growing.js';
import { groupsAt, withHeadCount } from '../../../src/core/whole-cost/head-count.js';
import { anyKitchen } from '../kitchens.js';

const anyHeads = fc.oneof(fc.nat(12), fc.nat(400));

test('a head-count keeps the proportions of the groups, takes nobody away as guests come, and gives the groups there are', () => {
  fc.assert(
    fc.property(anyKitchen, anyHeads, ({ events }, guests) => {
      for (const event of events) {
        const at = (n: number) => [...groupsAt(event, n).values()];
        expect(at(headCount(event))).toEqual(event.groups.map((group) => group.guests));
        expect(at(guests).reduce((all, n) => all + n, 0)).toBe(guests);
        const more = at(guests + 1);
        for (const [i, n] of at(guests).entries()) expect(more[i]! - n).toBeGreaterThanOrEqual(0);
        const all = headCount(event);
        for (const [i, n] of at(guests).entries())
          if (all > 0)
            expect(Math.abs(n - (event.groups[i]!.guests * guests) / all)).toBeLessThan(event.groups.length);
      }
    }),
  );
});

test('what an event takes and makes at any head-count is what it needs worked out alone', () => {
  fc.assert(
    fc.property(
      anyKitchen,
      fc.array(anyHeads, { minLength: 1, maxLength: 4 }),
      ({ facts, events }, heads) => {
        for (const event of events) {
          const growing = growingOf(event, facts);
          for (const guests of heads) {
            const alone = withHeadCount(event, guests);
            const at = stemsAt(growing, alone);
            const { exact, courses } = costOfEvent(alone, facts).value;
            let food = Rational.zero;
            for (const { pack, sum } of growing.taken.values())
              food = food.plus(sumAt(straight(sum), at).times(pack.price).over(pack.size.value));
            expect(food.toString()).toBe(exact.toString());
            expect(
              growing.made.map(({ batches }) => batches && sumAt(straight(batches), at).toString()),
            ).toEqual(batchesOf(courses.flatMap(({ dishes }) => dishes)));
          }
        }
      },
    ),
    { numRuns: 200 },
  );
});

type Dishes = ReturnType<typeof costOfEvent>['value']['courses'][number]['dishes'];
const batchesOf = (dishes: Dishes) =>
  dishes.flatMap(({ need }) => need.recipes.map(({ factor }) => factor?.toString()));
