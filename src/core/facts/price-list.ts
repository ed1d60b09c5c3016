import { z } from 'zod';
import { key } from './common.js';

/** What a column of a price list may hold. */
export const listColumns = [
  'name',
  'code',
  'size',
  'amount',
  'unit',
  'count',
  'price',
  'date',
  'brand',
  'section',
] as const;
export type ListColumn = (typeof listColumns)[number];

export const priceList = z
  .strictObject({
    key,
    supplier: z.string().trim().min(1).max(120).describe('Whose list it is, as packs name the supplier.'),
    headings: z.boolean().default(true).describe('true when the first row says what the columns hold.'),
    columns: z
      .array(
        z.strictObject({
          is: z
            .enum(listColumns)
            .describe(
              'size: amount and unit in one, "6 x 400 g"; count: how many of that size are in a pack.',
            ),
          heading: z
            .string()
            .trim()
            .max(120)
            .default('')
            .describe('The word above it; empty when there is none.'),
          place: z.int().min(1).max(200).describe('Which column it is, the first being 1.'),
        }),
      )
      .max(20)
      .default([])
      .describe('The columns that are read; a column not named here is not.'),
    decimal: z
      .enum(['point', 'comma'])
      .default('point')
      .describe('The sign before pennies: with a point "1,234" is one thousand, with a comma it is not.'),
    days: z
      .enum(['day-first', 'month-first'])
      .default('day-first')
      .describe('Which comes first in a date such as 4/12/2026.'),
    leftOut: z
      .array(z.string().max(200))
      .max(1000)
      .default([])
      .describe('Rows that are never asked about again, by their code, or by their name and size.'),
  })
  .describe("How one supplier's price list is read, kept from one list to the next.")
  .meta({ id: 'price-list' });
export type PriceList = z.infer<typeof priceList>;
