import { z } from 'zod';

/** Words every kind of fact is made of. Descriptions go into the JSON Schema of the workbook file. */

export const key = z
  .string()
  .regex(/^[a-z0-9][a-z0-9-]{0,79}$/)
  .describe('A readable key of your own: lower-case letters, figures and hyphens, such as "leek-tart".')
  .meta({ id: 'key' });

export const name = z.string().trim().min(1).max(120).describe('A name as people say it.');

export const words = z.string().max(4000).describe('Free words.');

/** At most 15 digits, so that no figure outgrows a kitchen; zero is allowed here and refused where it is wrong. */
export const amount = z
  .string()
  .regex(/^(\d{1,12}(\.\d{1,9})?|\d{1,9}\/[1-9]\d{0,8})$/)
  .describe('An exact figure, as a decimal "0.75" or a fraction "3/4"; never negative.')
  .meta({ id: 'amount' });

export const percent = amount.describe('A percentage as an exact figure: "12.5" is 12.5 per cent.');

export const date = z.iso.date().describe('A calendar day, "2026-11-28".');

export const clock = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/)
  .describe('A time of day on the 24-hour clock, "18:30".')
  .meta({ id: 'clock' });

export const minutes = z.int().min(0).max(100_000).describe('Minutes, whole.');

export const money = z
  .int()
  .min(0)
  .max(1_000_000_000_000)
  .describe("Money in minor units of the kitchen's currency: 340 is 3.40 in pounds, 340 yen in yen.")
  .meta({ id: 'money' });

export const celsius = z.int().min(-40).max(500).describe('Heat in degrees Celsius.');

/** An example's rows say so, and one button removes those not used since. */
export const origin = z
  .enum(['own', 'example'])
  .default('own')
  .describe('"example" marks a row of the example kitchen that comes with the workbook.');

export const archived = z
  .boolean()
  .default(false)
  .describe('true when no longer wanted: kept for what uses it, left out of lists.');

export const known = z
  .enum(['yes', 'no', 'unknown'])
  .describe('"unknown" when nobody has said; never read as "no".')
  .meta({ id: 'known' });
export type Known = z.infer<typeof known>;

export const unit = z
  .string()
  .regex(/^[a-z][a-z-]{0,19}$/)
  .describe(
    'A unit: g, kg, oz, lb; ml, cl, dl, l, tsp, tbsp, cup, fl-oz, pint, quart, gallon; or a count in the singular, such as each, clove, bunch, tin, slice, leaf.',
  )
  .meta({ id: 'unit' });

export const measure = z
  .strictObject({ amount, unit })
  .describe('An amount with its unit, as entered.')
  .meta({ id: 'measure' });
export type Measure = z.infer<typeof measure>;
