import { cupOf } from '../../batch.js';
import { cupWords } from '../../cup-words.js';
import type { Facts } from '../../facts/facts.js';
import type { Line, Recipe, Step } from '../../facts/recipe.js';
import { share } from '../../flour.js';
import { plural } from '../../quantity/show.js';
import { needsCup } from '../../quantity/units.js';
import { isoDuration } from './iso-duration.js';

/** A recipe as schema.org words it. It carries no diet and no allergen: a page's reader would take them for a claim. */
export type SchemaRecipe = {
  '@context': 'https://schema.org';
  '@type': 'Recipe';
  name: string;
  recipeYield: string[];
  recipeIngredient: string[];
  recipeInstructions: { '@type': 'HowToStep'; position: number; text: string; timeRequired?: string }[];
  totalTime?: string;
  description?: string;
};

/**
 * A recipe as a schema.org Recipe, for JSON-LD. Amounts stand exactly as entered, in their own units; the total time
 * is that of the steps one after the other as the recipe orders them, and is left out while one has no minutes.
 */
export const toSchemaOrg = (recipe: Recipe, facts: Facts): SchemaRecipe => {
  const total = minutesOf(recipe.steps);
  const description = [recipe.note.trim(), cupsMeant(recipe, facts)].filter(Boolean).join('\n');
  return {
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: recipe.name,
    recipeYield: yieldsOf(recipe),
    recipeIngredient: recipe.lines.map((line) => ingredientText(line, facts)),
    recipeInstructions: recipe.steps.map((step, at) => ({
      '@type': 'HowToStep',
      position: at + 1,
      text: step.words,
      ...(step.minutes ? { timeRequired: isoDuration(step.minutes) } : {}),
    })),
    ...(total ? { totalTime: isoDuration(total) } : {}),
    ...(description ? { description } : {}),
  };
};

/** Whose cups and spoons its lines mean; nothing where none is measured by them. */
const cupsMeant = (recipe: Recipe, facts: Facts): string =>
  recipe.lines.some(({ unit }) => needsCup(unit)) ? `${cupWords[cupOf(recipe, facts)]}.` : '';

const yieldsOf = ({ yield: made, byPiece }: Recipe): string[] => [
  ...(made.portions ? [`${made.portions} ${plural(byPiece ? 'piece' : 'portion', made.portions)}`] : []),
  ...(made.weight ? [`${made.weight.amount} ${made.weight.unit}`] : []),
  ...(made.volume ? [`${made.volume.amount} ${made.volume.unit}`] : []),
];

const statedWords = {
  usual: '',
  prepared: ', prepared weight',
  bought: ', weight as bought',
  cooked: ', cooked weight',
};

const ingredientText = (line: Line, facts: Facts): string => {
  const item = line.item;
  const name =
    'ingredient' in item
      ? (facts.ingredients.get(item.ingredient)?.name ?? item.ingredient)
      : (facts.recipes.get(item.component)?.name ?? item.component);
  const unit = line.unit === 'each' ? '' : `${unitOf(line)} `;
  const to = !line.amountTo ? '' : `–${line.amountTo}`;
  const amount = line.amount === null ? '' : `${line.amount}${to} ${unit}`;
  const said = line.preparation ? `, ${line.preparation}` : '';
  const taste = line.scales === 'taste' || line.amount === null ? ', to taste' : '';
  return `${amount}${name}${said}${statedWords[line.stated]}${taste}`;
};

const unitOf = ({ unit, amount, amountTo }: Line): string =>
  unit === share ? 'percent' : plural(unit, amountTo ?? amount ?? '');

/** Minutes from the first step to the end of the last; undefined while a step has none. */
const minutesOf = (steps: readonly Step[]): number | undefined => {
  const ends = new Map<string, number>();
  let last = 0;
  let before = 0;
  for (const { key, minutes, after } of steps) {
    if (minutes === null) return undefined;
    const start =
      after.length === 0
        ? before
        : Math.max(...after.map(({ step, least }) => (ends.get(step) ?? 0) + least));
    before = start + minutes;
    ends.set(key, before);
    last = Math.max(last, before);
  }
  return last;
};
