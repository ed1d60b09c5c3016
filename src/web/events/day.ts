import type { FastifyRequest } from 'fastify';
import { addDays } from '../../core/calendar.js';
import { type ComingDay, readComingDay } from '../../core/coming-day.js';
import { weekdays } from '../../core/facts/kitchen.js';
import { list } from '../../store/events.js';
import { marksNow, todayOf } from '../coming.js';
import type { Reading } from '../faults.js';
import { type Format, formatFor } from '../format.js';
import { type Html, html, nothing } from '../html.js';
import { pageOf } from '../links.js';
import { mark } from '../marks.js';

/** The day of a party to come; a fault is noted where it is past, no day or another weekday than said. */
export const takeComingDay = (reading: Reading, name: string, today: string, f: Format): string => {
  const day = readComingDay(reading.text(name), today);
  if ('value' in day) return day.value;
  reading.refuse(name, 'Day', sentenceOf(day, f));
  return today;
};

const sentenceOf = (day: Exclude<ComingDay, { value: string }>, f: Format): string => {
  if ('sentence' in day) return day.sentence;
  const guess = day.guesses[0];
  if ('past' in day)
    return `${longOf(day.past, guess, f)} is in the past.${guess ? ` Did you mean ${f.longDate(guess)}?` : ''}`;
  const said = f.weekday(addDays('2024-01-01', weekdays.indexOf(day.said)));
  return `${f.dayMonth(day.date)} is a ${f.weekday(day.date)}, not a ${said}. Which did you mean?`;
};

/** With its year where that isn't the year of the guess. */
const longOf = (past: string, guess: string | undefined, f: Format): string =>
  past.slice(0, 4) === (guess ?? past).slice(0, 4) ? f.longDate(past) : f.dateYear(past);

/** What stands below a day as it is typed: how it was read, days it may mean instead, what is held on it already. */
export const sayDay = async (request: FastifyRequest, typed: string): Promise<Html> => {
  if (typed.trim() === '') return nothing;
  const today = todayOf(request);
  const f = formatFor(request.kitchen);
  const day = readComingDay(typed, today);
  if ('sentence' in day) return nothing;
  const guesses = 'guesses' in day ? day.guesses : [];
  const date = 'value' in day ? day.value : guesses[0];
  const buttons = guesses.map((guess) => {
    const short = guess.slice(0, 4) === today.slice(0, 4) ? f.date(guess) : f.dateYear(guess);
    return html`<button name="do" value="day:${guess}">Use ${short}</button> `;
  });
  const held = date ? await heldOn(request, date, f) : nothing;
  const readAs = 'value' in day && html`Read as <b class="ink">${f.dateYear(day.value)}</b>. `;
  return html`${buttons}<span class="second">${readAs}${held}</span>`;
};

const heldOn = async (request: FastifyRequest, date: string, f: Format): Promise<Html> => {
  const found = await list(request.server.house.db, { from: date, to: date });
  const held = found.filter(({ archived, state }) => !archived && !off.includes(state));
  if (held.length === 0) return nothing;
  const marks = await marksNow(request);
  const named = held.map(
    ({ key, name, guests }, i) =>
      html`${i > 0 && ', '}${mark(marks.get(key))} <a href="${pageOf('event', key)}">${name}</a>, ${f.count(guests, 'guest')}`,
  );
  return html`On ${f.dayMonth(date)} you already hold ${named}.`;
};

const off = ['cancelled', 'postponed'];

const inField = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  timeZone: 'UTC',
});

/** A day as a field holds it, in the words that a day is read in: "Fri 4 Dec 2026". */
export const typedDay = (date: string): string =>
  inField
    .format(new Date(`${date}T12:00:00Z`))
    .replace(',', '')
    .replace('Sept', 'Sep');
