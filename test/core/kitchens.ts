import fc from 'fast-check';
import published from '../../shared/allergens.json' with { type: 'json' };
import { diets } from '../../src/core/diets.js';
import { amount as kept } from '../../src/core/facts/common.js';
import { type Event, event } from '../../src/core/facts/event.js';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { type Ingredient, ingredient, traits } from '../../src/core/facts/ingredient.js';
import { allergenLists, kitchen } from '../../src/core/facts/kitchen.js';
import { type Recipe, recipe, scalings } from '../../src/core/facts/recipe.js';
import { Rational } from '../../src/core/quantity/rational.js';
import { home } from './small.js';

/** Small whole kitchens with their gaps: recipes up to four deep, prices, yields and labels that may be missing. */
export type Kitchen = { facts: Facts; events: Event[] };

const often = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: null, freq: 5 });
const amounts = fc.constantFrom('1', '2.5', '0.35', '3/7', '250', '12', '1/3', '0.001');
const extreme = fc.constantFrom('999999999999', '1/999999999', '0.000000001', '123456789/7');
const anyAmount = fc.oneof({ weight: 20, arbitrary: amounts }, { weight: 1, arbitrary: extreme });
const weighed = fc.constantFrom('g', 'kg', 'oz', 'lb');
const measured = fc.constantFrom('ml', 'l', 'tbsp', 'cup');
const counted = fc.constantFrom('each', 'clove', 'dozen');
const anyUnit = fc.oneof(weighed, measured, counted);
const states = fc.constantFrom('contains', 'may', 'free', 'free', 'free', 'free', 'free');
const named = <T>(ids: readonly string[], value: fc.Arbitrary<T>) =>
  fc
    .tuple(...ids.map(() => often(value)))
    .map((list) => Object.fromEntries(ids.flatMap((id, at) => (list[at] === null ? [] : [[id, list[at]]]))));

const substances = published.substances.map(({ id }) => id);
const anyAllergens = fc
  .tuple(named(substances, states), fc.dictionary(fc.constantFrom('nuts', 'gluten'), states, { maxKeys: 2 }))
  .map(([own, group]) =>
    Object.fromEntries(Object.entries({ ...own, ...group }).map(([id, state]) => [id, { state }])),
  );

const anyPacks = fc.record({ amount: amounts, unit: anyUnit, price: often(fc.nat(5000)) }).map((one) => {
  const prices = one.price === null ? [] : [{ key: 'p', date: '2026-01-05', price: one.price }];
  return [{ key: 'pack', size: { amount: one.amount, unit: one.unit }, prices }];
});

const anyIngredient = (key: string): fc.Arbitrary<Ingredient> =>
  fc
    .record({
      notBought: fc.oneof(
        { weight: 8, arbitrary: fc.constant(false) },
        { weight: 1, arbitrary: fc.constant(true) },
      ),
      packs: fc.oneof({ weight: 6, arbitrary: anyPacks }, { weight: 1, arbitrary: fc.constant([]) }),
      edibleYield: often(
        fc.constantFrom('1', '0.9', '0.44', '3.05', '2/3').map((share) => ({ yield: share })),
      ),
      cookedYields: fc.subarray([
        { name: 'roasted', yield: '0.584', from: 'bought' },
        { name: 'boiled', yield: '3.05', from: 'prepared' },
      ]),
      density: often(fc.constantFrom('1', '0.92', '1.4329').map((gramsPerMl) => ({ gramsPerMl }))),
      weights: fc.subarray([
        { unit: 'each', grams: '110', of: 'prepared' },
        { unit: 'clove', grams: '10/3', of: 'bought' },
      ]),
      allergens: anyAllergens,
      traits: named(traits, fc.constantFrom('yes', 'no', 'no', 'no', 'unknown')),
    })
    .map((doc) => ingredient.parse({ key, name: key, ...doc }));

const anyYield = fc.oneof(
  fc.record({ portions: amounts, weight: often(fc.record({ amount: amounts, unit: weighed })) }),
  fc.record({ portions: amounts, volume: fc.record({ amount: amounts, unit: measured }) }),
  fc.record({ weight: fc.record({ amount: amounts, unit: weighed }) }),
);

const anySteps = fc.array(
  fc.record({
    minutes: often(fc.nat(90)),
    daysAhead: fc.constantFrom(0, 0, 1, 2),
    oven: fc.option(fc.record({ heat: fc.constantFrom(150, 180, 220) }), { nil: null }),
    portionsPerShelf: often(amounts),
    where: fc.constantFrom('home', 'either', 'venue'),
  }),
  { maxLength: 3 },
);

const straights = ['straight', 'straight', 'straight', 'straight'];

const anyLine = (foods: readonly string[], below: readonly string[]) =>
  fc.record({
    amount: anyAmount,
    more: fc.option(amounts, { nil: null, freq: 2 }),
    scales: fc.constantFrom(...straights, ...scalings),
    stated: fc.constantFrom('usual', 'usual', 'prepared', 'bought', 'cooked'),
    cooked: fc.constantFrom('roasted', 'boiled'),
    unit: fc.oneof({ weight: 8, arbitrary: anyUnit }, { weight: 1, arbitrary: fc.constant('percent') }),
    part: fc.constantFrom('g', 'ml', 'portion', 'batch', 'each'),
    item: fc.constantFrom(
      ...foods.map((key) => ({ ingredient: key })),
      ...below.map((key) => ({ component: key })),
    ),
  });

