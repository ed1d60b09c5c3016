import { z } from 'zod';
import { date, key } from './common.js';

/** The most one photograph takes, and all of them together, so that a workbook file can still be opened again. */
export const mostPhotograph = 8 * 1024 * 1024;
export const mostPhotographs = 40 * 1024 * 1024;

export const photographTypes = ['image/jpeg', 'image/png', 'image/webp'] as const;
export type PhotographType = (typeof photographTypes)[number];

export const labelPhotograph = z
  .strictObject({
    ingredient: key.describe('Whose label it shows, by the key.'),
    taken: date.describe('The day it was taken.'),
    pack: z.string().max(300).default('').describe('The pack it is on: its key and brand.'),
    type: z.enum(photographTypes).describe('What kind of picture it is.'),
    bytes: z
      .string()
      .min(4)
      .max(Math.ceil(mostPhotograph / 3) * 4)
      .regex(/^[A-Za-z0-9+/]*={0,2}$/)
      .describe('The picture itself, in base64.'),
  })
  .describe('A photograph of a label; by itself it marks nothing.')
  .meta({ id: 'label-photograph' });
export type LabelPhotograph = z.infer<typeof labelPhotograph>;
