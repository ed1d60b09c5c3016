import { z } from 'zod';
import { amount, clock, key, money, name, percent } from './common.js';
import { costLines } from './cost-line.js';
import { ownDiet } from './diet.js';
import { tax, terms } from './price.js';
import { priceList } from './price-list.js';

const hours = z
  .array(z.strictObject({ from: clock, to: clock }))
  .max(6)
  .default([])
  .describe('Working hours of that weekday, none when off.');

export const weekdays = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Weekday = (typeof weekdays)[number];

export const person = z
  .strictObject({
    key,
    name,
    hours: z
      .strictObject({ mon: hours, tue: hours, wed: hours, thu: hours, fri: hours, sat: hours, sun: hours })
      .prefault({})
      .describe('Working hours by weekday.'),
    hourlyCost: money
      .nullable()
      .default(null)
      .describe('Cost of an hour in minor units; null when not known.'),
  })
  .describe('Somebody who works in the kitchen.')
  .meta({ id: 'person' });
export type Person = z.infer<typeof person>;

/** Which cup and spoon a bare "cup" or "tbsp" means. */
export const cups = ['metric', 'us', 'us-label', 'imperial', 'australian'] as const;
export const cup = z
  .enum(cups)
  .describe(
    'Which cup and spoons are meant: metric 250 ml and 15 ml, us 236.588 ml, us-label 240 ml, imperial half a pint 284.131 ml, australian 250 ml with a 20 ml tablespoon.',
  )
  .meta({ id: 'cup' });
export type Cup = z.infer<typeof cup>;

export const allergenLists = ['eu', 'us', 'ca', 'anz'] as const;
export type AllergenListId = (typeof allergenLists)[number];

export const kitchen = z
  .strictObject({
    name,
    currency: z
      .string()
      .regex(/^[A-Z]{3}$/)
      .describe('ISO 4217 code, such as GBP; fixed once a price exists.'),
    timeZone: z.string().min(1).max(60).describe('IANA time zone, such as Europe/London.'),
    locale: z.string().min(2).max(20).default('en-GB').describe('BCP 47 tag that lists are sorted by.'),
    units: z.enum(['metric', 'us']).default('metric').describe('Units the sheets show.'),
    scaleStep: amount
      .default('0.5')
      .describe('The finest step of the kitchen scales in grams: no weight is shown finer.'),
    heat: z.enum(['C', 'F']).default('C').describe('Degrees the sheets show.'),
    cup: cup.default('metric'),
    paper: z.enum(['A4', 'Letter']).default('A4').describe('Paper the sheets print on.'),
    allergenList: z
      .enum(allergenLists)
      .default('eu')
      .describe('Allergen list in force: eu (and UK), us, ca, anz.'),
    tax: tax.nullable().default(null).describe('Tax on what is sold; null when none is charged.'),
    costs: costLines.default([]).describe('The costs beside food that a new event starts with.'),
    marginFloor: percent
      .nullable()
      .default(null)
      .describe('The least margin to live on, per cent of the price without tax; null when not said.'),
    roundTo: money
      .default(0)
      .describe('What a price a guest goes up to a multiple of, for new events; 0 for none.'),
    terms: terms.prefault({}),
    diets: z.array(ownDiet).max(60).default([]).describe("Diets of the kitchen's own making."),
    dietsKeptDays: z
      .int()
      .min(0)
      .max(3650)
      .nullable()
      .default(null)
      .describe("Days after an event that its guests' diets are kept; null for no end."),
    letterKeys: z.boolean().default(true).describe('Single-letter keys on the pages.'),
    people: z.array(person).max(50).default([]).describe('Who works here.'),
    priceLists: z.array(priceList).max(100).default([]).describe("How suppliers' price lists are read."),
  })
  .describe('The kitchen and its settings.')
  .meta({ id: 'kitchen' });
export type Kitchen = z.infer<typeof kitchen>;
