import { type Choices, keyOf, span } from './choices.js';
import type { Recipe, Written } from './written.js';

/** A recipe of some ingredients and of recipes made before it. */
export const recipeAt = (
  i: number,
  earlier: Recipe[],
  made: Written['ingredients'],
  with_: Choices,
): Recipe => {
  const { upTo, pick, once } = with_;
  const portions = String(4 + upTo(20));
  const lines: Recipe['lines'] = span(2 + upTo(5)).map((n) => {
    const ingredient = pick(made);
    const [weight] = ingredient.weights ?? [];
    const measure = pick([
      { amount: `${1 + upTo(30)}/2`, unit: 'oz' },
      { amount: `${1 + upTo(8)}/4`, unit: 'cup' },
      { amount: String(1 + upTo(6)), unit: 'tbsp' },
      weight ? { amount: String(1 + upTo(9)), unit: weight.unit } : { amount: '0.75', unit: 'lb' },
    ]);
    const scales = once(15) ? ('pieces' as const) : ('straight' as const);
    const stated =
      measure.unit === 'lb' || measure.unit === 'oz' ? pick(['usual', 'bought'] as const) : 'usual';
    return { key: keyOf('line', n), ...measure, item: { ingredient: ingredient.key }, scales, stated };
  });
  if (once(20))
    lines.push({ key: 'to-taste', amount: null, item: { ingredient: made[0]!.key }, scales: 'taste' });
  for (const n of earlier.length ? span(upTo(2)) : []) {
    const measure = pick([
      { amount: `${1 + upTo(5)}/3`, unit: 'lb' },
      { amount: String(1 + upTo(3)), unit: 'cup' },
      { amount: String(1 + upTo(6)), unit: 'portion' },
    ]);
    lines.push({ key: keyOf('use', n), ...measure, item: { component: pick(earlier).key } });
  }
  return {
    key: keyOf('recipe', i),
    name: `Recipe ${i}`,
    yield: { portions, weight: { amount: portions, unit: 'lb' }, volume: { amount: '3', unit: 'quart' } },
    byPiece: once(25),
    cup: once(20) ? 'us-label' : null,
    lines,
    steps: span(1 + upTo(2)).map((n) => ({ key: keyOf('step', n), words: `Step ${n}.`, minutes: upTo(60) })),
    keepingDays: upTo(4),
  };
};
