import { cupOf } from '../../core/batch.js';
import { cupWords } from '../../core/cup-words.js';
import type { Answer } from '../../core/problem.js';
import { needsCup } from '../../core/quantity/units.js';
import type { ScaledRecipe } from '../../core/sheets/scaled-recipe.js';
import { scaledRecipeSheet } from '../../core/sheets/scaled-recipe-sheet.js';
import { cautions, conventions } from '../../core/sheets/sheet.js';

/** Which cup is meant, where a line is measured by one. */
export const cupIn = ({ recipe, facts }: ScaledRecipe): string =>
  recipe.lines.some(({ unit }) => needsCup(unit)) ? cupWords[cupOf(recipe, facts)] : '';

/** The conventions behind the figures; the caution on allergens stands beside these. */
export const footOf = (answer: Answer<ScaledRecipe>, cup: string): string[] => [
  ...(cup ? [`Cups and spoons: ${cup}.`] : []),
  ...scaledRecipeSheet(answer).foot.filter(
    (note) => note !== cautions.allergens && shapes(note, answer.value),
  ),
];

/** A convention is named where it shapes a figure. */
const shapes = (note: string, { recipe: { lines } }: ScaledRecipe): boolean => {
  if (note === conventions.pieces) return lines.some(({ scales }) => scales === 'pieces');
  return note !== conventions.components || lines.some(({ item }) => 'component' in item);
};
