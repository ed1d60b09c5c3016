import type { Ingredient } from '../../core/facts/ingredient.js';
import { cups, type Kitchen } from '../../core/facts/kitchen.js';
import type { Recipe } from '../../core/facts/recipe.js';
import { type Read, readMoreThanZero, readPercent, readWhole } from '../../core/reading.js';
import { readMeasure } from '../../core/reading-measures.js';
import { asWritten } from '../as-written.js';
import type { Reading } from '../faults.js';
import type { Items } from './items.js';
import { readLines } from './lines.js';
import { readSteps } from './steps.js';
import { readRecipeTin } from './tin.js';

/** What a recipe's form says: how it changes a recipe, and the ingredients that are new with it. */
export type RecipeRead = { change: (before: Recipe) => Recipe; added: Ingredient[] };

type Context = { items: Items; kitchen: Kitchen; isTaken: (key: string) => boolean };

/** Reads a recipe's form, with what can't be read noted in `reading`. */
export const readRecipe = (reading: Reading, { items, kitchen, isTaken }: Context): RecipeRead => {
  const name = reading.words('name', 'Name', 'Enter what the recipe is called.');
  const { lines, added } = readLines(reading, items, isTaken);
  const read = {
    name,
    variantOf: reading.text('variantOf') || null,
    yield: readYield(reading),
    byPiece: reading.ticked('byPiece'),
    cookingLoss: reading.maybe('cookingLoss', 'Loss in cooking', (typed) =>
      readPercent(typed, 'the loss in cooking'),
    ),
    tin: readRecipeTin(reading, kitchen),
    cup: cups.find((cup) => cup === reading.text('cup')) ?? null,
    lines,
    steps: readSteps(reading, kitchen),
    keepingDays: reading.maybe('keepingDays', 'Keeps', (typed) =>
      readWhole(typed, 'how many days it keeps', 0, 3650),
    ),
    note: reading.text('note'),
  };
  return { change: (before) => asWritten(before, { ...before, ...read }), added };
};

const readYield = (reading: Reading): Recipe['yield'] => {
  const portions = reading.maybe(
    'yield.portions',
    'Portions it makes',
    (typed): Read<string> => readMoreThanZero(typed),
  );
  const weight = reading.maybe('yield.weight', 'Weight it makes', (typed) => readMeasure(typed, 'g'));
  const volume = reading.maybe('yield.volume', 'Volume it makes', (typed) => readMeasure(typed, 'ml'));
  const empty = ['portions', 'weight', 'volume'].every((name) => reading.text(`yield.${name}`) === '');
  if (empty)
    reading.refuse(
      'yield.portions',
      'What it makes',
      'Enter what one batch makes: portions, such as 12, a weight or a volume; one of them is enough.',
    );
  return { portions, weight, volume } as Recipe['yield'];
};
