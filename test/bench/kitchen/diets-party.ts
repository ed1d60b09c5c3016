import published from '../../../shared/allergens.json' with { type: 'json' };
import { diets } from '../../../src/core/diets.js';
import { type Event, event } from '../../../src/core/facts/event.js';
import { byKey, type Facts } from '../../../src/core/facts/facts.js';
import { type Ingredient, ingredient, traits } from '../../../src/core/facts/ingredient.js';
import { kitchen } from '../../../src/core/facts/kitchen.js';
import { place } from '../../../src/core/facts/place.js';
import { type Recipe, recipe } from '../../../src/core/facts/recipe.js';
import { chanceFor } from './chance.js';

export type PartyKind = 'plain' | 'mixed' | 'few' | 'many';

// In a party that needs many dishes guests are of seven families by what they avoid; a food does for two neighbours, or
// for nobody.
const families = [
  { avoid: 'no-milk', allergen: 'milk' },
  { avoid: 'no-eggs', allergen: 'eggs' },
  { avoid: 'no-fish', allergen: 'fish' },
  { avoid: 'no-nuts', allergen: 'almond' },
  { avoid: 'no-soya', allergen: 'soya' },
  { avoid: 'no-celery', allergen: 'celery' },
  { avoid: 'no-mustard', allergen: 'mustard' },
];
const forNobody = families.length;
const rare = ['lupin', 'sesame', 'crustaceans'];

export const size = { guests: 150, dishes: 40, courses: 6, variants: 4 };

/**
 * A party of so many guests who all have diets, and so many dishes with variants in the library; all invented. In a
 * mixed one a variant is made of anything, so that no dish does for all of a course and several must be found. In one of
 * few portions each dish is besides made for some of the guests alone, so that what is there must be shared out with
 * what is made. In one of many dishes four are needed in every course, which the solver decides.
 */
export const dietsParty = (name: string, kind: PartyKind = 'plain'): { event: Event; facts: Facts } => {
  const mixed = kind !== 'plain';
  const { between: whole, pick } = chanceFor(name);
  const some = <T>(list: readonly T[], most: number): T[] => [
    ...new Set(Array.from({ length: whole(0, most) }, () => pick(list))),
  ];
  const substances = published.substances.map(({ id }) => id);
  const inFamily = (at: number) => [
    ...families
      .filter((_, f) => at % 8 === forNobody || (f !== at % 8 && f !== ((at % 8) + 1) % 7))
      .map(({ allergen }) => allergen),
    ...(whole(0, 19) === 0 ? [pick(rare)] : []),
  ];
  const ingredients: Ingredient[] = Array.from({ length: 120 }, (_, at) => {
    // A third is plain; the rest bring an allergen or two, and some of them what a choice or a faith turns on.
    const plain = at % 3 === 0 && !mixed;
    const named = kind === 'many' ? inFamily(at) : plain ? [] : some(substances, 2);
    const is = kind === 'many' || plain ? [] : some(traits, 2);
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
  const anyLine = (at: number, family: number) =>
    lineOf(at, `i${kind === 'many' ? 8 * whole(0, 14) + family : whole(0, 119)}`);
  const recipes: Recipe[] = [];
  for (let at = 0; at < size.dishes; at++) {
    const lines = Array.from({ length: 8 }, (_, n) => anyLine(n, forNobody));
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
          kind !== 'many' && whole(0, 2) === 0
            ? line
            : mixed
              ? anyLine(i, (at + n) % 7)
              : lineOf(i, `i${3 * whole(0, 39)}`),
        ),
      });
  }
  const forFew = () => ({
    counts: [
      { group: 'adults', guests: whole(5, 15) },
      { group: 'children', guests: whole(1, 3) },
    ],
  });
  const courses = Array.from({ length: size.courses }, (_, at) => ({
    key: `c${at}`,
    name: `Course ${at}`,
    time: `${12 + at}:00`,
    dishes: recipes
      .filter(
        ({ variantOf }, n) => variantOf === null && Math.floor(n / (size.variants + 1)) % size.courses === at,
      )
      .map(({ key }) => ({
        key,
        recipe: key,
        ...(kind === 'few' || kind === 'many' ? { eaters: forFew() } : {}),
      })),
  }));
  const groups = [
    { key: 'adults', name: 'Adults', guests: 130 },
    { key: 'children', name: 'Children', guests: 20, portion: '1/2' },
  ];
  const dietsOf = (at: number): string[] => {
    if (kind === 'many') return [families[at % 7]!.avoid, ...some(rare, 1).map((id) => `no-${id}`)];
    const all = diets.map(({ id }) => id);
    return [...new Set([pick(all), ...some(all, 1)])];
  };
  const guests = Array.from({ length: size.guests }, (_, at) => ({
    key: `g${at}`,
    name: `Guest ${at}`,
    group: at < 130 ? 'adults' : 'children',
    table: String(at % 15),
    diets: dietsOf(at),
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
