import { z } from 'zod';
import published from '../../../shared/diets.json' with { type: 'json' };
import { afterwards } from './afterwards.js';
import {
  amount,
  archived,
  clock,
  date,
  key,
  measure,
  money,
  name,
  origin,
  percent,
  words,
} from './common.js';
import { costLines } from './cost-line.js';
import { ingredient } from './ingredient.js';
import { kitchen } from './kitchen.js';
import { place } from './place.js';
import { sellingPrice } from './price.js';
import { recipe } from './recipe.js';

const guests = z.int().min(0).max(100_000).describe('Guests, heads.');

export const group = z
  .strictObject({
    key,
    name,
    guests,
    portion: amount.default('1').describe('How much of a portion one of them eats: "1/2" for children.'),
  })
  .describe('Guests who eat alike: adults, children.')
  .meta({ id: 'group' });
export type Group = z.infer<typeof group>;

export const guest = z
  .strictObject({
    key,
    name: z.string().trim().max(120).default('').describe('Empty for guests known only by number.'),
    count: z.int().min(1).max(100_000).default(1).describe('"3 vegetarians" is a count of 3.'),
    group: key.describe("The group they belong to, by the group's key."),
    answered: z.boolean().default(true).describe('false when asked and not yet heard.'),
    diets: z
      .array(z.string().regex(/^[a-z0-9][a-z0-9-]{0,79}$/))
      .max(30)
      .default([])
      .describe(`Diets: ${published.map(({ id }) => id).join(', ')}; or the kitchen's own, by their keys.`),
    avoids: z
      .array(key)
      .max(30)
      .default([])
      .describe('Ingredients they dislike or do not eat, by their keys.'),
    traces: z
      .boolean()
      .default(true)
      .describe('true when traces matter to them; false when they have said that traces do not.'),
    table: z.string().trim().max(60).default('').describe('The table they sit at.'),
    other: z
      .string()
      .trim()
      .max(300)
      .default('')
      .describe('A wish in their own words; the cook must judge it.'),
  })
  .describe('A guest by name, or several by number, with what they do not eat.')
  .meta({ id: 'guest' });
export type Guest = z.infer<typeof guest>;

export const eaters = z
  .union([
    z
      .strictObject({ everybody: z.literal(true).describe('Always true.') })
      .describe('One portion for every guest.'),
    z
      .strictObject({
        shares: z
          .array(z.strictObject({ group: key, percent }))
          .min(1)
          .max(30)
          .describe('Shares by group.'),
      })
      .describe('A share of each guest group, per cent.'),
    z
      .strictObject({
        counts: z
          .array(z.strictObject({ group: key, guests }))
          .min(1)
          .max(30)
          .describe('Numbers by group.'),
      })
      .describe('A number of each guest group.'),
  ])
  .describe('Who eats the dish; a group not named eats none of it.')
  .meta({ id: 'eaters' });
export type Eaters = z.infer<typeof eaters>;

export const service = z
  .enum(['plated', 'shared'])
  .describe('plated: a plate for each guest; shared: guests serve themselves from it, as at a buffet.');
export type Service = z.infer<typeof service>;

export const dish = z
  .strictObject({
    key,
    recipe: key,
    portion: measure
      .nullable()
      .default(null)
      .describe("What one portion weighs or measures; null for the recipe's own."),
    eaters: eaters.default({ everybody: true }),
    service: service
      .nullable()
      .default(null)
      .describe("How it reaches the guests; null for the course's own way."),
    keptApart: z
      .string()
      .trim()
      .max(200)
      .default('')
      .describe('How portions for guests with allergies are kept apart; empty when they are not.'),
    keptFor: z
      .array(key)
      .max(200)
      .default([])
      .describe('Guests for whom portions are kept back or plated by name, by their keys.'),
    price: money
      .nullable()
      .default(null)
      .describe(
        'What a portion of it alone is sold at, where dishes are priced one by one; null for any other.',
      ),
  })
  .describe('A recipe on the menu.')
  .meta({ id: 'dish' });
export type Dish = z.infer<typeof dish>;

export const course = z
  .strictObject({
    key,
    name,
    time: clock.describe('When it is served by the kitchen\'s clock of 24 hours, "18:30".'),
    dayAfter: z.boolean().default(false).describe('true when served after midnight, on the day after.'),
    service: service.default('plated'),
    dishes: z.array(dish).max(60).default([]).describe('What is served in it.'),
  })
  .describe('A course with its service time.')
  .meta({ id: 'course' });
export type Course = z.infer<typeof course>;

/** What was served, kept when an event is done, so that a later edit does not rewrite it. */
export const served = z
  .strictObject({
    date,
    kitchen,
    places: z.array(place).describe('The home kitchen and where it was served.'),
    ingredients: z.array(ingredient).describe('Everything that was in it, with brands and label dates.'),
    recipes: z.array(recipe).describe('What was cooked.'),
  })
  .describe('The facts as they stood when the event was marked done.')
  .meta({ id: 'served' });
export type Served = z.infer<typeof served>;

export const states = ['enquiry', 'quoted', 'confirmed', 'done', 'postponed', 'cancelled'] as const;
export type EventState = (typeof states)[number];

export const event = z
  .strictObject({
    key,
    name,
    client: z.string().trim().max(120).default('').describe('Who gives the party.'),
    date,
    place: key.describe('Where it is served.'),
    state: z.enum(states).default('enquiry').describe('How far it has come.'),
    groups: z.array(group).min(1).max(30).describe('Who comes, in groups that eat alike.'),
    guests: z.array(guest).max(2000).default([]).describe('Guests who have diets or were asked by name.'),
    eatsAll: guests
      .default(0)
      .describe('How many more have answered that they eat everything; the rest have not answered.'),
    overCatering: percent.default('0').describe('How much more to cook than the guests eat, per cent.'),
    courses: z.array(course).max(30).default([]).describe('The menu, course by course.'),
    costs: costLines.default([]).describe('Costs beside the food, in the order they are counted.'),
    price: sellingPrice.prefault({}),
    afterwards: afterwards
      .nullable()
      .default(null)
      .describe('What it really came to; null until that is noted.'),
    note: words.default(''),
    served: served.nullable().default(null).describe('Kept facts of a done event; null for any other.'),
    archived,
    origin,
  })
  .describe('A party.')
  .meta({ id: 'event' });
export type Event = z.infer<typeof event>;
