import type { Ingredient } from './facts/ingredient.js';
import type { Place } from './facts/place.js';
import type { Recipe } from './facts/recipe.js';
import type { Problem } from './problem.js';
import { ofRecipe } from './problems.js';
import type { Rational } from './quantity/rational.js';
import { inWords } from './quantity/show.js';
import { asMixed } from './quantity/shown.js';
import { depthInWords, type Filled, tinsInWords } from './tins.js';

/** The problem sentences of how much to make, as those of `problems.ts`. */

const notALimit = (recipe: Recipe, sentence: string): Problem => ({
  weight: 'ask',
  code: 'not-a-limit',
  sentence: `${sentence} Say how many portions or how much in all instead.`,
  subject: ofRecipe(recipe, 'lines'),
});

export const noLimit = (recipe: Recipe, { name }: Ingredient): Problem =>
  notALimit(recipe, `${recipe.name} takes no stated amount of ${name}, so it can’t set how much to make.`);

export const mixedLimit = (recipe: Recipe, { name }: Ingredient): Problem =>
  notALimit(
    recipe,
    `${name} goes in by whole pieces or once for each batch and in other lines as well, so it can’t set how much to make.`,
  );

export const throughLimit = (recipe: Recipe, { name }: Ingredient, component: Recipe): Problem =>
  notALimit(
    recipe,
    `${name} is in ${component.name}, whose own amount does not grow straight, so it can’t set how much to make.`,
  );

/** There is less of it than the least that can be made of it. */
export const atLeast = (recipe: Recipe, { name }: Ingredient, least: Rational, unit: string): Problem => {
  const figure = inWords({ ...asMixed(least), unit });
  return notALimit(recipe, `${name}: the recipe takes at least ${figure}, and that is less.`);
};

export const noBatch = (recipe: Recipe): Problem =>
  notALimit(recipe, 'What you have is less than one whole batch takes.');

export const noTin = (recipe: Recipe): Problem => ({
  weight: 'ask',
  code: 'no-tin',
  sentence: `${recipe.name}: the tin it is made in is not known, so no other can be compared with it.`,
  subject: ofRecipe(recipe, 'tin'),
});

export const otherDepth = (recipe: Recipe, { tin, deeper }: Filled): Problem => ({
  weight: 'check',
  code: 'tin-depth',
  sentence: `In ${tinsInWords(tin)} it stands ${times(deeper)} as deep as in the recipe’s own; the time no longer holds.`,
  subject: ofRecipe(recipe, 'tin'),
});

const times = (ratio: Rational): string => {
  const figure = ratio.toFixed(2).replace(/\.?0+$/, '');
  return figure === '' || figure === '0' ? 'less than a hundredth' : `${figure} times`;
};

export const overflows = (recipe: Recipe, { tin }: Filled, over: NonNullable<Filled['over']>): Problem => ({
  weight: 'check',
  code: 'tin-overflow',
  sentence: `Filled as the recipe fills its own, ${tinsInWords(tin)} would have to be ${depthInWords(over.needs, tin)} deep and ${tin.count === 1 ? 'is' : 'are'} ${depthInWords(over.has, tin)}: it would overflow.`,
  subject: ofRecipe(recipe, 'tin'),
});

export const noPans = (place: Place, recipe: Recipe): Problem => ({
  weight: 'check',
  code: 'no-pans',
  sentence: `No pan is entered for ${place.name}, so which one holds ${recipe.name} is not known.`,
  subject: { entity: 'place', key: place.key, name: place.name, field: 'pans' },
});
