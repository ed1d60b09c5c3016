import type { FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import type { PrintedSheet, PrintedSheetName } from '../../core/facts/printed-sheet.js';
import { outdatedBy } from '../../core/printed.js';
import type { Sheet } from '../../core/sheets/sheet.js';
import { eventFacts } from '../../store/facts.js';
import { printedLabels } from '../../store/printed-labels.js';
import { prints } from '../../store/printed-sheets.js';
import { todayOf } from '../coming.js';
import type { OneEvent } from '../events/event.js';
import { formatFor } from '../format.js';
import { query } from '../house.js';
import { outdatedLabels } from './label.js';
import { linesNow, papers, withBeside } from './papers.js';
import { noLonger, whenPrinted } from './words.js';

/** A printed paper that no longer holds: whose, what of it changed in a sentence, and where it is printed again. */
export type OutdatedPaper = { event: Event; sentence: string; href: string };

/** What the button beside such a paper says; it leads to the page that prints it. */
export const printAgain = 'Look, and print it again';

/** What a sheet's own page says of its last print. */
export type PrintState = {
  sheet: PrintedSheetName;
  /** That the paper no longer holds; empty where it does or none was printed. */
  outdated: string;
  /** "Printed Fri 10:12 by Rosa; it still holds." */
  holds: string;
  /** true where the print dialog is to open. */
  now: boolean;
};

/** The printed papers of events still to come that no longer hold, and the labels of what they are served. */
export const outdatedPapers = async (
  request: FastifyRequest,
  events: readonly Event[],
): Promise<OutdatedPaper[]> => {
  const today = todayOf(request);
  const open = events.filter(({ state, date }) => state !== 'done' && state !== 'cancelled' && date >= today);
  const { db } = request.server.house;
  const keys = open.map(({ key }) => key);
  const [found, labels] = await Promise.all([prints(db, keys), printedLabels(db)]);
  const outdated: OutdatedPaper[] = [];
  for (const event of open) {
    const own = found.filter((print) => print.event === event.key);
    if (own.length === 0) continue;
    const { facts } = (await eventFacts(db, [event.key]))!;
    const here = await withBeside(request, { event, facts });
    for (const print of own) {
      const paper = papers[print.sheet];
      const sentence = against(request, print, paper.sheet(event, here.facts, here.beside));
      if (sentence) outdated.push({ event, sentence, href: paper.page(event.key) });
    }
  }
  return [...outdated, ...(await outdatedLabels(request, open, labels))];
};

const against = (request: FastifyRequest, print: PrintedSheet, sheet: Sheet): string => {
  const { name, part } = papers[print.sheet];
  const found = outdatedBy(print, linesNow(sheet), part);
  return found ? noLonger(name, whenPrinted(print, request), found, formatFor(request.kitchen)) : '';
};

/** What the page of a sheet says of its last print; nothing to be said of a party that is over. */
export const printState = async (
  request: FastifyRequest,
  { event }: Pick<OneEvent, 'event'>,
  name: PrintedSheetName,
  sheet: Sheet,
): Promise<PrintState> => {
  const all = await prints(request.server.house.db, [event.key]);
  const print = all.find((one) => one.sheet === name);
  const now = query(request, 'printing') !== '';
  const outdated = print && event.state !== 'done' ? against(request, print, sheet) : '';
  const holds =
    print && outdated === '' ? `Printed ${whenPrinted(print, request)} by ${print.who}; it still holds.` : '';
  return { sheet: name, outdated, holds, now };
};
