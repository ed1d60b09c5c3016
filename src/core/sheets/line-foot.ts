import type { Line } from '../facts/recipe.js';
import { share } from '../flour.js';
import type { LineNeed, RecipeNeed } from '../scaling.js';

/** What must be said of figures that a line shapes in a way of its own, and which lines do so. */
const ways: [words: string, shapes: (line: Line) => boolean][] = [
  [
    'Of a range such as 2–3 both ends are shown; the upper one is what is needed, bought and costed.',
    ({ amountTo }) => amountTo !== null,
  ],
  [
    'Herbs and hot chilli scale straight to twice the recipe, then by a half and a quarter of the base for each further one (Canadian Spice Association, Spice usage).',
    ({ scales }) => scales === 'herb' || scales === 'chilli',
  ],
  ['What goes in once for each batch is taken for whole batches.', ({ scales }) => scales === 'batch'],
  [
    'A per cent is a share of the flour’s weight (baker’s per cent).',
    ({ unit, amount }) => unit === share && amount !== null,
  ],
  [
    'Of what is stated once cooked, the cooked weight goes in and the weight before cooking is bought.',
    ({ stated }) => stated === 'cooked',
  ],
];

/** The conventions that shaped these lines beyond what every sheet says; none where all are as usual. */
export const lineFoot = (lines: Iterable<Pick<LineNeed, 'line'>>): string[] => {
  const open = new Set(ways);
  for (const { line } of lines) for (const way of open) if (way[1](line)) open.delete(way);
  return ways.filter((way) => !open.has(way)).map(([words]) => words);
};

/** The same of everything that dishes need. */
export const dishFoot = (dishes: readonly { recipes: readonly RecipeNeed[] }[]): string[] =>
  lineFoot(dishes.flatMap(({ recipes }) => recipes.flatMap(({ lines }) => lines)));
