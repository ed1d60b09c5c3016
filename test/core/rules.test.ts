import { describe, expect, test } from 'vitest';
import { workbookRules } from '../../src/core/exchange/workbook-rules.js';
import { event } from '../../src/core/facts/event.js';
import type { EntityName } from '../../src/core/facts/facts.js';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { kitchen } from '../../src/core/facts/kitchen.js';
import { place } from '../../src/core/facts/place.js';
import { recipe } from '../../src/core/facts/recipe.js';
import { type Known, nothingKnown } from '../../src/core/known.js';
import { refusals } from '../../src/core/rules.js';
import { exampleKitchen } from '../world.js';

const known: Known = {
  ...nothingKnown,
  ingredients: new Set(['leek']),
  recipes: new Map([['pastry', { name: 'Shortcrust', components: [], variantOf: null }]]),
  places: new Set(['home']),
};

const schemas = { kitchen, place, ingredient, recipe, event };
const base: Record<EntityName, object> = {
  kitchen: { name: 'Mill Lane', currency: 'GBP', timeZone: 'Europe/London' },
  place: { key: 'home', name: 'Home', kind: 'home' },
  ingredient: { key: 'leek', name: 'Leeks' },
  recipe: { key: 'tart', name: 'Leek tart', yield: { portions: '8' } },
  event: {
    key: 'party',
    name: 'Party',
    date: '2026-11-28',
    place: 'home',
    groups: [{ key: 'adults', name: 'Adults', guests: 40 }],
  },
};

const why = (entity: EntityName, fields: object, beside: Partial<Known> = {}) =>
  refusals(entity, schemas[entity].parse({ ...base[entity], ...fields }) as never, {
    ...known,
    ...beside,
  }).map(({ code, subject, sentence }) => ({ code, field: subject.field, sentence }));

const line = (fields: object) => ({
  lines: [{ key: 'l1', amount: '1', unit: 'kg', item: { ingredient: 'leek' }, ...fields }],
});
const step = (key: string, ...after: string[]) => ({
  key,
  words: 'Do.',
  after: after.map((one) => ({ step: one })),
});
const cooked = (name: string, share: string) => ({ name, yield: share, from: 'bought' });
const pack = (key: string, fields: object = {}) => ({ key, size: { amount: '1', unit: 'kg' }, ...fields });
const dish = (fields: object) => ({
  courses: [
    { key: 'main', name: 'Main', time: '18:00', dishes: [{ key: 'd1', recipe: 'pastry', ...fields }] },
  ],
});
const guest = (fields: object) => ({ guests: [{ key: 'moss', name: 'Moss', group: 'adults', ...fields }] });

