import { z } from 'zod';
import { amount, key, money, name, percent } from './common.js';

/** How the tax on a paper is rounded, by its lines or for the whole (HMRC VAT Notice 700, 17.5). */
export const taxRoundings = ['whole-down', 'whole-nearest', 'line-nearest', 'line-down'] as const;
export type TaxRounding = (typeof taxRoundings)[number];

export const tax = z
  .strictObject({
    name,
    rate: percent,
    included: z
      .boolean()
      .default(false)
      .describe('true when prices are named with the tax in them; false when it is added to them.'),
    rounding: z
      .enum(taxRoundings)
      .default('whole-nearest')
      .describe(
        'whole-down and whole-nearest round the tax of a paper once, down or to the nearest minor unit; line-nearest rounds it on each line to the nearest, line-down to a tenth below.',
      ),
  })
  .describe('Tax on what is sold, as the cook states it.')
  .meta({ id: 'tax' });
export type Tax = z.infer<typeof tax>;

export const discount = z
  .union([
    z.strictObject({ percent }).describe('So many per cent of the price.'),
    z.strictObject({ off: money }).describe('A sum off the price.'),
  ])
  .describe('What is taken off.');
export type Discount = z.infer<typeof discount>;

/** How the price of an event is set; sums are as prices are named, with or without tax as the kitchen says. */
export const sellingPrice = z
  .strictObject({
    by: z
      .union([
        z.strictObject({ aGuest: money }).describe('So much for each guest who pays in full.'),
        z.strictObject({ total: money }).describe('So much for the event.'),
        z
          .strictObject({ margin: percent })
          .describe('What leaves this margin, per cent of the price without tax.'),
        z.strictObject({ foodCost: percent }).describe('What the food is so many per cent of, without tax.'),
      ])
      .nullable()
      .default(null)
      .describe('What it is set by; null while no price is set.'),
    roundTo: money
      .default(0)
      .describe(
        'A price a guest that is worked out goes up to a multiple of this: 50 for half pounds; 0 for none.',
      ),
    groups: z
      .array(
        z.strictObject({
          group: key.describe('The guest group, by its key.'),
          pays: z
            .union([
              z.strictObject({ aGuest: money }).describe('A price of their own.'),
              z.strictObject({ percent }).describe('So many per cent of the full price; 0 for nothing.'),
            ])
            .describe('What one of them pays.'),
        }),
      )
      .max(30)
      .default([])
      .describe('Groups with a price of their own, such as children or helpers; any other pays in full.'),
    minimum: money.nullable().default(null).describe('The least the event comes to; null for none.'),
    discount: discount.nullable().default(null),
    discountFor: z
      .string()
      .trim()
      .max(120)
      .default('')
      .describe('What it is taken off for, in words for the client.'),
  })
  .describe('How the price of an event is set.')
  .meta({ id: 'sellingPrice' });
export type SellingPrice = z.infer<typeof sellingPrice>;

/** An instalment as the kitchen usually asks for it, or as an offer states it. */
export const instalment = z
  .strictObject({
    words: z.string().trim().max(120).describe('What the client calls it: "deposit, one quarter".'),
    percent: percent.describe('So many per cent of the total.'),
    days: z
      .int()
      .min(0)
      .max(3650)
      .nullable()
      .describe('Days before the event that it is due; null when due on acceptance.'),
  })
  .describe('A part of the total and when it is due; what is left is the balance.');
export type Instalment = z.infer<typeof instalment>;

export const cancellation = z
  .strictObject({
    days: z.int().min(0).max(3650).describe('From so many days before the event.'),
    percent: percent.describe('So many per cent of the total is owed.'),
  })
  .describe('What is owed when it is called off so late.');
export type Cancellation = z.infer<typeof cancellation>;

const line = z.string().trim().max(1000);

/** What a kitchen usually offers on; a quote starts from it and keeps its own. */
export const terms = z
  .strictObject({
    included: line.default('').describe('What is included, in words for the client.'),
    guestNumbers: line.default('').describe('What is said about the number of guests.'),
    allergies: line.default('').describe('What is said about allergies, for every client.'),
    more: line.default('').describe('What else is said.'),
    validDays: z.int().min(1).max(3650).default(14).describe('Days that a quote is open for acceptance.'),
    finalCountDays: z
      .int()
      .min(0)
      .max(3650)
      .nullable()
      .default(null)
      .describe('Days before the event by which the number of guests is final; null when not said.'),
    fewerPercent: amount
      .nullable()
      .default(null)
      .describe('By how many per cent fewer guests may come at the same price a guest; null when not said.'),
    instalments: z.array(instalment).max(12).default([]).describe('What is due before the balance.'),
    balanceDays: z
      .int()
      .min(-3650)
      .max(3650)
      .default(0)
      .describe('Days before the event that the balance is due; below 0 after it.'),
    cancellation: z.array(cancellation).max(12).default([]).describe('What is owed when it is called off.'),
  })
  .describe('What a kitchen usually offers on.')
  .meta({ id: 'terms' });
export type Terms = z.infer<typeof terms>;
