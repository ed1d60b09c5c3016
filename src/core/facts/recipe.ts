import { z } from 'zod';
import {
  amount,
  archived,
  celsius,
  key,
  measure,
  minutes,
  name,
  origin,
  percent,
  unit,
  words,
} from './common.js';
import { cup } from './kitchen.js';

export const item = z
  .union([
    z.strictObject({ ingredient: key }).describe('An ingredient, by its key.'),
    z.strictObject({ component: key }).describe('Another recipe used in this one, by its key.'),
  ])
  .describe('An ingredient or another recipe, one of the two.')
  .meta({ id: 'item' });

export const stateds = ['usual', 'prepared', 'bought', 'cooked'] as const;
export const scalings = ['straight', 'pieces', 'herb', 'chilli', 'batch', 'flour', 'taste'] as const;

export const line = z
  .strictObject({
    key,
    amount: amount.nullable().describe('null only for a line that goes to taste.'),
    amountTo: amount
      .nullable()
      .default(null)
      .describe('The upper end of a range such as 2 to 3, in the same unit; null for one figure.'),
    unit: unit.default('each'),
    item,
    preparation: z.string().trim().max(200).default('').describe('Cut or state: peeled, 3 cm dice.'),
    stated: z
      .enum(stateds)
      .default('usual')
      .describe(
        'Which weight the amount states. usual: weight or volume is the prepared amount, a count is pieces as bought; cooked: the weight once cooked as the line says.',
      ),
    cooked: z
      .string()
      .trim()
      .max(60)
      .default('')
      .describe("How it is cooked, by the name of one of the ingredient's cooked yields; for stated cooked."),
    scales: z
      .enum(scalings)
      .default('straight')
      .describe(
        'straight; pieces: whole pieces, rounded up once for a dish; herb and chilli: by the spice rule, straight to twice the recipe and then half or a quarter of the base for each further one; batch: the amount once for each batch begun; flour: straight, and counted as flour that lines in percent are shares of; taste: the cook decides at the pot.',
      ),
  })
  .describe('One line of a recipe.')
  .meta({ id: 'line' });
export type Line = z.infer<typeof line>;

export const step = z
  .strictObject({
    key,
    words: z.string().trim().min(1).max(2000).describe('What to do.'),
    minutes: minutes.nullable().default(null).describe('How long it takes; null when not known.'),
    minutesLongest: minutes
      .nullable()
      .default(null)
      .describe('How long it may take at most; null for no more than minutes.'),
    attended: z.boolean().default(true).describe('true when somebody stands there.'),
    oven: z
      .strictObject({
        heat: celsius,
        tolerance: z.int().min(0).max(100).default(0).describe('Degrees Celsius it may be off, up or down.'),
      })
      .nullable()
      .default(null)
      .describe('Oven heat and how far off it may be; null when no oven is used.'),
    portionsPerShelf: amount
      .nullable()
      .default(null)
      .describe('Portions that fit one oven shelf; null when not known.'),
    rings: z.int().min(0).max(20).default(0).describe('Hob rings it takes.'),
    pan: amount
      .nullable()
      .default(null)
      .describe(
        'Litres that one batch fills in a pan at this step; null when none is used or it is not known.',
      ),
    mixers: z.int().min(0).max(5).default(0).describe('Mixers it takes.'),
    fridgeShelves: z.int().min(0).max(50).default(0).describe('Fridge shelves it takes.'),
    after: z
      .array(
        z.strictObject({
          step: key,
          least: minutes.default(0),
          most: minutes.nullable().default(null).describe('Most minutes between; null for no limit.'),
        }),
      )
      .max(20)
      .default([])
      .describe(
        'Steps it comes after, with the least and most minutes between; none means after the one before.',
      ),
    equipment: z
      .array(z.string().trim().min(1).max(60))
      .max(10)
      .default([])
      .describe('Equipment that food touches at this step, such as fryer, tray or board.'),
    servedWithin: minutes
      .nullable()
      .default(null)
      .describe('Minutes it may wait before it is served; null for no limit.'),
    where: z.enum(['home', 'venue', 'either']).default('home').describe('In which kitchen it is done.'),
    daysAhead: z
      .int()
      .min(0)
      .max(365)
      .default(0)
      .describe('How many days before the day of its use this step may be done.'),
  })
  .describe('One step of the method.')
  .meta({ id: 'step' });
export type Step = z.infer<typeof step>;

const noPortions = z.null().default(null).describe('Not counted in portions.');
const portions = amount.describe('Portions it makes.');
const weight = measure.nullable().default(null).describe('What it weighs when done; null when not weighed.');
const volume = measure
  .nullable()
  .default(null)
  .describe('How much it measures when done; null when not measured.');

/** At least one of the three stands; a union says so in the JSON Schema too. */
export const recipeYield = z
  .union([
    z.strictObject({ portions, weight, volume }),
    z.strictObject({ portions: noPortions, weight: measure.describe('What it weighs when done.'), volume }),
    z.strictObject({
      portions: noPortions,
      weight: z.null().default(null).describe('Not weighed.'),
      volume: measure.describe('How much it measures when done.'),
    }),
  ])
  .describe('What one batch makes: portions, weight or volume, at least one of them.')
  .meta({ id: 'yield' });
export type RecipeYield = z.infer<typeof recipeYield>;

const side = amount.describe('In the unit of the tin, inside.');
const tinOf = {
  unit: z.enum(['cm', 'in']).default('cm').describe('What its sides are measured in.'),
  depth: side.nullable().default(null).describe('How deep it is; null when not known.'),
  count: z.int().min(1).max(500).default(1).describe('Tins that one batch fills.'),
};

/** The tins one batch is baked in, so that it can be scaled to others. */
export const tin = z
  .discriminatedUnion('shape', [
    z.strictObject({ shape: z.literal('round'), diameter: side, ...tinOf }),
    z.strictObject({ shape: z.literal('square'), side, ...tinOf }),
    z.strictObject({ shape: z.literal('rectangular'), length: side, width: side, ...tinOf }),
    z.strictObject({
      shape: z.literal('ring'),
      diameter: side,
      hole: side.describe('Across the hole, less than the diameter.'),
      ...tinOf,
    }),
    z.strictObject({ shape: z.literal('loaf'), length: side, width: side, ...tinOf }),
  ])
  .describe('The tins that one batch fills.')
  .meta({ id: 'tin' });
export type Tin = z.infer<typeof tin>;

export const recipe = z
  .strictObject({
    key,
    name,
    variantOf: key.nullable().default(null).describe('The recipe this is a variant of.'),
    yield: recipeYield,
    byPiece: z
      .boolean()
      .default(false)
      .describe('true when portions are pieces that cannot be split: rolls, tartlets.'),
    cookingLoss: percent
      .nullable()
      .default(null)
      .describe('Weight lost in cooking, per cent; null when not known.'),
    tin: tin.nullable().default(null).describe('The tins one batch fills; null when it goes in none.'),
    cup: cup.nullable().default(null).describe("Which cup and spoons it means; null for the kitchen's."),
    lines: z.array(line).max(200).default([]).describe('What goes in, in order.'),
    steps: z.array(step).max(100).default([]).describe('The method, in order.'),
    keepingDays: z
      .int()
      .min(0)
      .max(3650)
      .nullable()
      .default(null)
      .describe('Days it keeps once made, the day it is made being day 0; null when not known.'),
    note: words.default(''),
    archived,
    origin,
  })
  .describe('A recipe; used in another it is a component.')
  .meta({ id: 'recipe' });
export type Recipe = z.infer<typeof recipe>;
