import example from '../shared/example/kitchen.json' with { type: 'json' };
import { type Workbook, workbook } from '../src/core/facts/facts.js';

export { otherKitchen } from './other-kitchen/kitchen.js';

/** A kitchen just begun: its settings, its home and nothing else. */
export const emptyKitchen = (): Workbook =>
  workbook.parse({
    format: 'catering-workbook',
    version: 1,
    kitchen: { name: 'Bare Yard', currency: 'EUR', timeZone: 'Europe/Dublin' },
    places: [{ key: 'home', name: 'Home kitchen', kind: 'home' }],
    ingredients: [],
    recipes: [],
    events: [],
  });

/** The example kitchen as the workbook file holds it, defaults filled in; a fresh copy at each call. */
export const exampleKitchen = (): Workbook => workbook.parse(structuredClone(example));