describe('refused, each for its reason and at its field', () => {
  test.each<[string, string, EntityName, object, Partial<Known>?]>([
    ['amount-zero', 'lines/l1/amount', 'recipe', line({ amount: '0.0' })],
    ['no-amount', 'lines/l1/amount', 'recipe', line({ amount: null })],
    ['no-such-ingredient', 'lines/l1/item', 'recipe', line({ item: { ingredient: 'saffron' } })],
    ['no-such-recipe', 'lines/l1/item', 'recipe', line({ item: { component: 'sauce' } })],
    ['key-twice', 'lines/l1', 'recipe', { lines: [...line({}).lines, ...line({}).lines] }],
    [
      'shares-over',
      'terms/instalments',
      'kitchen',
      { terms: { instalments: ['60', '50'].map((percent) => ({ words: 'part', percent, days: null })) } },
    ],
    [
      'no-such-group',
      'price/groups',
      'event',
      { price: { groups: [{ group: 'crew', pays: { aGuest: 500 } }] } },
    ],
    [
      'too-many-guests',
      'groups',
      'event',
      { groups: ['a', 'b'].map((key) => ({ key, name: key, guests: 60_000 })) },
    ],
    ['makes-nothing', 'yield/portions', 'recipe', { yield: { portions: '0' } }],
    ['makes-nothing', 'yield/volume', 'recipe', { yield: { volume: { amount: '0', unit: 'l' } } }],
    ['not-earlier', 'steps/s1/after', 'recipe', { steps: [step('s1', 's2'), step('s2')] }],
    ['not-earlier', 'steps/s1/after', 'recipe', { steps: [step('s1', 's1')] }],
    [
      'longest-shorter',
      'steps/s1/minutesLongest',
      'recipe',
      { steps: [{ ...step('s1'), minutes: 30, minutesLongest: 20 }] },
    ],
    ['no-such-recipe', 'variantOf', 'recipe', { variantOf: 'gone' }],
    ['variant-of-itself', 'variantOf', 'recipe', { variantOf: 'tart' }],
    ['name-taken', 'name', 'recipe', {}, { namesake: { key: 'other', name: 'LEEK  TART' } }],
    ['name-taken', 'name', 'ingredient', {}, { namesake: { key: 'other', name: 'leeks' } }],
    [
      'two-preferred',
      'packs',
      'ingredient',
      { packs: [pack('a', { preferred: true }), pack('b', { preferred: true })] },
    ],
    [
      'pack-empty',
      'packs/a/size',
      'ingredient',
      { packs: [pack('a', { size: { amount: '0', unit: 'kg' } })] },
    ],
    ['not-a-weight', 'yield/weight', 'recipe', { yield: { weight: { amount: '2', unit: 'each' } } }],
    ['not-a-volume', 'yield/volume', 'recipe', { yield: { volume: { amount: '2', unit: 'kg' } } }],
    ['loss-of-all', 'cookingLoss', 'recipe', { cookingLoss: '100' }],
    ['weight-of-measure', 'weights', 'ingredient', { weights: [{ unit: 'cup', grams: '120' }] }],
    ['yield-zero', 'edibleYield', 'ingredient', { edibleYield: { yield: '0' } }],
    ['density-zero', 'density', 'ingredient', { density: { gramsPerMl: '0' } }],
    ['cooked-yield-zero', 'cookedYields', 'ingredient', { cookedYields: [cooked('roasted', '0')] }],
    [
      'cooked-yield-twice',
      'cookedYields',
      'ingredient',
      { cookedYields: [cooked('roasted', '0.5'), cooked('Roasted', '0.6')] },
    ],
    [
      'weight-twice',
      'weights',
      'ingredient',
      {
        weights: [
          { unit: 'each', grams: '1' },
          { unit: 'each', grams: '2' },
        ],
      },
    ],
    ['no-such-allergen', 'allergens/mlik', 'ingredient', { allergens: { mlik: { state: 'contains' } } }],
    ['unit-spelt', 'lines/l1/unit', 'recipe', line({ unit: 'grams' })],
    ['unit-spelt', 'lines/l1/unit', 'recipe', line({ unit: 'cloves' })],
    [
      'unit-spelt',
      'packs/a/size',
      'ingredient',
      { packs: [pack('a', { size: { amount: '1', unit: 'kilo' } })] },
    ],
    ['no-such-place', 'place', 'event', { place: 'moon' }],
    ['no-such-group', 'guests/moss/group', 'event', guest({ group: 'children' })],
    ['no-such-diet', 'guests/moss/diets', 'event', guest({ diets: ['moon-food'] })],
    ['no-such-recipe', 'courses/main/dishes/d1/recipe', 'event', dish({ recipe: 'gone' })],
    [
      'no-such-group',
      'courses/main/dishes/d1/eaters',
      'event',
      dish({ eaters: { counts: [{ group: 'x', guests: 1 }] } }),
    ],
    [
      'portion-zero',
      'groups/adults/portion',
      'event',
      { groups: [{ key: 'adults', name: 'Adults', guests: 1, portion: '0' }] },
    ],
    ['two-homes', 'kind', 'place', {}, { otherHomes: ['Old kitchen'] }],
    ['no-home', 'kind', 'place', { kind: 'venue' }],
    ['home-archived', 'archived', 'place', { archived: true }],
    ['key-new', 'key', 'place', { key: 'new' }],
    ['key-new', 'key', 'ingredient', { key: 'new' }],
    ['key-new', 'key', 'recipe', { key: 'new' }],
    ['key-new', 'key', 'event', { key: 'new' }],
    ['currency-fixed', 'currency', 'kitchen', {}, { pricedIn: 'EUR' }],
    ['no-such-currency', 'currency', 'kitchen', { currency: 'QQQ' }],
    ['no-step', 'scaleStep', 'kitchen', { scaleStep: '0' }],
    ['no-such-zone', 'timeZone', 'kitchen', { timeZone: 'Europe/Atlantis' }],
    ['character', 'note', 'ingredient', { note: 'bad \0 word' }],
    ['character', 'lines/l1/preparation', 'recipe', line({ preparation: 'half \ud800 pair' })],
  ])('%s at %s', (code, field, entity, fields, beside) => {
    expect(why(entity, fields, beside)).toMatchObject([{ code, field }]);
  });
});

