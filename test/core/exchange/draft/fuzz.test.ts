import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readAmounts } from '../../../../src/core/exchange/draft/amounts.js';
import { buildRecipe, type ConfirmedLine } from '../../../../src/core/exchange/draft/build.js';
import { begin, doubtsOf, inAll } from '../../../../src/core/exchange/draft/draft-line.js';
import { KitchenNames } from '../../../../src/core/exchange/draft/kitchen-names.js';
import { withinRecipe } from '../../../../src/core/exchange/draft/limit.js';
import { needsOf } from '../../../../src/core/exchange/draft/presets.js';
import { readLine } from '../../../../src/core/exchange/lines/read-line.js';
import { readMethod } from '../../../../src/core/exchange/method/read-method.js';
import { readRecipes } from '../../../../src/core/exchange/recipe/read-recipes.js';
import { amount } from '../../../../src/core/facts/common.js';
import { ingredient } from '../../../../src/core/facts/ingredient.js';
import { recipe } from '../../../../src/core/facts/recipe.js';

const piece = fc.constantFrom(
  ...'2 ½ 1/3 2-3 400g 14.5-oz x ( ) , ; : & tin tins cans tbsp cup clove of or and plus for the'.split(' '),
  ...'large peeled chopped salt plain flour onions butter squash lemon juice sauce taste 💥 é'.split(' '),
);
const aLine = fc.oneof(
  fc.array(piece, { maxLength: 14 }).map((all) => all.join(' ')),
  fc.string({ unit: 'grapheme', maxLength: 120 }),
);
const keyFor = (kind: string) => {
  let n = 0;
  return () => `${kind}-${++n}`;
};

test('whatever was read and taken as new, the recipe made of it is one that can be kept', () => {
  fc.assert(
    fc.property(fc.array(aLine, { maxLength: 12 }), fc.boolean(), (texts, own) => {
      const lines = texts.map(readLine).map((read, at): ConfirmedLine => {
        const line = begin(read);
        return { ...line, key: `l${at}`, item: { fresh: line.food.trim() || 'Something', food: '' } };
      });
      const component = own ? { name: 'Part', makes: { amount: '3', unit: 'portion' } } : null;
      const built = buildRecipe(
        {
          name: 'Whole',
          yield: { portions: '4', weight: null, volume: null },
          byPiece: false,
          cup: null,
          note: '',
          parts: [{ title: 'For the sauce', lines, steps: [], component }],
        },
        { recipe: keyFor('recipe'), ingredient: keyFor('ingredient') },
      );
      for (const one of [built.recipe, ...built.components]) expect(recipe.parse(one)).toEqual(one);
      for (const one of built.ingredients) expect(ingredient.parse(one)).toEqual(one);
      const named = new Set(built.ingredients.map(({ key }) => key));
      for (const { item } of [built.recipe, ...built.components].flatMap((one) => one.lines))
        if ('ingredient' in item) expect(named.has(item.ingredient)).toBe(true);
    }),
    { numRuns: 400 },
  );
});

test('a name of the kitchen is found whatever its case and order, and no name breaks the search', () => {
  const word = fc.constantFrom('Plain', 'flour', 'Butter', 'sour', 'Cream', 'leek', 'Curd', 'red');
  const name = fc.uniqueArray(word, { minLength: 1, maxLength: 3 }).map((words) => words.join(' '));
  fc.assert(
    fc.property(fc.uniqueArray(name, { minLength: 1, maxLength: 8 }), aLine, (all, other) => {
      const names = new KitchenNames({
        ingredients: all.map((one, at) => ({ key: `i${at}`, name: one, archived: false })),
        recipes: [],
      });
      for (const one of all) expect(names.match(one.toUpperCase()).kind).not.toBe('none');
      const match = names.match(other);
      const doubts = doubtsOf(readLine(other), match, other, undefined);
      if (match.kind !== 'exact' && other.trim()) expect(doubts.length).toBeGreaterThan(0);
    }),
    { numRuns: 400 },
  );
});

test('amounts as typed are kept exactly or refused, never thrown at', () => {
  fc.assert(
    fc.property(fc.oneof(aLine, fc.stringMatching(/^[\d½¼ .,/–-]{0,12}$/)), (typed) => {
      const read = readAmounts(typed);
      if ('sentence' in read) return;
      for (const figure of [read.value.amount, read.value.amountTo])
        if (figure !== null) expect(amount.safeParse(figure).success, figure).toBe(true);
    }),
  );
});

test('what tins hold in all, and what any step needs, can be kept', () => {
  fc.assert(
    fc.property(aLine, (text) => {
      const total = inAll(readLine(text));
      if (total) expect(amount.safeParse(total.amount).success, total.amount).toBe(true);
      for (const step of readMethod(`${text}. Bake until done.`)) {
        const { needs, preset, kind } = needsOf(step);
        if (preset.length > 0) expect(kind).not.toBe('');
        if (preset.includes('oven')) expect(needs.oven).not.toBeNull();
      }
    }),
  );
});

test('a list longer than a recipe is cut, and says so', () => {
  const read = readRecipes(
    `Long\n\nIngredients\n${'200 g flour\n'.repeat(450)}\nMethod\n${'Stir for 5 minutes.\n'.repeat(90)}`,
  );
  const draft = withinRecipe('drafts' in read ? read.drafts[0]! : ({} as never));
  expect(draft.sections.flatMap(({ lines }) => lines)).toHaveLength(200);
  expect(draft.unsure.join()).toContain('Only the first 200 of 450 lines stand here');
});
