import type { FastifyRequest } from 'fastify';
import { daysBetween } from '../../core/calendar.js';
import type { PrintedSheet } from '../../core/facts/printed-sheet.js';
import type { Outdated } from '../../core/printed.js';
import { inZone } from '../clock.js';
import { todayOf } from '../coming.js';
import { type Format, formatFor } from '../format.js';

/** "Fri 10:12" in the week behind, "Fri 27 Nov, 10:12" before that, by the kitchen's clock. */
export const whenPrinted = ({ at }: Pick<PrintedSheet, 'at'>, request: FastifyRequest): string => {
  const { date, time } = inZone(new Date(at), request.kitchen.timeZone);
  const f = formatFor(request.kitchen);
  return daysBetween(date, todayOf(request)) < 7 ? `${f.dayName(date)} ${time}` : `${f.date(date)}, ${time}`;
};

const mostNamed = 3;

/** "The allergen sheet printed Fri 10:12 no longer holds: Leek tart changed." */
export const noLonger = (paper: string, when: string, found: Outdated, f: Format): string => {
  const { head, changed, added, gone, guests } = found;
  const are = (names: readonly string[], one: string, many: string) =>
    names.length === 0 ? '' : `${some(names, f)} ${names.length === 1 ? one : many}`;
  const said = [
    are(changed, 'changed', 'changed'),
    are(added, 'is new on it', 'are new on it'),
    are(gone, 'is gone from it', 'are gone from it'),
    guests > 0 ? `${f.count(guests, 'guest')} ${guests === 1 ? 'is' : 'are'} gone from it` : '',
    head ? 'its name, day or numbers changed' : '',
  ].filter(Boolean);
  return `The ${paper} printed ${when} no longer holds: ${said.join('; ')}.`;
};

const some = (names: readonly string[], f: Format): string => {
  const [first, ...more] = [names.slice(0, mostNamed), names.slice(mostNamed)] as const;
  const rest = more.flat().length;
  return f.list(rest > 0 ? [...first, `${f.number(rest)} more`] : first);
};
