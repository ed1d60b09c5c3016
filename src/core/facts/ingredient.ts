import { z } from 'zod';
import published from '../../../shared/allergens.json' with { type: 'json' };
import { amount, archived, date, key, known, measure, money, name, origin, unit, words } from './common.js';
import { traits } from './traits.js';

export { type Trait, traits } from './traits.js';

export const price = z
  .strictObject({
    key,
    date: date.describe('The day this price was paid or asked.'),
    price: money,
    guess: z.boolean().default(false).describe('true for a guess until a real price stands.'),
  })
  .describe('What one pack cost on a day. The latest day stands; of one day, the last entered.')
  .meta({ id: 'price' });
export type Price = z.infer<typeof price>;

export const pack = z
  .strictObject({
    key,
    supplier: z.string().trim().max(120).default('').describe('Who sells it.'),
    brand: z.string().trim().max(120).default('').describe('Whose product it is.'),
    code: z
      .string()
      .trim()
      .max(200)
      .default('')
      .describe("What the supplier's price list knows it by: their code, or their name and size for it."),
    size: measure.describe('What one pack holds: 2.5 kg, 70 cl as 700 ml, 12 each.'),
    preferred: z.boolean().default(false).describe('The pack that lines are priced at; one at most.'),
    prices: z.array(price).max(2000).default([]).describe('What it cost, each entry with its day.'),
  })
  .describe('A pack as a supplier sells it.')
  .meta({ id: 'pack' });
export type Pack = z.infer<typeof pack>;

const source = z.string().trim().max(200).default('').describe('Where the figure comes from.');

const ids = (list: readonly { id: string }[]): string => list.map(({ id }) => id).join(', ');

export const allergenState = z
  .strictObject({
    state: z.enum(['contains', 'may', 'free']).describe('What is not listed here is not known.'),
    source: z
      .enum(['label', 'cook', 'reference'])
      .default('label')
      .describe("How it is known: from the label, by the cook's word, or from a reference."),
    date: date.nullable().default(null).describe('The day the label was read; null when no label was.'),
    by: z.string().trim().max(120).default('').describe('Who read it or says so.'),
  })
  .meta({ id: 'allergen-state' })
  .describe('contains, may contain or free, and how that is known.');
export type AllergenState = z.infer<typeof allergenState>;

export const substitute = z
  .strictObject({
    key,
    item: z
      .union([
        z.strictObject({ ingredient: key }).describe('An ingredient, by its key.'),
        z.strictObject({ component: key }).describe('A recipe, by its key.'),
      ])
      .describe('What stands in for it.'),
    ratio: amount.default('1').describe('How much of it stands in for one part, by the weight of each.'),
    caution: z.string().trim().max(300).default('').describe('What to mind: texture, taste, time.'),
  })
  .describe('A substitute, with how much of it is taken.')
  .meta({ id: 'substitute' });
export type Substitute = z.infer<typeof substitute>;

const days = (state: string) =>
  z.int().min(0).max(3650).nullable().default(null).describe(`Days it keeps ${state}; null when not known.`);

export const ingredient = z
  .strictObject({
    key,
    name,
    section: z.string().trim().max(60).default('').describe('Where it stands in the shop.'),
    notBought: z
      .boolean()
      .default(false)
      .describe('true for tap water and the like: it costs nothing, truly.'),
    frozen: z.boolean().default(false).describe('true when bought frozen.'),
    packs: z.array(pack).max(60).default([]).describe('Packs it is sold in.'),
    edibleYield: z
      .strictObject({ yield: amount, source })
      .nullable()
      .default(null)
      .describe(
        'Edible part of one part bought: "0.9" for onions, above 1 for what swells; null when not known.',
      ),
    cookedYields: z
      .array(
        z
          .strictObject({
            name: z.string().trim().min(1).max(60).describe('How it is cooked: roasted, boiled.'),
            yield: amount.describe('Cooked weight of one part: "0.584", above 1 for what swells.'),
            from: z
              .enum(['bought', 'prepared'])
              .describe(
                'The part it starts from: bought, with bone and trim, so that no trim is taken off again; or prepared.',
              ),
            source,
          })
          .describe('What one part weighs once cooked.'),
      )
      .max(20)
      .default([])
      .describe('Cooked yields, one for each way it is cooked.'),
    density: z
      .strictObject({ gramsPerMl: amount, source })
      .nullable()
      .default(null)
      .describe('Grams in one millilitre; null when not known, and never taken as 1.'),
    weights: z
      .array(
        z
          .strictObject({
            unit,
            grams: amount,
            of: z
              .enum(['prepared', 'bought'])
              .default('prepared')
              .describe('Whether that is the prepared (edible) weight or the weight as bought.'),
            source,
          })
          .describe('What one of this count weighs, prepared (edible) or as bought.'),
      )
      .max(20)
      .default([])
      .describe('Weights of its counts: one each, one clove, one tin.'),
    allergens: z
      .record(z.string().regex(/^[a-z][a-z0-9-]{0,39}$/), allergenState)
      .default({})
      .describe(
        `State by allergen; one not listed here is not known. The allergens: ${ids(published.substances)}; and where a label does not say which of a group: ${ids(published.groups)}.`,
      ),
    labelText: z
      .string()
      .trim()
      .max(8000)
      .default('')
      .describe('Its list of ingredients as the label has it, allergens in **bold** or in CAPITALS.'),
    labelDate: date
      .nullable()
      .default(null)
      .describe('The day the label said so; null when that is not known or another pack is bought since.'),
    substitutes: z
      .array(substitute)
      .max(30)
      .default([])
      .describe('What may stand in for it, in the order they are tried.'),
    traits: z
      .partialRecord(z.enum(traits), known)
      .default({})
      .describe('Facts that diets turn on: yes, no or unknown; a fact not listed is unknown.'),
    keeping: z
      .strictObject({
        unopened: days('unopened'),
        opened: days('opened'),
        cooked: days('cooked'),
        frozen: days('frozen'),
        thawed: days('thawed'),
      })
      .prefault({})
      .describe('Days it keeps in each state, the first day being day 0; null when not known.'),
    note: words.default(''),
    archived,
    origin,
  })
  .describe('An ingredient as it is bought.')
  .meta({ id: 'ingredient' });
export type Ingredient = z.infer<typeof ingredient>;
