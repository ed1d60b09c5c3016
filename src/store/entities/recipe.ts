import type { Selectable } from 'kysely';
import type { Line, Recipe, RecipeYield, Step } from '../../core/facts/recipe.js';
import { normalName } from '../../core/names.js';
import type { LineTable, RecipeTable, StepTable } from '../tables.js';
import { type Part, placed, type Shape } from './shape.js';

type RecipeRow = Selectable<RecipeTable> & {
  recipe_line: Selectable<LineTable>[];
  recipe_step: Selectable<StepTable>[];
};

const lines: Part<Recipe> = {
  table: 'recipe_line',
  owner: 'recipe_id',
  identity: ['key'],
  order: 'position',
  rows: (doc) =>
    placed(doc.lines, (line) => ({
      key: line.key,
      amount: line.amount,
      amount_to: line.amountTo,
      unit: line.unit,
      ingredient: 'ingredient' in line.item ? line.item.ingredient : null,
      component: 'component' in line.item ? line.item.component : null,
      preparation: line.preparation,
      stated: line.stated,
      cooked: line.cooked,
      scales: line.scales,
    })),
};

const steps: Part<Recipe> = {
  table: 'recipe_step',
  owner: 'recipe_id',
  identity: ['key'],
  order: 'position',
  rows: (doc) =>
    placed(doc.steps, (step) => ({
      key: step.key,
      words: step.words,
      minutes: step.minutes,
      minutes_longest: step.minutesLongest,
      attended: step.attended,
      oven: step.oven,
      portions_per_shelf: step.portionsPerShelf,
      rings: step.rings,
      pan: step.pan,
      mixers: step.mixers,
      fridge_shelves: step.fridgeShelves,
      after: step.after,
      equipment: step.equipment,
      served_within: step.servedWithin,
      at_place: step.where,
      days_ahead: step.daysAhead,
    })),
};

export const recipeShape: Shape<'recipe'> = {
  table: 'recipe',
  row: (doc) => ({
    name: doc.name,
    name_key: normalName(doc.name),
    variant_of: doc.variantOf,
    yield_portions: doc.yield.portions,
    yield_weight: doc.yield.weight,
    yield_volume: doc.yield.volume,
    by_piece: doc.byPiece,
    cooking_loss: doc.cookingLoss,
    tin: doc.tin,
    cup: doc.cup,
    keeping_days: doc.keepingDays,
    note: doc.note,
    origin: doc.origin,
  }),
  parts: [lines, steps],
  doc: (row: RecipeRow) => ({
    key: row.key,
    name: row.name,
    variantOf: row.variant_of,
    yield: {
      portions: row.yield_portions,
      weight: row.yield_weight,
      volume: row.yield_volume,
    } as RecipeYield,
    byPiece: row.by_piece,
    cookingLoss: row.cooking_loss,
    tin: row.tin,
    cup: row.cup,
    lines: row.recipe_line.map(lineOf),
    steps: row.recipe_step.map(stepOf),
    keepingDays: row.keeping_days,
    note: row.note,
    archived: row.archived_at !== null,
    origin: row.origin,
  }),
};

const lineOf = (row: Selectable<LineTable>): Line => ({
  key: row.key,
  amount: row.amount,
  amountTo: row.amount_to,
  unit: row.unit,
  item: row.component === null ? { ingredient: row.ingredient ?? '' } : { component: row.component },
  preparation: row.preparation,
  stated: row.stated,
  cooked: row.cooked,
  scales: row.scales,
});

const stepOf = (row: Selectable<StepTable>): Step => ({
  key: row.key,
  words: row.words,
  minutes: row.minutes,
  minutesLongest: row.minutes_longest,
  attended: row.attended,
  oven: row.oven,
  portionsPerShelf: row.portions_per_shelf,
  rings: row.rings,
  pan: row.pan,
  mixers: row.mixers,
  fridgeShelves: row.fridge_shelves,
  after: row.after,
  equipment: row.equipment,
  servedWithin: row.served_within,
  where: row.at_place,
  daysAhead: row.days_ahead,
});
