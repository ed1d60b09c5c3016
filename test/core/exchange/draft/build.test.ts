import { expect, test } from 'vitest';
import {
  buildRecipe,
  type Confirmed,
  type ConfirmedLine,
  componentName,
  purposeOf,
} from '../../../../src/core/exchange/draft/build.js';

const keys = {
  recipe: (name: string) => `r-${name.toLowerCase().replace(/\W+/g, '-')}`,
  ingredient: (name: string) => `i-${name.toLowerCase().replace(/\W+/g, '-')}`,
};

const line = (part: Partial<ConfirmedLine> & Pick<ConfirmedLine, 'key' | 'item'>): ConfirmedLine => ({
  amount: '1',
  amountTo: null,
  unit: 'each',
  preparation: '',
  stated: 'usual',
  holds: null,
  ...part,
});

const step = (words: string) => ({
  words,
  minutes: 10,
  minutesLongest: null,
  attended: true,
  oven: null,
  portionsPerShelf: null,
  rings: 0,
  pan: null,
  mixers: 0,
  fridgeShelves: 0,
  equipment: [],
  after: [],
  servedWithin: null,
  where: 'home' as const,
  daysAhead: 0,
});

const draft = (parts: Confirmed['parts']): Confirmed => ({
  name: 'Leek tart',
  yield: { portions: '8', weight: null, volume: null },
  byPiece: false,
  cup: 'us',
  note: '',
  parts,
});

test('whose cups and spoons are meant holds for the recipe and its components', () => {
  const lines = [line({ key: 'l1', item: { ingredient: 'flour' } })];
  const own = { name: 'Pastry', makes: { amount: '1', unit: 'portion' } };
  const built = buildRecipe(
    draft([
      { title: '', component: null, steps: [], lines },
      { title: 'Pastry', component: own, steps: [], lines },
    ]),
    keys,
  );
  expect([built.recipe, ...built.components].map(({ cup }) => cup)).toEqual(['us', 'us']);
});

test('lines under a heading stay in this recipe, in order, and say what they are for', () => {
  const { recipe, components } = buildRecipe(
    draft([
      {
        title: '',
        component: null,
        steps: [step('Mix.')],
        lines: [line({ key: 'l1', item: { ingredient: 'flour' } })],
      },
      {
        title: 'For the sauce',
        component: null,
        steps: [step('Simmer.')],
        lines: [line({ key: 'l2', item: { ingredient: 'milk' }, preparation: 'hot' })],
      },
    ]),
    keys,
  );
  expect(components).toEqual([]);
  expect(recipe.lines.map(({ item, preparation }) => [item, preparation])).toEqual([
    [{ ingredient: 'flour' }, ''],
    [{ ingredient: 'milk' }, 'hot, for the sauce'],
  ]);
  expect(recipe.steps.map(({ key, words }) => [key, words])).toEqual([
    ['step-1', 'Mix.'],
    ['step-2', 'Simmer.'],
  ]);
});

test('a heading that becomes a component takes its lines and steps along, and goes in as one batch', () => {
  const { recipe, components } = buildRecipe(
    draft([
      {
        title: 'For the sauce',
        component: { name: 'Cheese sauce', makes: { amount: '600', unit: 'ml' } },
        steps: [step('Simmer.')],
        lines: [line({ key: 'l1', amount: '500', unit: 'ml', item: { ingredient: 'milk' } })],
      },
      { title: '', component: null, steps: [], lines: [line({ key: 'l2', item: { ingredient: 'leek' } })] },
    ]),
    keys,
  );
  expect(components).toHaveLength(1);
  expect(components[0]).toMatchObject({
    key: 'r-cheese-sauce',
    yield: { portions: null, weight: null, volume: { amount: '600', unit: 'ml' } },
    lines: [{ amount: '500', unit: 'ml', preparation: '' }],
    steps: [{ words: 'Simmer.' }],
  });
  expect(recipe.lines.map(({ amount, unit, item }) => [amount, unit, item])).toEqual([
    ['1', 'batch', { component: 'r-cheese-sauce' }],
    ['1', 'each', { ingredient: 'leek' }],
  ]);
  expect(recipe.steps).toEqual([]);
});

test('both ends of a range are kept, and what has no amount goes to taste', () => {
  const lines = [
    line({ key: 'l1', amount: '2', amountTo: '3', unit: 'tbsp', item: { ingredient: 'oil' } }),
    line({ key: 'l2', amount: null, item: { ingredient: 'salt' } }),
  ];
  const { recipe } = buildRecipe(draft([{ title: '', component: null, steps: [], lines }]), keys);
  expect(recipe.lines.map(({ amount, amountTo, scales }) => [amount, amountTo, scales])).toEqual([
    ['2', '3', 'straight'],
    [null, null, 'taste'],
  ]);
});

test('a new ingredient named twice is made once; figures come only with the row that was taken', () => {
  const lines = [
    line({ key: 'l1', item: { fresh: 'Leeks', food: 'leek' } }),
    line({ key: 'l2', item: { fresh: 'leek', food: '' } }),
    line({ key: 'l3', item: { fresh: 'Sumac', food: '' } }),
  ];
  const { recipe, ingredients } = buildRecipe(
    draft([{ title: '', component: null, steps: [], lines }]),
    keys,
  );
  expect(ingredients.map(({ key }) => key)).toEqual(['i-leeks', 'i-sumac']);
  expect(recipe.lines.map(({ item }) => item)).toEqual([
    { ingredient: 'i-leeks' },
    { ingredient: 'i-leeks' },
    { ingredient: 'i-sumac' },
  ]);
  expect(ingredients[0]!.edibleYield?.source).toMatch(/^USDA SR28 /);
  expect(ingredients[1]).toMatchObject({
    edibleYield: null,
    density: null,
    weights: [],
    packs: [],
    traits: {},
  });
});

test('2 tins of 400 g: the tin becomes a weight of its ingredient, 400 g as bought, once', () => {
  const holds = { amount: '400', unit: 'g' };
  const lines = [
    line({ key: 'l1', amount: '2', unit: 'tin', holds, item: { ingredient: 'chickpeas' } }),
    line({ key: 'l2', unit: 'tin', holds: { amount: '14', unit: 'oz' }, item: { ingredient: 'chickpeas' } }),
    line({ key: 'l3', unit: 'tin', holds: { amount: '14', unit: 'oz' }, item: { fresh: 'Beans', food: '' } }),
  ];
  const { recipe, weights, ingredients } = buildRecipe(
    draft([{ title: '', component: null, steps: [], lines }]),
    keys,
  );
  expect(recipe.lines[0]).toMatchObject({ amount: '2', unit: 'tin' });
  expect(weights).toEqual([
    {
      ingredient: 'chickpeas',
      weight: { unit: 'tin', grams: '400', of: 'bought', source: 'As the recipe of Leek tart says' },
    },
  ]);
  // 14 × 28.349523125 g, NIST SP 811
  expect(ingredients[0]!.weights[0]!.grams).toBe('396.89332375');
});

test.each([
  ['For the sauce:', 'for the sauce', 'Sauce'],
  ['Filling', 'for the filling', 'Filling'],
  ['TO SERVE', 'to serve', 'Serve'],
  ['for a quick pickle', 'for a quick pickle', 'Quick pickle'],
  ['Ingredients', '', ''],
  ['', '', ''],
])('%s is %s, and as a recipe %s', (title, purpose, name) => {
  expect(purposeOf(title)).toBe(purpose);
  expect(componentName(title)).toBe(name);
});