type AnyLine = Record<'amount' | 'scales' | 'stated' | 'cooked' | 'unit' | 'part', string> & {
  item: object;
  more: string | null;
};
const written = (list: readonly AnyLine[]) =>
  list.map(({ part, more, ...one }, at) => ({
    ...one,
    key: `l${at}`,
    unit: 'component' in one.item ? part : one.unit,
    ...ends(one.scales === 'taste' && at % 2 === 0 ? null : one.amount, more),
  }));

const ends = (amount: string | null, more: string | null) => {
  const end = amount && more && Rational.parse(amount).plus(Rational.parse(more)).toString();
  return { amount, amountTo: end && kept.safeParse(end).success ? end : null };
};

const anyRecipe = (key: string, foods: readonly string[], below: readonly string[]): fc.Arbitrary<Recipe> =>
  fc
    .record({
      yield: anyYield,
      byPiece: fc.boolean(),
      cookingLoss: fc.constantFrom(null, '0', '41.6', '100', '120'),
      lines: fc.array(anyLine(foods, below), { maxLength: 5 }).map(written),
      steps: anySteps.map((list) => list.map((one, at) => ({ key: `s${at}`, words: 'Do it.', ...one }))),
      keepingDays: often(fc.nat(4)),
    })
    .map((doc) => recipe.parse({ key, name: key, ...doc }));

const anyEaters = fc.oneof(
  fc.constant({ everybody: true }),
  fc.constantFrom('0', '50', '100/3').map((percent) => ({ shares: [{ group: 'adults', percent }] })),
  fc.nat(9).map((guests) => ({ counts: [{ group: 'children', guests }] })),
);

const anyDish = (recipes: readonly string[]) =>
  fc.record({
    recipe: fc.constantFrom(...recipes),
    eaters: anyEaters,
    portion: fc.option(fc.record({ amount: amounts, unit: fc.constantFrom('g', 'ml', 'each') }), {
      nil: null,
      freq: 2,
    }),
  });

const anyGuests = fc.array(
  fc.record({
    group: fc.constantFrom('adults', 'children'),
    answered: fc.boolean(),
    diets: fc.subarray(
      diets.map(({ id }) => id),
      { maxLength: 2 },
    ),
  }),
  { maxLength: 3 },
);

const keyed = <T extends object>(letter: string, list: readonly T[]) =>
  list.map((one, at) => ({ key: `${letter}${at}`, ...one }));

const anyEvent = (key: string, recipes: readonly string[]): fc.Arbitrary<Event> =>
  fc
    .record({
      date: fc.constantFrom('2026-11-28', '2026-11-29', '2026-12-01'),
      adults: fc.constantFrom(0, 1, 40, 46, 100_000),
      children: fc.constantFrom(0, 7),
      overCatering: fc.constantFrom('0', '10', '12.5'),
      guests: anyGuests,
      courses: fc.array(fc.array(anyDish(recipes), { maxLength: 3 }), { maxLength: 2 }),
    })
    .map(({ adults, children, guests, courses, ...doc }) =>
      event.parse({
        key,
        name: key,
        place: 'home',
        state: 'confirmed',
        ...doc,
        guests: keyed('g', guests),
        groups: [
          { key: 'adults', name: 'Adults', guests: adults },
          { key: 'children', name: 'Children', guests: children, portion: '1/2' },
        ],
        courses: courses.map((dishes, at) => ({
          key: `c${at}`,
          name: `Course ${at}`,
          time: `1${at + 8}:00`,
          dishes: keyed('d', dishes),
        })),
      }),
    );

/** Recipes r0 … r7 in four floors: each uses only recipes of the floors below. */
const floor = (at: number) => Math.floor(at / 2);

export const anyKitchen: fc.Arbitrary<Kitchen> = fc
  .record({ foods: fc.integer({ min: 1, max: 5 }), recipes: fc.integer({ min: 1, max: 8 }) })
  .chain((size) => {
    const foods = Array.from({ length: size.foods }, (_, at) => `i${at}`);
    const recipes = Array.from({ length: size.recipes }, (_, at) => `r${at}`);
    return fc.record({
      list: fc.constantFrom(...allergenLists),
      cup: fc.constantFrom('metric', 'us', 'australian'),
      ingredients: fc.tuple(...foods.map(anyIngredient)),
      recipes: fc.tuple(
        ...recipes.map((key, at) =>
          anyRecipe(
            key,
            foods,
            recipes.filter((_, other) => floor(other) > floor(at)),
          ),
        ),
      ),
      events: fc.tuple(anyEvent('e0', recipes), anyEvent('e1', recipes), anyEvent('e2', recipes)),
    });
  })
  .map(({ list, cup, ingredients, recipes, events }) => ({
    facts: {
      kitchen: kitchen.parse({
        name: 'Invented',
        currency: 'GBP',
        timeZone: 'Europe/London',
        allergenList: list,
        cup,
      }),
      places: byKey([home]),
      ingredients: byKey(ingredients),
      recipes: byKey(recipes),
    },
    events,
  }));

/** The same kitchen with every recipe changed. */
export const withRecipes = (facts: Facts, change: (recipe: Recipe) => Recipe): Facts => ({
  ...facts,
  recipes: byKey([...facts.recipes.values()].map(change)),
});

/** Every recipe below one, itself included, found by walking down. */
export const reached = (from: Recipe, facts: Facts): Recipe[] => {
  const found = new Set<Recipe>([from]);
  for (const one of found)
    for (const { item } of one.lines) if ('component' in item) found.add(facts.recipes.get(item.component)!);
  return [...found];
};
