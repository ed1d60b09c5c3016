import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { coverageOf } from '../../../src/core/coverage.js';
import { judgeRecipe, type Verdict } from '../../../src/core/diets.js';
import type { Event } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { waysOut } from '../../../src/core/way-out/find.js';
import { neededFor } from '../../../src/core/way-out/needed.js';
import { pose } from '../../../src/core/way-out/pose.js';
import { takenIn } from '../../../src/core/way-out/treat.js';
import { type Solve, waysByFigures } from '../../../src/core/way-out/ways.js';
import { loadSolver } from '../../../src/way-out/highs.js';
import { dish, factsOf, food, labelled, pack, party } from '../small.js';

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

const named = ['milk', 'eggs', 'fish', 'almond'];
const diets = ['no-milk', 'no-eggs', 'no-fish', 'no-nuts', 'vegan', 'vegetarian'];
const foods = ['f0', 'f1', 'f2', 'f3', 'f4'];

const anyFood = (key: string) =>
  fc
    .record({
      contains: fc.subarray(named, { maxLength: 2 }),
      may: fc.subarray(named, { maxLength: 1 }),
      read: fc.boolean(),
      price: fc.option(fc.integer({ min: 1, max: 900 })),
      by: fc.subarray(
        foods.filter((one) => one !== key),
        { maxLength: 2 },
      ),
      dairy: fc.constantFrom('yes', 'no'),
    })
    .map(({ contains, may, read, price, by, dairy }) =>
      food(key, {
        ...(read || contains.length > 0 ? labelled({ contains, may }) : {}),
        ...(price === null ? {} : pack(`1 kg at ${price}`)),
        traits: { meat: 'no', dairy, honey: 'no', gelatine: 'no', lard: 'no', suet: 'no', rennet: 'no' },
        substitutes: by.map((one) => ({ key: one, item: { ingredient: one } })),
      }),
    );
const anyLines = (parts: readonly string[]) =>
  fc
    .uniqueArray(fc.constantFrom(...foods, ...parts), { minLength: 1, maxLength: 4 })
    .chain((items) =>
      fc.tuple(...items.map((item) => fc.integer({ min: 1, max: 500 }).map((grams) => `${grams} g ${item}`))),
    );
const anyFacts: fc.Arbitrary<Facts> = fc
  .record({
    foods: fc.tuple(...foods.map(anyFood)),
    part: anyLines([]),
    dishes: fc.tuple(anyLines(['@part']), anyLines(['@part']), anyLines(['@part']), anyLines([])),
  })
  .map(({ foods, part, dishes }) =>
    factsOf([
      ...foods,
      dish('part', '1 kg', part),
      ...dishes.map((lines, at) => dish(`d${at}`, '10 portions', lines)),
      dish('d0-otherwise', '10 portions', dishes[3], { variantOf: 'd0' }),
    ]),
  );
const anyDish = fc.record({
  recipe: fc.constantFrom('d0', 'd1', 'd2'),
  eaters: fc.oneof(
    fc.constant({ everybody: true }),
    fc.integer({ min: 1, max: 6 }).map((guests) => ({ counts: [{ group: 'adults', guests }] })),
  ),
  service: fc.constantFrom(null, 'plated', 'shared'),
  keptApart: fc.constantFrom('', 'on a tray of their own'),
});
const anyParty: fc.Arbitrary<Event> = fc
  .record({
    dishes: fc.uniqueArray(anyDish, { minLength: 1, maxLength: 2, selector: ({ recipe }) => recipe }),
    guests: fc.array(
      fc.record({
        count: fc.integer({ min: 1, max: 3 }),
        diets: fc.subarray(diets, { maxLength: 2 }),
        traces: fc.boolean(),
        table: fc.constantFrom('', '1', '2'),
        answered: fc.constantFrom(true, true, true, false),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ dishes, guests }) =>
    party(14, dishes, {
      guests: guests.map((one, at) => ({ ...one, key: `g${at}`, name: `G${at}`, group: 'adults' })),
    }),
  );

const sure = (event: Event, facts: Facts) =>
  coverageOf(event, facts)
    .rows.filter(({ courses: [main] }) => main!.byDiets === 'yes' && !main!.short)
    .map(({ guest }) => guest!.key);
const rank: Verdict[] = ['yes', 'may', 'unknown', 'no'];
const allergic = ['no-milk', 'no-eggs', 'no-fish', 'no-nuts'];
const worst = (wanted: readonly string[], recipe: Recipe, facts: Facts) =>
  rank.indexOf(judgeRecipe(wanted, recipe, facts).verdict);

test('every way that the search finds holds on the menu, and brings nobody’s allergen to a table they share', () => {
  let found = 0;
  fc.assert(
    fc.property(anyFacts, anyParty, (facts, event) => {
      const posed = pose(event, facts, new Map(), coverageOf(event, facts));
      const searched = posed.puzzle.needs.length === 0 ? [] : [...waysByFigures(posed.puzzle, solve, 3)];
      const answer = waysOut(event, facts, new Map(), solve);
      const { ways, nothing, lacking } = answer;
      const needed = neededFor(event, facts, new Map());
      expect(waysOut(event, needed, new Map(), solve, takenIn(facts))).toEqual(answer);
      // None that the search found was thrown away by the checks.
      expect(ways).toHaveLength(searched.length);
      const open = nothing.map(({ who }) => who);
      for (const way of ways) {
        found++;
        const then = { ...facts, recipes: new Map([...facts.recipes, ...byKey(way.recipes)]) };
        // Whom nothing serves takes nothing that is kept for others.
        const guests = way.event.guests.filter(({ name }) => !open.some((who) => who.startsWith(name)));
        const fed = sure({ ...way.event, guests }, then);
        for (const { who } of lacking)
          if (!open.includes(who)) expect(fed).toContain(who.slice(0, 2).toLowerCase());
        for (const key of sure(event, facts)) expect(fed).toContain(key);
        const before = event.courses[0]!.dishes;
        const fresh = way.event.courses[0]!.dishes.filter(
          ({ key }) => !before.some((one) => one.key === key),
        );
        for (const { recipe, keptFor } of fresh)
          for (const guest of event.guests.filter(({ key }) => keptFor.includes(key)))
            for (const other of event.guests) {
              const shared = guest.table === '' || other.table === '' || guest.table === other.table;
              const allergies = other.diets.filter((id) => allergic.includes(id));
              if (other === guest || !shared || allergies.length === 0) continue;
              for (const one of allergies) {
                const worse = Math.max(
                  ...before.map(({ recipe: key }) => worst([one], facts.recipes.get(key)!, facts)),
                );
                expect(worst([one], then.recipes.get(recipe)!, then)).toBeLessThanOrEqual(worse);
              }
            }
      }
    }),
    { numRuns: 400, endOnFailure: true },
  );
  expect(found).toBeGreaterThan(100);
}, 180_000);
