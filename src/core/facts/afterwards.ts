import { z } from 'zod';
import { amount, key, measure, money } from './common.js';

/** What a party really came to, beside what was planned. */
export const afterwards = z
  .strictObject({
    came: z
      .array(
        z.strictObject({
          group: key.describe('The guest group, by its key.'),
          guests: z.int().min(0).max(100_000).describe('How many of it came.'),
        }),
      )
      .max(30)
      .default([])
      .describe('Guests who came, where that was counted.'),
    bought: z
      .array(
        z.strictObject({
          ingredient: key.describe('What was bought.'),
          amount: measure.nullable().default(null).describe('How much; null when not noted.'),
          paid: money.nullable().describe('What was paid for it; null when not noted.'),
        }),
      )
      .max(2000)
      .default([])
      .describe('What was really bought for it.'),
    spent: z
      .array(
        z.strictObject({
          line: key.describe('The cost line, by its key.'),
          hours: amount
            .nullable()
            .default(null)
            .describe('Hours worked, of all together; null when not noted.'),
          paid: money.nullable().default(null).describe('What it really cost; null when not noted.'),
        }),
      )
      .max(60)
      .default([])
      .describe('What the other costs really were.'),
    left: z
      .array(
        z.strictObject({
          dish: key.describe('The dish of the event, by its key.'),
          portions: amount.describe('Portions that came back.'),
        }),
      )
      .max(2000)
      .default([])
      .describe('What was left over.'),
    note: z.string().trim().max(2000).default('').describe('What to do otherwise next time.'),
  })
  .describe('What a party really came to.')
  .meta({ id: 'afterwards' });
export type Afterwards = z.infer<typeof afterwards>;
