import { expect, test } from 'vitest';
import { costOf } from '../../src/core/costing.js';
import { costsMoved } from '../../src/core/costs-moved.js';
import { costsWith, figureOf, gapsOf, kitchenCosts } from '../../src/core/kitchen-costs.js';
import { Rational } from '../../src/core/quantity/rational.js';
import { scale } from '../../src/core/scaling.js';
import { dish, factsOf, food, pack } from './small.js';

const said = (docs: Parameters<typeof factsOf>[0], key: string) => {
  const costs = kitchenCosts(factsOf(docs));
  return { ...figureOf(costs, key)!, gaps: gapsOf(costs, key).map(({ sentence }) => sentence) };
};

// Leeks at 2.40 a kilo, 90 % edible: 2 kg prepared are 533.33p; butter, 100 g of 250 g at 2.25, is 90p. 623.33p a batch,
// 62.33p a portion. The sauce, 500 g of butter, is 450p for 600 g: 750p a kilo. 300 g of it in the pie are 225p.
test('a batch and a portion, a kilo of what has none, and what goes into another', () => {
  const docs = [
    dish('tart', '10 portions', ['2 kg leek', '100 g butter']),
    dish('sauce', '600 g', ['500 g butter']),
    dish('pie', '4 portions', ['300 g @sauce', '1 batch @tart']),
    food('leek', { edibleYield: { yield: '0.9' }, ...pack('1 kg at 240') }),
    food('butter', pack('250 g at 225')),
  ];
  expect(said(docs, 'tart')).toMatchObject({ batch: 623, each: 62, unit: 'portion', complete: true });
  expect(said(docs, 'sauce')).toMatchObject({ batch: 450, each: 750, unit: 'kg' });
  expect(said(docs, 'pie')).toMatchObject({ batch: 848, each: 212, unit: 'portion', gaps: [] });
});

// No price for saffron: the 90p of butter are known, the cost isn't; nor is it of anything with the risotto in it.
test('a missing price is never nothing, on any way up, and is named', () => {
  const docs = [
    dish('menu', '1 portion', ['1 portion @risotto']),
    dish('risotto', '1 portion', ['100 g butter', '1 g saffron', 'taste salt']),
    food('butter', pack('250 g at 225')),
    food('saffron'),
    food('salt'),
  ];
  const open = { batch: 90, complete: false, gaps: ['No price for Saffron.'] };
  expect(said(docs, 'risotto')).toMatchObject(open);
  expect(said(docs, 'menu')).toMatchObject(open);
});

// Rolls take 1.5 eggs by the piece, so two: 60p for one batch alone. Half a batch in each of two lines is one batch in
// all, two eggs; a quarter of a batch is 0.375 of an egg, so one whole egg, 30p, and not a quarter of the 60p.
test('whole pieces are rounded up on the sum of what one batch takes of a component', () => {
  const docs = [
    dish('rolls', '10 portions', ['1.5 each egg pieces']),
    dish('two-halves', '1 portion', ['5 portion @rolls', '1/2 batch @rolls']),
    dish('quarter', '1 portion', ['1/4 batch @rolls']),
    food('egg', pack('12 each at 360')),
  ];
  expect(said(docs, 'rolls').batch).toBe(60);
  expect(said(docs, 'two-halves').batch).toBe(60);
  expect(said(docs, 'quarter').batch).toBe(30);
});

// A litre of a salad that is said to make portions: nobody knows how much of it, so nor how much dressing is needed in
// all, and the batch of dressing that is asked for beside it counts in nothing until that is settled.
test('where one use of a component is not known, neither is what it costs in all', () => {
  const docs = [
    dish('menu', '1 portion', ['1 batch @dressing', '1 l @salad', '100 g butter']),
    dish('salad', '4 portions', ['1/2 batch @dressing']),
    dish('dressing', '1 l', ['1 l oil']),
    food('oil', pack('1 l at 800')),
    food('butter', pack('250 g at 225')),
  ];
  const facts = factsOf(docs);
  expect(said(docs, 'menu')).toMatchObject({ batch: 90, complete: false });
  expect(said(docs, 'menu').gaps).toHaveLength(1);
  const needs = scale(facts.recipes.get('menu')!, Rational.one, facts).value;
  expect(costOf(needs, facts).value[0]!.cost.toString()).toBe('90');
});

test('what a recipe makes may not be known, or nothing', () => {
  const rice = food('rice', pack('1 kg at 200'));
  const bare = dish('bare', '0 portions', ['1 kg rice']);
  expect(said([bare, rice], 'bare')).toMatchObject({ batch: 200, each: undefined });
  expect(said([dish('empty', '1 portion', [])], 'empty')).toMatchObject({
    complete: false,
    gaps: ['Empty has no lines, so what is in it and what it costs are not known.'],
  });
});

// Butter goes from 2.25 to 2.50 for 250 g: 100 g from 90p to 100p. A tart of ten portions goes up by 1p each, the sauce
// by 10p a portion; the salad has none. A price that is a guess says so of all that uses it.
test('what one price moves, from what to what, the most first', () => {
  const butter = food('butter', pack('250 g at 225'));
  const docs = [
    dish('tart', '10 portions', ['100 g butter']),
    dish('sauce', '1 portion', ['1 batch @tart']),
    dish('salad', '1 portion', ['1 kg leek']),
    food('leek', pack('1 kg at 240')),
    butter,
  ];
  const before = kitchenCosts(factsOf(docs));
  const after = costsWith(before, [food('butter', pack('250 g at 250'))]);
  const moved = costsMoved(before, after);
  expect(moved.map((one) => [one.recipe.key, one.before.each, one.after.each])).toEqual([
    ['sauce', 90, 100],
    ['tart', 9, 10],
  ]);
  const guessed = costsWith(before, [food('butter', pack('250 g at 225', { guess: true }))]);
  expect(costsMoved(before, guessed).map(({ after }) => [after.batch, after.guess])).toEqual([
    [90, true],
    [90, true],
  ]);
  expect(costsMoved(before, costsWith(before, [butter]))).toEqual([]);
});

test('an ingredient by another name is called so in what it leaves open', () => {
  const flour = food('flour', pack('1 kg at 100'));
  const loaf = dish('loaf', '1 portion', ['60 percent flour']);
  const before = kitchenCosts(factsOf([loaf, flour]));
  const after = costsWith(before, [{ ...flour, name: 'Strong flour' }]);
  const said = [before, after].map((costs) => gapsOf(costs, 'loaf')[0]!.sentence.slice(0, 22));
  expect(said).toEqual(['Flour in Loaf: no flou', 'Strong flour in Loaf: ']);
});

test('a recipe that contains itself is our own mistake', () => {
  const loop = [dish('egg', '1 portion', ['1 batch @hen']), dish('hen', '1 portion', ['1 batch @egg'])];
  expect(() => kitchenCosts(factsOf(loop))).toThrow('contains itself');
});

// A chain of 20 000 recipes, each a gram of salt and the one below: the last costs 20 000 g at 0.1p.
test('however deep, it neither overflows nor dawdles', () => {
  const chain = Array.from({ length: 20_000 }, (_, at) =>
    dish(`r${at}`, '1 portion', ['1 g salt', ...(at > 0 ? [`1 portion @r${at - 1}`] : [])]),
  );
  const costs = kitchenCosts(factsOf([...chain.reverse(), food('salt', pack('1 kg at 100'))]));
  expect(figureOf(costs, 'r19999')!.batch).toBe(2000);
});
