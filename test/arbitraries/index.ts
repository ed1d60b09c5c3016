import fc from 'fast-check';
import type { Workbook } from '../../src/core/facts/facts.js';
import { normalName } from '../../src/core/names.js';
import { anyEvent } from './event.js';
import { anyIngredient } from './ingredient.js';
import { anyKitchen, anyPlace } from './kitchen.js';
import { anyPhotographs } from './photograph.js';
import { anyPrepPeriods } from './prep-period.js';
import { anyPrintedLabels, anyPrintedSheets } from './printed-sheet.js';
import { anyNumberedPapers, anyPayments, anyQuotes } from './quote.js';
import { anyRecipe } from './recipe.js';
import { keysOf, type There } from './words.js';

export { anyEvent } from './event.js';
export { anyIngredient } from './ingredient.js';
export { anyKitchen, anyPlace } from './kitchen.js';
export { anyRecipe } from './recipe.js';
export { anyAmount, anyKey } from './words.js';

const distinct = <T extends { name: string }>(list: readonly T[]): T[] => {
  const seen = new Set<string>();
  return list.map((one, at) => {
    const name = seen.has(normalName(one.name)) ? `${one.name.slice(0, 60)} ${at}` : one.name;
    seen.add(normalName(name));
    return { ...one, name };
  });
};

/** A whole kitchen whose recipes use earlier ones, so that none contains itself. */
export const anyWorkbook: fc.Arbitrary<Workbook> = fc
  .record({ venues: keysOf(2), ingredients: keysOf(5), recipes: keysOf(5), events: keysOf(3) })
  .chain((keys) => {
    const places = ['home-kitchen', ...keys.venues.filter((key) => key !== 'home-kitchen')];
    const there = (at: number): There => ({
      ingredients: keys.ingredients,
      recipes: keys.recipes.slice(0, at),
      places,
    });
    return fc.record({
      format: fc.constant('catering-workbook' as const),
      version: fc.constant(1 as const),
      kitchen: anyKitchen,
      places: fc.tuple(...places.map((key, at) => anyPlace(key, at === 0 ? 'home' : 'venue'))),
      ingredients: fc.tuple(...keys.ingredients.map(anyIngredient)).map(distinct),
      recipes: fc.tuple(...keys.recipes.map((key, at) => anyRecipe(key, there(at)))).map(distinct),
      events: fc.tuple(...keys.events.map((key) => anyEvent(key, there(keys.recipes.length)))),
      labelPhotographs: anyPhotographs(keys.ingredients),
      prepPeriods: anyPrepPeriods(keys.events),
      printedSheets: anyPrintedSheets(keys.events),
      printedLabels: anyPrintedLabels(keys.recipes),
      quotes: anyQuotes(keys.events, there(keys.recipes.length)),
      payments: anyPayments(keys.events),
      numberedPapers: anyNumberedPapers(keys.events),
    });
  });
