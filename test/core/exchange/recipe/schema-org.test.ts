import { expect, test } from 'vitest';
import type { RecipeDraft } from '../../../../src/core/exchange/recipe/draft.js';
import { readRecipes } from '../../../../src/core/exchange/recipe/read-recipes.js';

const draftsOf = (text: string): RecipeDraft[] => {
  const read = readRecipes(text);
  if ('sentence' in read) throw new Error(read.sentence);
  return read.drafts;
};

/** The figures of a draft in a few words, for reading at a glance. */
const brief = (draft: RecipeDraft) => ({
  name: draft.name,
  portions: draft.yield.portions,
  lines: draft.sections.flatMap(({ title, lines }) =>
    lines.map(({ read }) =>
      `${title ? `${title}: ` : ''}${read.quantity ?? ''} ${read.unit ?? ''} ${read.food}`.trim(),
    ),
  ),
  steps: draft.steps.map(
    ({ part, words, minutes }) => `${part ? `${part}: ` : ''}${words}${minutes ? ` (${minutes})` : ''}`,
  ),
});

const base = {
  '@context': 'https://schema.org',
  '@type': 'Recipe',
  name: 'Leek tart',
  recipeYield: '6',
  recipeIngredient: ['500 g leeks', '3 eggs'],
  recipeInstructions: 'Slice the leeks.\nBake at 180C for 35 minutes.',
};
const plain = {
  name: 'Leek tart',
  portions: '6',
  lines: ['500 g leeks', '3 each eggs'],
  steps: ['Slice the leeks.', 'Bake at 180C for 35 minutes. (35)'],
};
const one = (data: unknown) => {
  const drafts = draftsOf(JSON.stringify(data));
  expect(drafts).toHaveLength(1);
  return brief(drafts[0]!);
};

test('a recipe alone, in a list, in a graph, inside a page and with several types is the same recipe', () => {
  expect(one(base)).toEqual(plain);
  expect(one([{ '@type': 'WebSite', name: 'Site' }, base])).toEqual(plain);
  expect(
    one({ '@context': 'https://schema.org', '@graph': [{ '@type': 'Person', name: 'A cook' }, base] }),
  ).toEqual(plain);
  expect(one({ '@type': 'WebPage', mainEntity: base })).toEqual(plain);
  expect(one({ ...base, '@type': ['Recipe', 'NewsArticle'] })).toEqual(plain);
  expect(one({ ...base, '@type': 'http://schema.org/Recipe' })).toEqual(plain);
  expect(
    one({ '@type': 'ItemList', itemListElement: [{ '@type': 'ListItem', position: 1, item: base }] }),
  ).toEqual(plain);
});

test.each([
  ['a number', 6, '6'],
  ['a text', 'Serves 6', '6'],
  ['a list', ['6', '6 servings'], '6'],
  ['a quantitative value', { '@type': 'QuantitativeValue', value: 6, unitText: 'servings' }, '6'],
  ['a list with a yield', ['12', '12 rolls'], '12'],
  ['text with entities', 'Serves&nbsp;6', '6'],
])('recipeYield as %s', (_, recipeYield, portions) => {
  expect(one({ ...base, recipeYield }).portions).toBe(portions);
});

test('a yield that is a range, a weight, pieces or no figure says so', () => {
  const made = (recipeYield: unknown) => {
    const [draft] = draftsOf(JSON.stringify({ ...base, recipeYield }));
    const { portions, portionsTo, byPiece, weight, volume } = draft!.yield;
    return { portions, portionsTo, byPiece, weight, volume, unsure: draft!.unsure };
  };
  const none = { portions: null, portionsTo: null, byPiece: false, weight: null, volume: null };
  expect(made('Serves 4-6')).toEqual({
    ...none,
    portions: '4',
    portionsTo: '6',
    unsure: ['A range of portions is stated; a recipe goes by one of its figures.'],
  });
  expect(made('Makes about 1.2 litres')).toEqual({
    ...none,
    volume: { amount: '1.2', unit: 'l' },
    unsure: [],
  });
  expect(made('Makes 2 dozen biscuits')).toEqual({ ...none, portions: '24', byPiece: true, unsure: [] });
  expect(made('1 loaf').unsure).toEqual(['How many portions one of them gives is not said.']);
  expect(made('a crowd').unsure).toEqual(['"a crowd" is not read as what it makes.']);
  expect(made(['4', '6 servings']).unsure).toEqual(['What it makes is stated twice: "6 servings" and "4".']);
  expect(made(undefined).unsure).toEqual(['What it makes is not said.']);
});

