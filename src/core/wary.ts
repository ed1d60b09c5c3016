import type { Ingredient } from './facts/ingredient.js';
import type { Recipe } from './facts/recipe.js';
import { Rational } from './quantity/rational.js';

/** What seldom does at many times the recipe what it did at one; it is flagged, never changed. */
export type Wary = 'salt' | 'leavening' | 'setting';

/** By what stands before the first comma or bracket: "Salt, fine" and "Sea salt flakes", but not "Butter, salted". */
const kinds: [Wary, RegExp][] = [
  ['salt', /(?<!\b(?:low|no|less|reduced)[ -])\bsalt(?: (?:flakes|crystals))?$/],
  [
    'leavening',
    /\b(?:baking powder|baking soda|bicarb(?:onate)?(?: of soda)?|(?<!\bnutritional )yeast(?! (?:extract|flakes)))\b/,
  ],
  ['setting', /\b(?:gelatine?|agar|pectin)\b/],
];

const kept = new WeakMap<Ingredient, Wary | null>();

/** Whether an ingredient is salt, leavening or a setting agent, by its name. */
export const waryOf = (ingredient: Ingredient): Wary | undefined => {
  let wary = kept.get(ingredient);
  if (wary === undefined) {
    const head = ingredient.name.toLowerCase().split(/[,(]/)[0]!.trim();
    wary = kinds.find(([, words]) => words.test(head))?.[0] ?? null;
    kept.set(ingredient, wary);
  }
  return wary ?? undefined;
};

const two = Rational.of(2);
const half = Rational.of(1, 2);

/** Beyond what its author tried: more than twice or less than half of it. Common practice, no source. */
export const isFar = (batches: Rational): boolean =>
  batches.compare(two) > 0 || (batches.compare(half) < 0 && !batches.isZero);

/** Whether a recipe cooks by the clock: a step with minutes in an oven or on a ring. */
export const cooksByTheClock = ({ steps }: Recipe): boolean =>
  steps.some(({ minutes, oven, rings }) => minutes !== null && minutes > 0 && (oven !== null || rings > 0));