describe('allowed', () => {
  test.each<[string, EntityName, object, Partial<Known>?]>([
    ['a line to taste without an amount', 'recipe', line({ amount: null, scales: 'taste' })],
    [
      'steps that come after earlier ones',
      'recipe',
      { steps: [step('s1'), step('s2', 's1'), step('s3', 's1', 's2')] },
    ],
    ['an edible yield above 1, for what swells', 'ingredient', { edibleYield: { yield: '2.4' } }],
    ['one preferred pack of two', 'ingredient', { packs: [pack('a', { preferred: true }), pack('b')] }],
    ['the same currency once prices stand', 'kitchen', {}, { pricedIn: 'GBP' }],
    ['a venue beside the home', 'place', { kind: 'venue' }, { otherHomes: ['Home'] }],
    ['guests with a diet', 'event', guest({ diets: ['vegan'] })],
  ])('%s', (_, entity, fields, beside) => {
    expect(why(entity, fields, beside)).toEqual([]);
  });

  test('the whole example kitchen', () => {
    expect(workbookRules(exampleKitchen())).toEqual([]);
  });
});

test('an allergen or a diet that nearly is one is guessed at', () => {
  const [allergen] = why('ingredient', { allergens: { nut: { state: 'contains' } } });
  expect(allergen?.sentence).toContain('Did you mean "nuts"?');
  const [diet] = why('event', guest({ diets: ['vegetarien'] }));
  expect(diet?.sentence).toContain('Did you mean "vegetarian"?');
});

// What was served is calculated from as anything else is, so a file may not smuggle in what no page would save.
test('what a done event keeps obeys the same rules', () => {
  const tart = { ...base.recipe, key: 'pastry', ...line({ item: { component: 'pastry' } }) };
  const served = (fields: object) => ({
    state: 'done',
    served: {
      date: '2026-11-28',
      kitchen: base.kitchen,
      places: [base.place],
      ingredients: [base.ingredient],
      recipes: [{ ...base.recipe, key: 'pastry', variantOf: 'gone' }],
      ...fields,
    },
  });
  expect(why('event', served({}))).toEqual([]);
  for (const [code, field, fields] of [
    ['contains-itself', 'recipes/pastry/lines/l1/item', { recipes: [tart] }],
    [
      'no-such-ingredient',
      'recipes/tart/lines/l1/item',
      { recipes: [{ ...base.recipe, ...line({}) }], ingredients: [] },
    ],
    ['no-such-zone', 'kitchen/timeZone', { kitchen: { ...base.kitchen, timeZone: 'Europe/Atlantis' } }],
    [
      'yield-zero',
      'ingredients/leek/edibleYield',
      { ingredients: [{ ...base.ingredient, edibleYield: { yield: '0' } }] },
    ],
    ['key-twice', 'ingredients/leek', { ingredients: [base.ingredient, base.ingredient] }],
  ] as const)
    expect(why('event', served(fields))).toMatchObject([{ code, field: `served/${field}` }]);
});

// A tart on a pastry that is made of the tart; the loop is named from the recipe that is saved, however deep.
test('a recipe that would contain itself is refused, and the loop named', () => {
  const knows = (name: string, ...components: string[]) => ({ name, components, variantOf: null });
  const recipes = new Map([
    ['pastry', knows('Shortcrust', 'butter')],
    ['butter', knows('Herb butter', 'tart')],
  ]);
  const [direct] = why('recipe', line({ item: { component: 'tart' } }), {
    recipes: new Map([['tart', knows('Leek tart')]]),
  });
  expect(direct).toMatchObject({ code: 'contains-itself', field: 'lines/l1/item' });
  expect(direct?.sentence).toContain('Leek tart → Leek tart.');
  const [deep] = why('recipe', line({ item: { component: 'pastry' } }), { recipes });
  expect(deep?.sentence).toBe(
    'Leek tart would contain itself: Leek tart → Shortcrust → Herb butter → Leek tart.',
  );
});
