import { z } from 'zod';
import { key } from './common.js';

export const printedSheets = ['allergens', 'table-cards', 'pass'] as const;
export type PrintedSheetName = (typeof printedSheets)[number];

const hash = z.string().regex(/^[0-9a-f]{32}$/);

/** What a printed paper said, as hashes of its lines: whether it still holds can be told, what guests eat cannot. */
export const printedSheet = z
  .strictObject({
    event: key.describe('The event it is for.'),
    sheet: z.enum(printedSheets).describe('Which sheet it is.'),
    who: z.string().trim().min(1).max(120).describe('Who printed it.'),
    at: z.iso.datetime({ precision: 0 }).describe('When, to the second and in UTC: "2026-12-02T10:20:00Z".'),
    lines: z
      .array(
        z
          .strictObject({
            id: hash.describe('Which line of the sheet, as a hash of its name.'),
            of: z.enum(['head', 'dish', 'guest']).describe('What it is about.'),
            dish: z
              .string()
              .max(120)
              .default('')
              .describe('The dish by its name; guests are not named here.'),
            fingerprint: hash.describe('A hash of all the line said.'),
          })
          .describe("A dish, a guest or the paper's head."),
      )
      .max(20_000)
      .describe('What stood on it.'),
  })
  .describe('The last print of one of the papers of an event.')
  .meta({ id: 'printedSheet' });
export type PrintedSheet = z.infer<typeof printedSheet>;
export type PrintedLine = PrintedSheet['lines'][number];
