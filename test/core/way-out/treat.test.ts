import { expect, test } from 'vitest';
import type { Substitute } from '../../../src/core/facts/ingredient.js';
import { substitute } from '../../../src/core/facts/ingredient.js';
import { recipe } from '../../../src/core/facts/recipe.js';
import { recipeOf } from '../../../src/core/lookup.js';
import { namerFor, type Treatment, takenIn, treated } from '../../../src/core/way-out/treat.js';
import { dish, factsOf, food, steps } from '../small.js';

const facts = factsOf([
  food('butter'),
  food('oil', { density: { gramsPerMl: '0.9' } }),
  food('flour'),
  food('egg', { weights: [{ unit: 'each', grams: '50' }] }),
  food('nut'),
  dish('crust', '600 g', ['400 g flour', '200 g butter', 'taste butter']),
  dish('tart', '8 portions', ['600 g @crust', '4 each egg', '1 tbsp butter']),
  dish('butter-sauce', '500 g', ['500 g @tart']),
]);
const swap = (ingredient: string, item: Substitute['item'], ratio: string): Treatment => ({
  do: 'swap',
  ingredient,
  name: ingredient,
  by: 'x',
  substitute: substitute.parse({ key: 's1', item, ratio }),
});
const make = (recipe: string, ...treatments: Treatment[]) =>
  treated(recipeOf(recipe, facts), treatments, facts, namerFor(takenIn(facts)));
const lines = (made: { lines: { amount: string | null; unit: string; item: object }[] }) =>
  made.lines.map(({ amount, unit, item }) => [amount, unit, ...Object.values(item)]);

// 200 g of butter at 0.8 are 160 g of oil; what goes to taste stays to taste; the base is as it was.
test('a swap goes through components by its ratio, and each becomes a variant of its own', () => {
  const light = factsOf([...facts.recipes.values(), ...facts.ingredients.values()]);
  const made = treated(
    { ...recipeOf('tart', light), lines: recipeOf('tart', light).lines.slice(0, 2) },
    [swap('butter', { ingredient: 'oil' }, '0.8')],
    light,
    namerFor(takenIn(light)),
  )!;
  expect(made.recipe).toMatchObject({
    variantOf: 'tart',
    name: 'Tart, x for butter',
    key: 'tart-x-for-butter',
  });
  expect(made.components.map(({ key, variantOf }) => [key, variantOf])).toEqual([
    ['crust-x-for-butter', 'crust'],
  ]);
  expect(lines(made.components[0]!)).toEqual([
    ['400', 'g', 'flour'],
    ['160', 'g', 'oil'],
    [null, 'each', 'oil'],
  ]);
  expect(lines(made.recipe)[0]).toEqual(['600', 'g', 'crust-x-for-butter']);
  expect(lines(recipeOf('crust', light))).toHaveLength(3);
});

// A tablespoon of butter has no weight while its density is not known, so nobody can say how much oil that is.
test('what cannot be weighed is not swapped', () => {
  expect(make('tart', swap('butter', { ingredient: 'oil' }, '0.8'))).toBeUndefined();
});

// 4 eggs of 50 g are 200 g; at 3/4 that is 150 g.
test('pieces are swapped by their weight', () => {
  const made = make('tart', swap('egg', { ingredient: 'nut' }, '3/4'))!;
  expect(lines(made.recipe)[1]).toEqual(['150', 'g', 'nut']);
  expect(made.components).toEqual([]);
});

test('left out or apart it is gone; where nothing would be left there is no dish', () => {
  const out = make('tart', { do: 'leave-out', ingredient: 'egg', name: 'Egg' })!;
  expect([out.recipe.name, lines(out.recipe).length]).toEqual(['Tart, without egg', 2]);
  const apart = make('tart', { do: 'apart', component: 'crust', name: 'Crust' })!;
  expect([apart.recipe.name, lines(apart.recipe)[0]]).toEqual(['Tart, crust apart', ['4', 'each', 'egg']]);
  const all = ['flour', 'butter'].map((key): Treatment => ({ do: 'leave-out', ingredient: key, name: key }));
  expect(make('crust', ...all)).toBeUndefined();
});

test('a substitute that is made of what it goes into is none; what is not in a dish changes nothing', () => {
  expect(make('tart', swap('egg', { component: 'butter-sauce' }, '1'))).toBeUndefined();
  expect(make('tart', swap('nut', { ingredient: 'oil' }, '1'))).toBeUndefined();
});

test('names and keys are free ones', () => {
  const namer = namerFor(takenIn(facts));
  expect([namer.name('Tart'), namer.name('Tart')]).toEqual(['Tart 2', 'Tart 3']);
  expect([namer.key('Tart'), namer.key('Tart')]).toEqual(['tart-2', 'tart-3']);
  expect(namer.name('x'.repeat(200))).toHaveLength(120);
});

test('a step that names what is left out says so, and no other is touched', () => {
  const words = ['Rub the butters into the flour.', 'Buttery crumbs will do.', `${'b'.repeat(1990)} butter`];
  const rub = { ...recipeOf('crust', facts), ...steps(...words.map((one) => ({ words: one }))) };
  const base = recipe.parse(rub);
  const treatment: Treatment = { do: 'leave-out', ingredient: 'butter', name: 'Butter, unsalted' };
  const made = treated(base, [treatment], facts, namerFor(takenIn(facts)))!.recipe.steps;
  expect(made[0]!.words).toBe('Rub the butters into the flour. (without butter, unsalted)');
  expect(made[1]).toEqual(base.steps[1]);
  expect(made[2]!.words).toHaveLength(2000);
  expect(recipe.safeParse({ ...base, steps: made }).success).toBe(true);
});
