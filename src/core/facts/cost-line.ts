import { z } from 'zod';
import { amount, key, money, name, percent } from './common.js';

/** What a cost is for; `hands` is people's time. */
export const costKinds = [
  'hands',
  'hire',
  'travel',
  'venue',
  'energy',
  'packaging',
  'sundries',
  'overhead',
  'contingency',
  'other',
] as const;
export type CostKind = (typeof costKinds)[number];

/** Hours that follow from the event itself. */
export const workHours = ['cooking', 'driving', 'ovens', 'rings'] as const;
export type WorkHours = (typeof workHours)[number];

const heads = z.int().min(1).max(100_000);

export const costBasis = z
  .union([
    z
      .strictObject({
        fixed: money.nullable().describe('For the event, however many come; null when not known.'),
      })
      .describe('One sum for the event.'),
    z
      .strictObject({ aGuest: money.nullable().describe('For each guest; null when not known.') })
      .describe('A sum for each guest.'),
    z
      .strictObject({
        step: money.nullable().describe('For each step begun, such as a crate; null when not known.'),
        holds: heads.describe('What a step holds: 25 guests, or 36 glasses in a crate.'),
        each: amount.default('1').describe('How many of them a guest takes: 2 glasses.'),
        spare: percent.default('0').describe('How many more than are needed, per cent.'),
      })
      .describe('A sum for every so many guests begun: crates, tables, trays.'),
    z
      .strictObject({
        rate: money.nullable().describe("For one hour; null for the person's own, or when not known."),
        person: key.nullable().default(null).describe('Whose hour it is, one of the people of the kitchen.'),
        hours: z
          .union([amount, z.enum(workHours)])
          .describe(
            "Hours of each; or those of the event itself: cooking (the steps' attended minutes), driving (there and back), ovens or rings (their minutes in use).",
          ),
        people: z.int().min(0).max(1000).default(1).describe('How many of them, at least.'),
        guestsEach: heads
          .nullable()
          .default(null)
          .describe('One for every so many guests begun, where that is more; null for a fixed number.'),
      })
      .describe('Hours at a rate: cooking, serving, setting up, washing up, driving; energy by the hour.'),
    z
      .strictObject({
        percent,
        of: z
          .enum(['food', 'costs'])
          .describe('Of the food as used or bought, or of all costs that stand before it.'),
      })
      .describe('So many per cent of other costs: overhead, contingency.'),
  ])
  .describe('What it goes by.')
  .meta({ id: 'costBasis' });
export type CostBasis = z.infer<typeof costBasis>;

export const costLine = z
  .strictObject({
    key,
    name,
    kind: z.enum(costKinds).describe('What it is for.'),
    by: costBasis,
    note: z.string().trim().max(300).default('').describe('Free words.'),
  })
  .describe('A cost of an event beside its food.')
  .meta({ id: 'costLine' });
export type CostLine = z.infer<typeof costLine>;

export const costLines = z.array(costLine).max(60);
