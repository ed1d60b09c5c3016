import { type HoursAverage, hoursFrom, hoursOf } from '../../core/averages.js';
import { type CostKind, costKinds } from '../../core/facts/cost-line.js';
import type { Rational } from '../../core/quantity/rational.js';
import { partiesInWords } from '../averages/words.js';
import { type Form, rows, text } from '../form.js';
import type { Format } from '../format.js';
import { typedAmount } from '../typed.js';

/** Hours that a line of this name took at the last parties, and what that makes of each of its people here. */
export type WorkedOffer = { words: string; hours: string };

type Known = { lines: readonly HoursAverage[]; guests: number };

/** What the last parties offer for the lines of a form, row by row; it fills nothing by itself. */
export const workedOffers = (form: Form, known: Known, f: Format): (WorkedOffer | undefined)[] =>
  rows(form, 'costs').map((row) => {
    const found = foundFor(row, known);
    if (!found) return undefined;
    const { average, hours, people } = found;
    const parties = partiesInWords(average.parties, f);
    const each = people > 1 ? `${short(hours)} h of each of ${f.number(people)}` : `${short(hours)} h`;
    return {
      words: `${parties.charAt(0).toUpperCase()}${parties.slice(1)}: ${average.perTen.toFixed(1)} hours for ten guests; for ${f.number(known.guests)} that is ${each}.`,
      hours: short(hours),
    };
  });

const foundFor = (row: Form, { lines, guests }: Known) => {
  if (text(row, 'by') !== 'hours' || guests === 0) return undefined;
  const kind: CostKind = costKinds.find((one) => one === text(row, 'kind')) ?? 'other';
  const average = hoursOf(lines, { kind, name: text(row, 'name') });
  if (!average) return undefined;
  const each = whole(row, 'guestsEach');
  const people = Math.max(whole(row, 'people') || 1, each > 0 ? Math.ceil(guests / each) : 0);
  return { average, people, hours: hoursFrom(average, guests, people) };
};

const whole = (row: Form, name: string): number => Number(/^\d{1,6}$/.exec(text(row, name).trim())?.[0] ?? 0);

const short = (hours: Rational): string => typedAmount(hours.toString());

/** Fills in the hours of a line by what was worked before, where `do=worked:2` asks for that; undefined for any other. */
export const workedPressed = (form: Form, known: Known): { form: Form; at: string } | undefined => {
  const [, i] = /^worked:(\d{1,3})$/.exec(text(form, 'do')) ?? [];
  if (i === undefined) return undefined;
  const row = rows(form, 'costs')[Number(i)];
  const found = row && foundFor(row, known);
  if (row && found) Object.assign(row, { worked: 'typed', hours: short(found.hours) });
  return { form, at: `costs[${i}]` };
};
