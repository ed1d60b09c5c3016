import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import type { Facts } from '../../core/facts/facts.js';
import type { PrintedLine, PrintedSheetName } from '../../core/facts/printed-sheet.js';
import { type LineNow, linesOf } from '../../core/printed.js';
import { allergenMatrix } from '../../core/sheets/allergen-matrix.js';
import { allergenMatrixSheet } from '../../core/sheets/allergen-matrix-sheet.js';
import { passList } from '../../core/sheets/pass-list.js';
import { passListSheet } from '../../core/sheets/pass-list-sheet.js';
import type { Sheet } from '../../core/sheets/sheet.js';
import { tableCardsSheet } from '../../core/sheets/table-cards-sheet.js';
import { eventsBeside } from '../../store/beside.js';
import { addressesOf } from '../events/addresses.js';
import type { OneEvent } from '../events/event.js';

type Paper = {
  /** What it is called in a sentence. */
  name: string;
  /** true where only some of its dishes may be printed. */
  part: boolean;
  sheet: (event: Event, facts: Facts, beside: readonly Event[]) => Sheet;
  page: (event: string) => string;
};

/** The papers whose prints are noted, so that one that no longer holds is said to be so. */
export const papers: Record<PrintedSheetName, Paper> = {
  allergens: {
    name: 'allergen sheet',
    part: false,
    sheet: (...of) => allergenMatrixSheet(allergenMatrix(...of)),
    page: (event) => addressesOf(event).allergens,
  },
  'table-cards': {
    name: 'sheet of table cards',
    part: true,
    sheet: (...of) => tableCardsSheet(allergenMatrix(...of)),
    page: (event) => addressesOf(event).cards,
  },
  pass: {
    name: 'list for the pass',
    part: false,
    sheet: (...of) => passListSheet(passList(...of)),
    page: (event) => addressesOf(event).pass,
  },
};

/** The other events worked on in the days of this one, with the facts of all of them. */
export const withBeside = async (
  { server }: FastifyRequest,
  { event, facts }: Pick<OneEvent, 'event' | 'facts'>,
): Promise<{ facts: Facts; beside: Event[] }> => {
  const found = await eventsBeside(server.house.db, event, facts);
  return found ? { facts: found.facts, beside: found.events } : { facts, beside: [] };
};

/** The lines of a sheet as it is now, each with its fingerprint. */
export const linesNow = (sheet: Sheet): LineNow[] =>
  linesOf(sheet).map(({ of, name, text }) => ({
    id: fingerprint(`${of} ${name}`),
    of,
    name,
    fingerprint: fingerprint(text),
  }));

/** A line as it is kept: dishes by name, guests by no more than a hash. */
export const asKept = ({ id, of, name, fingerprint }: LineNow): PrintedLine => ({
  id,
  of,
  dish: of === 'dish' ? name : '',
  fingerprint,
});

const fingerprint = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 32);
