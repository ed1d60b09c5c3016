import { z } from 'zod';
import { date, key } from './common.js';

/** Batches come of several amounts multiplied, so they may be longer than any amount that is entered. */
const batches = z
  .string()
  .regex(/^(\d{1,300}(\.\d{1,300})?|\d{1,300}\/[1-9]\d{0,299})$/)
  .nullable()
  .describe(
    'How much was made for that event, in batches of the recipe, as an exact figure "2.5" or "10/3"; null when it was not known how much it takes.',
  );

export const tick = z
  .strictObject({
    date: date.describe('The day of the job, "2026-12-02"; within the period.'),
    recipe: key.describe('The recipe that was made. It may be gone since.'),
    step: key.nullable().default(null).describe('Which of its steps; null for a recipe without steps.'),
    event: key.describe('The event it was made for, one of the period.'),
    batches,
    who: z.string().trim().min(1).max(120).describe('Who ticked it.'),
    at: z.iso.datetime({ precision: 0 }).describe('When, to the second and in UTC: "2026-12-02T10:20:00Z".'),
  })
  .describe('A job of the prep list that is done, for one of its events.')
  .meta({ id: 'tick' });
export type Tick = z.infer<typeof tick>;

export const prepPeriod = z
  .strictObject({
    key,
    from: date.describe('Its first day.'),
    to: date.describe('Its last day; no day is in two periods.'),
    events: z.array(key).max(2000).default([]).describe('The events prepared for in it.'),
    ticks: z.array(tick).max(100_000).default([]).describe('The jobs done in it.'),
  })
  .describe('Days that are worked through with one prep list.')
  .meta({ id: 'prepPeriod' });
export type PrepPeriod = z.infer<typeof prepPeriod>;
