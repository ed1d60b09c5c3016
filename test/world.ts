import example from '../shared/example/kitchen.json' with { type: 'json' };
import { type Workbook, workbook } from '../src/core/facts/facts.js';

export { otherKitchen } from './other-kitchen/kitchen.js';

/** The example kitchen as the workbook file holds it, defaults filled in; a fresh copy at each call. */
export const exampleKitchen = (): Workbook => workbook.parse(structuredClone(example));
