import { z } from 'zod';
import { amount, archived, celsius, clock, key, known, minutes, name, origin, words } from './common.js';

export const oven = z
  .strictObject({
    key,
    name,
    shelves: z.int().min(1).max(40).describe('Shelves it takes at once.'),
    coolest: celsius.default(50),
    hottest: celsius.default(250),
  })
  .describe('An oven: it holds one heat at a time.')
  .meta({ id: 'oven' });
export type Oven = z.infer<typeof oven>;

export const pan = z
  .strictObject({
    key,
    name,
    litres: amount.describe('Litres it holds to work in, below the brim.'),
    count: z.int().min(1).max(100).default(1).describe('How many of them there are.'),
  })
  .describe('A pan, pot or mixing bowl by what it holds.')
  .meta({ id: 'pan' });
export type Pan = z.infer<typeof pan>;

export const place = z
  .strictObject({
    key,
    name,
    kind: z.enum(['home', 'venue']).describe('The home kitchen (exactly one) or a venue.'),
    ovens: z.array(oven).max(20).default([]).describe('Ovens that may be used.'),
    rings: z.int().min(0).max(40).default(0).describe('Hob rings.'),
    mixers: z.int().min(0).max(20).default(0).describe('Mixers.'),
    pans: z.array(pan).max(60).default([]).describe('Pans and pots that may be used.'),
    fridgeShelves: z.int().min(0).max(200).default(0).describe('Fridge shelves.'),
    freezerShelves: z.int().min(0).max(200).default(0).describe('Freezer shelves.'),
    water: known.default('unknown').describe('Running water in its kitchen.'),
    access: z
      .strictObject({ from: clock, to: clock })
      .nullable()
      .default(null)
      .describe('Hours one may be in; null when not known.'),
    drive: minutes.nullable().default(null).describe('Minutes from the home kitchen; null when not known.'),
    note: words.default(''),
    archived,
    origin,
  })
  .describe('A place where food is cooked or served.')
  .meta({ id: 'place' });
export type Place = z.infer<typeof place>;
