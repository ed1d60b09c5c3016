import published from '../../../shared/allergens.json' with { type: 'json' };
import { diets } from '../../../src/core/diets.js';
import { type Event, event } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { type Ingredient, ingredient, traits } from '../../../src/core/facts/ingredient.js';
import { kitchen } from '../../../src/core/facts/kitchen.js';
import { place } from '../../../src/core/facts/place.js';
import { type Recipe, recipe } from '../../../src/core/facts/recipe.js';
import { chanceFor } from './chance.js';

export const size = { guests: 150, dishes: 40, courses: 6, variants: 4 };

/**
 * A party of so many guests who all have diets, and so many dishes with variants in the library; all invented. In a
 * mixed one a variant is made of anything, so that no dish does for all of a course and several must be found.
 */
export const dietsParty = (name: string, mixed = false): { event: Event; facts: Facts } => {
  const { between: whole, pick } = chanceFor(name);
  const some = <T>(list: readonly T[], most: number): T[] => [
    ...new Set(Array.from({ length: whole(0, most) }, () => pick(list))),
  ];
  const substances = published.substances.map(({ id }) => id);
  const ingredients: Ingredient[] = Array.from({ length: 120 }, (_, at) => {
    // A third is plain; the rest bring an allergen or two, and some of them what a choice or a faith turns on.
    const named = at % 3 === 0 && !mixed ? [] : some(substances, 2);
    const is = at % 3 === 0 && !mixed ? [] : some(traits, 2);
    return ingredient.parse({
      key: `i${at}`,
      name: `Food ${at}`,
      edibleYield: { yield: '1' },
      packs: [
        {
          key: 'p',
          size: { amount: '1', unit: 'kg' },
          preferred: true,
          prices: [{ key: 'd', date: '2026-01-05', price: whole(100, 2000) }],
        },
      ],
      allergens: Object.fromEntries(
        substances.map((id) => [id, { state: named.includes(id) ? 'contains' : 'free', date: '2026-01-05' }]),
      ),
      traits: Object.fromEntries(traits.map((trait) => [trait, is.includes(trait) ? 'yes' : 'no'])),
      substitutes:
        at % 3 === 0
          ? []
          : some(mixed ? [0, 1, 2, 4, 5, 7, 8, 10] : [0, 3, 6, 9, 12, 15, 18, 21], 3)
              .filter((to) => to !== at)
              .map((to) => ({
                key: `s${to}`,
                item: { ingredient: `i${to}` },
              })),
    });
  });
  const steps = () => [{ key: 's', words: 'Make it.', minutes: whole(5, 40) }];
  const lineOf = (at: number, key: string) => ({
    key: `l${at}`,
    amount: String(whole(20, 200)),
    unit: 'g',
    item: { ingredient: key },
  });
  const anyLine = (at: number) => lineOf(at, `i${whole(0, 119)}`);
  const recipes: Recipe[] = [];
  for (let at = 0; at < size.dishes; at++) {
    const lines = Array.from({ length: 8 }, (_, n) => anyLine(n));
    const make = (more: object) =>
      recipes.push(
        recipe.parse({ name: `Dish ${at}`, yield: { portions: '10' }, lines, steps: steps(), ...more }),
      );
    make({ key: `r${at}` });
    for (let n = 0; n < size.variants; n++)
      make({
        key: `r${at}-${n}`,
        name: `Dish ${at}, the ${n}th other way`,
        variantOf: `r${at}`,
        lines: lines.map((line, i) =>
          whole(0, 2) === 0 ? line : mixed ? anyLine(i) : lineOf(i, `i${3 * whole(0, 39)}`),
        ),
      });
  }
  const courses = Array.from({ length: size.courses }, (_, at) => ({
    key: `c${at}`,
    name: `Course ${at}`,
    time: `${12 + at}:00`,
    dishes: recipes
      .filter(
        ({ variantOf }, n) => variantOf === null && Math.floor(n / (size.variants + 1)) % size.courses === at,
      )
      .map(({ key }) => ({ key, recipe: key })),
  }));
  const groups = [
    { key: 'adults', name: 'Adults', guests: 130 },
    { key: 'children', name: 'Children', guests: 20, portion: '1/2' },
  ];
  const guests = Array.from({ length: size.guests }, (_, at) => ({
    key: `g${at}`,
    name: `Guest ${at}`,
    group: at < 130 ? 'adults' : 'children',
    table: String(at % 15),
    diets: [
      pick(diets).id,
      ...some(
        diets.map(({ id }) => id),
        1,
      ),
    ].filter((id, n, all) => all.indexOf(id) === n),
  }));
  const home = place.parse({ key: 'home', name: 'Home', kind: 'home' });
  return {
    event: event.parse({
      key: 'party',
      name: 'Party',
      date: '2026-11-28',
      place: 'home',
      groups,
      guests,
      courses,
    }),
    facts: {
      kitchen: kitchen.parse({ name: 'Invented', currency: 'GBP', timeZone: 'Europe/London' }),
      places: byKey([home]),
      ingredients: byKey(ingredients),
      recipes: byKey(recipes),
    },
  };
};