test.each([
  ['PT1H30M', 90],
  ['PT90M', 90],
  ['P0DT1H', 60],
  ['P1DT2H', 1560],
  ['PT45S', 1],
  ['P1W', 10_080],
  ['PT0.5H', 30],
  ['PT0M', null],
  ['1 hour 20 minutes', 80],
  ['45', 45],
  ['soon', null],
])('a time of %s is %s minutes', (cookTime, minutes) => {
  const [draft] = draftsOf(JSON.stringify({ ...base, cookTime }));
  expect(draft!.times).toEqual({ prep: null, cook: minutes, total: null });
});

test('instructions as steps, directions, sections, lists and mark-up', () => {
  const steps = (recipeInstructions: unknown) => one({ ...base, recipeInstructions }).steps;
  const step = (text: string) => ({ '@type': 'HowToStep', text });
  const both = ['Slice the leeks.', 'Bake at 180C for 35 minutes. (35)'];
  expect(steps(['Slice the leeks.', 'Bake at 180C for 35 minutes.'])).toEqual(both);
  expect(steps([step('Slice the leeks.'), step('Bake at 180C for 35 minutes.')])).toEqual(both);
  expect(steps(step('Slice the leeks.'))).toEqual(['Slice the leeks.']);
  expect(
    steps({ '@type': 'ItemList', itemListElement: both.map((text) => step(text.replace(/ \(35\)/, ''))) }),
  ).toEqual(both);
  expect(
    steps([
      { '@type': 'HowToSection', name: 'Pastry', itemListElement: [step('Rub in the butter.')] },
      { '@type': 'HowToSection', name: 'Filling', itemListElement: step('Slice the leeks.') },
    ]),
  ).toEqual(['Pastry: Rub in the butter.', 'Filling: Slice the leeks.']);
  expect(
    steps({
      '@type': 'HowToStep',
      itemListElement: [
        { '@type': 'HowToDirection', text: 'Slice the leeks.' },
        { '@type': 'HowToTip', text: 'Keep the tops for stock.' },
      ],
    }),
  ).toEqual(['Slice the leeks.', 'Keep the tops for stock.']);
  expect(steps('<ol><li>Slice the leeks.</li><li>Bake at 180&deg;C for 35&nbsp;minutes.</li></ol>')).toEqual([
    'Slice the leeks.',
    'Bake at 180°C for 35 minutes. (35)',
  ]);
  expect(steps([{ '@type': 'HowToStep', name: 'Rest it', timeRequired: 'PT20M' }])).toEqual(['Rest it (20)']);
});

test('steps that are only named are looked up', () => {
  const graph = [
    { ...base, recipeInstructions: [{ '@id': '#s1' }, { '@id': '#s2' }] },
    { '@id': '#s1', '@type': 'HowToStep', text: 'Slice the leeks.' },
    { '@id': '#s2', '@type': 'HowToStep', text: 'Bake at 180C for 35 minutes.' },
  ];
  expect(one({ '@graph': graph })).toEqual(plain);
});

test('ingredients as one text, as supplies, with headings and entities', () => {
  const lines = (recipeIngredient: unknown) => one({ ...base, recipeIngredient }).lines;
  expect(lines('500 g leeks\n3 eggs')).toEqual(plain.lines);
  expect(lines(['For the pastry:', '200g flour', 'For the filling:', '3 eggs'])).toEqual([
    'For the pastry: 200 g flour',
    'For the filling: 3 each eggs',
  ]);
  expect(lines(['&frac12; cup cr&egrave;me fra&icirc;che', '1&amp;frac12; tsp salt'])).toEqual([
    '0.5 cup crème fraîche',
    '1.5 tsp salt',
  ]);
  expect(lines([{ '@type': 'HowToSupply', name: 'leeks', requiredQuantity: '500 g' }])).toEqual([
    '500 g leeks',
  ]);
  expect(one({ ...base, recipeIngredient: undefined, ingredients: ['3 eggs'] }).lines).toEqual([
    '3 each eggs',
  ]);
});

test('a list that JSON-LD says is one', () => {
  expect(one({ ...base, recipeIngredient: { '@list': base.recipeIngredient } })).toEqual(plain);
  expect(one({ ...base, recipeIngredient: { '@set': base.recipeIngredient } })).toEqual(plain);
});
