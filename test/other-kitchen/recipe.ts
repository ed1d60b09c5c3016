import { type Choices, keyOf, span } from './choices.js';
import type { Recipe, Written } from './written.js';

type Lines = NonNullable<Recipe['lines']>;

/** A recipe of some ingredients and of recipes made before it. */
export const recipeAt = (
  i: number,
  earlier: Recipe[],
  made: Written['ingredients'],
  with_: Choices,
): Recipe => {
  const { upTo, pick, once } = with_;
  const portions = String(4 + upTo(20));
  const lines: Lines = span(2 + upTo(5)).map((n) => lineAt(keyOf('line', n), pick(made), with_));
  if (once(30)) lines.push(...dough(made, with_));
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
    tin: i % 3 === 1 ? { shape: 'rectangular', length: '9', width: '13', unit: 'in', depth: '5/2' } : null,
    cup: once(20) ? 'us-label' : null,
    lines,
    steps: span(1 + upTo(2)).map((n) => ({
      key: keyOf('step', n),
      words: `Step ${n}.`,
      rings: n,
      pan: n === 1 ? '3/2' : null,
      minutes: upTo(60),
    })),
    keepingDays: upTo(4),
  };
};

const lineAt = (
  key: string,
  ingredient: Written['ingredients'][number],
  { upTo, pick, once }: Choices,
): Lines[number] => {
  const [weight] = ingredient.weights ?? [];
  const [cooked] = ingredient.cookedYields ?? [];
  const [least, more] = [1 + upTo(8), 1 + upTo(5)];
  const measure = pick([
    { amount: `${least}/2`, amountTo: `${least + more}/2`, unit: 'oz' },
    { amount: `${least}/4`, unit: 'cup' },
    { amount: String(least), unit: 'tbsp' },
    weight
      ? { amount: String(least), amountTo: once(30) ? String(least + more) : null, unit: weight.unit }
      : { amount: '0.75', unit: 'lb' },
  ]);
  const item = { ingredient: ingredient.key };
  const scales = pick(['straight', 'straight', 'straight', 'pieces', 'herb', 'chilli', 'batch'] as const);
  if (measure.unit !== 'lb' && measure.unit !== 'oz') return { key, ...measure, item, scales };
  const stated = pick(cooked ? (['usual', 'bought', 'cooked'] as const) : (['usual', 'bought'] as const));
  return { key, ...measure, item, scales, stated, cooked: stated === 'cooked' ? cooked!.name : '' };
};

/** Two flours and two shares of them. */
const dough = (made: Written['ingredients'], { upTo, pick }: Choices): Lines => [
  ...span(2).map((n) => ({
    key: keyOf('flour', n),
    amount: `${1 + upTo(9)}/4`,
    unit: 'lb',
    item: { ingredient: pick(made).key },
    scales: 'flour' as const,
  })),
  ...span(2).map((n) => ({
    key: keyOf('share', n),
    amount: `${1 + upTo(200)}/3`,
    unit: 'percent',
    item: { ingredient: pick(made).key },
  })),
];
