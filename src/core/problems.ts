import { dayInWords } from './calendar.js';
import type { Event } from './facts/event.js';
import type { Ingredient } from './facts/ingredient.js';
import type { Place } from './facts/place.js';
import type { Recipe } from './facts/recipe.js';
import type { Problem, Subject } from './problem.js';
import { baseOf } from './quantity/units.js';
import type { Missing } from './weighing.js';

/** Every problem sentence of the calculation stands here, so that one missing fact always reads the same. */

export const ofIngredient = (i: Ingredient, field?: string): Subject => ({
  entity: 'ingredient',
  key: i.key,
  name: i.name,
  field,
});
export const ofRecipe = (r: Recipe, field?: string): Subject => ({
  entity: 'recipe',
  key: r.key,
  name: r.name,
  field,
});
export const ofEvent = (e: Event, field?: string): Subject => ({
  entity: 'event',
  key: e.key,
  name: e.name,
  field,
});

/** `wanted`: whether it leaves open what to buy or what is left of it when prepared. */
export const missingFact = (
  ingredient: Ingredient,
  gap: Missing,
  wanted: 'bought' | 'prepared' = 'bought',
): Problem => {
  const open = { bought: 'what to buy', prepared: 'its prepared weight' }[wanted];
  const other = gap.unit === 'ml' ? 'weight' : 'ml';
  const words = {
    yield: `${ingredient.name}: edible yield not known, so ${open} can't be worked out.`,
    density: `${ingredient.name}: no density, so ${gap.unit} can't be turned into ${other}.`,
    weight: `${ingredient.name}: no weight for one ${gap.unit}.`,
  };
  const field = { yield: 'edibleYield', density: 'density', weight: 'weights' }[gap.missing];
  return {
    weight: 'ask',
    code: `no-${gap.missing}`,
    sentence: words[gap.missing],
    subject: ofIngredient(ingredient, field),
  };
};

export const noPrice = (ingredient: Ingredient): Problem => ({
  weight: 'ask',
  code: 'no-price',
  sentence: `No price for ${ingredient.name}.`,
  subject: ofIngredient(ingredient, 'packs'),
});

export const noPreferredPack = (ingredient: Ingredient): Problem => ({
  weight: 'ask',
  code: 'no-preferred-pack',
  sentence: `${ingredient.name}: several packs and none preferred, so no price stands.`,
  subject: ofIngredient(ingredient, 'packs'),
});

export const guessedPrice = (ingredient: Ingredient, date: string): Problem => ({
  weight: 'check',
  code: 'guessed-price',
  sentence: `The price of ${ingredient.name} is a guess of ${dayInWords(date)}.`,
  subject: ofIngredient(ingredient, 'packs'),
});

const askedBy = (unit: string): string => {
  const base = baseOf(unit);
  return base === 'g' ? 'weight' : base === 'ml' ? 'volume' : base === 'each' ? 'the piece' : `the ${base}`;
};

export const noYield = (component: Recipe, asked: string): Problem => ({
  weight: 'ask',
  code: 'no-recipe-yield',
  sentence: `${component.name}: it is asked for by ${askedBy(asked)}, and what it makes is not stated that way.`,
  subject: ofRecipe(component, 'yield'),
});

export const noAmount = (recipe: Recipe, line: string, name: string): Problem => ({
  weight: 'check',
  code: 'to-taste',
  sentence: `${name} goes in to taste: not in the quantities or the cost.`,
  subject: ofRecipe(recipe, `lines/${line}/amount`),
});

export const oddYield = (recipe: Recipe, lines: string, stated: string): Problem => ({
  weight: 'check',
  code: 'odd-yield',
  sentence: `${recipe.name}: the lines come to ${lines}, and it is said to make ${stated}. One of them may have slipped.`,
  subject: ofRecipe(recipe, 'yield'),
});

export const noLines = (recipe: Recipe): Problem => ({
  weight: 'ask',
  code: 'no-lines',
  sentence: `${recipe.name} has no lines, so what is in it and what it costs are not known.`,
  subject: ofRecipe(recipe, 'lines'),
});

export const noSteps = (recipe: Recipe): Problem => ({
  weight: 'check',
  code: 'no-steps',
  sentence: `${recipe.name} has no steps, so it is listed whole on the day it is used.`,
  subject: ofRecipe(recipe, 'steps'),
});

export const noDrive = (place: Place): Problem => ({
  weight: 'ask',
  code: 'no-drive',
  sentence: `No drive to ${place.name} is stated, so the times to start leave none.`,
  subject: { entity: 'place', key: place.key, name: place.name, field: 'drive' },
});

export const unreadLabel = (
  dishes: readonly string[],
  ingredient: Ingredient,
  items: readonly string[],
): Problem => ({
  weight: 'ask',
  code: 'label-not-read',
  sentence: `${dishes.length > 2 ? `${dishes.length} dishes` : listed(dishes)}: ${items.length > 4 ? `${items.length} allergens` : listed(items)} not known. Read the label of ${ingredient.name}.`,
  subject: ofIngredient(ingredient, 'allergens'),
});

export const labelOpen = (ingredient: Ingredient, unknown: number, all: number): Problem => ({
  weight: 'ask',
  code: 'label-not-read',
  sentence:
    unknown === all
      ? `${ingredient.name}: no allergen known. Read its label.`
      : `${ingredient.name}: ${unknown} of ${all} allergens not known. Read its label.`,
  subject: ofIngredient(ingredient, 'allergens'),
});

export const eatenWhole = (ingredient: Ingredient, food: string, percent: string): Problem => ({
  weight: 'check',
  code: 'eaten-whole',
  sentence: `${ingredient.name} is entered as eaten whole; the reference says ${percent} % of ${food} is eaten.`,
  subject: ofIngredient(ingredient, 'edibleYield'),
});

/** Names in a sentence: "nuts", "nuts and milk", "nuts, milk and eggs". */
export const listed = (names: readonly string[], last = 'and'): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} ${last} ${names.at(-1)}`;
