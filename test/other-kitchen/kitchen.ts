import { type Workbook, workbook } from '../../src/core/facts/facts.js';
import { choices, span } from './choices.js';
import { eventAt } from './event.js';
import { ingredientAt } from './ingredient.js';
import { recipeAt } from './recipe.js';
import type { Recipe, Written } from './written.js';

export type Size = { ingredients: number; recipes: number; events: number; gaps: boolean };

/**
 * A generated kitchen unlike the example in currency, zone, list, units and paper; one seed always gives the same.
 * With `gaps` some prices, yields, densities and labels are missing; without, every figure can be worked out.
 */
export const otherKitchen = (seed: number, size: Partial<Size> = {}): Workbook => {
  const {
    ingredients: many,
    recipes: count,
    events,
    gaps,
  } = { ingredients: 24, recipes: 10, events: 2, gaps: true, ...size };
  const chosen = choices(seed);
  const made = span(many).map((i) => ingredientAt(i, chosen, gaps));
  const recipes: Recipe[] = [];
  // Uses only reach back a few recipes, so that trees stay as deep as a kitchen's and no loop can close.
  for (const i of span(count))
    recipes.push(recipeAt(i, i % 4 === 0 ? [] : recipes.slice(i - (i % 4)), made, chosen));
  return workbook.parse({
    format: 'catering-workbook',
    version: 1,
    kitchen: {
      name: 'The other kitchen',
      ...chosen.pick([
        { currency: 'JPY', timeZone: 'Asia/Tokyo', locale: 'en-US' },
        { currency: 'KWD', timeZone: 'Asia/Kuwait', locale: 'en-US' },
      ]),
      units: 'us',
      heat: 'F',
      cup: 'us',
      paper: 'Letter',
      allergenList: 'us',
    },
    places: [
      {
        key: 'home',
        name: 'Home kitchen',
        kind: 'home',
        ovens: [{ key: 'oven', name: 'Oven', shelves: 2 }],
        pans: [{ key: 'pot', name: 'Pot', litres: '7.570823568', count: 2 }],
      },
    ],
    ingredients: made,
    recipes,
    events: span(events).map((i) => eventAt(i, recipes, chosen)),
  } satisfies Written);
};
