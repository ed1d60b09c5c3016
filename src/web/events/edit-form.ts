import { addDays } from '../../core/calendar.js';
import { type Event, type Group, states } from '../../core/facts/event.js';
import { isRead, readDay, readMoreThanZero, readPercent, readWhole } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { keyFrom } from '../keys.js';
import { typedAmount } from '../typed.js';
import { typedDay } from './day.js';
import { readClient, readName, shortWords } from './new-form.js';

/** The details of an event as its form shows them. */
export const detailsForm = (event: Event, revision: number): Form => ({
  revision: String(revision),
  name: event.name,
  client: event.client,
  date: typedDay(event.date),
  place: event.place,
  state: event.state,
  groups: event.groups.map(({ key, name, guests, portion }) => ({
    key,
    name,
    guests: String(guests),
    portion: typedAmount(portion),
  })),
  overCatering: event.overCatering === '0' ? '' : event.overCatering,
  note: event.note,
});

/** A day of an event that stands, past or to come: without a year the one nearest to where it stands. */
export const readAnyDay = (typed: string, { date }: Event) => readDay(typed, addDays(date, -183));

/** What a form of details makes of an event; faults are noted. */
export const readDetails = (reading: Reading, event: Event): ((doc: Event) => Event) => {
  const name = readName(reading);
  const client = readClient(reading);
  const date = reading.take('date', 'Day', (typed) => readAnyDay(typed, event), event.date);
  const groups = readGroups(reading, event);
  const overCatering =
    reading.maybe('overCatering', 'Over-catering', (typed) => readPercent(typed, 'over-catering', 100)) ??
    '0';
  const note = reading.text('note');
  if (note.length > 4000) reading.refuse('note', 'Note', 'A note has at most 4000 letters.');
  const place = reading.text('place') || event.place;
  const state = reading.oneOf('state', states, event.state);
  return (doc) => ({
    ...doc,
    ...{ name, client, date, place, state, groups, overCatering, note },
    price: priceOf(doc, groups),
  });
};

/** The price of a group goes with it, or another that is given its name would pay it unasked. */
const priceOf = ({ price }: Event, groups: readonly Group[]): Event['price'] => {
  const there = new Set(groups.map(({ key }) => key));
  return { ...price, groups: price.groups.filter(({ group }) => there.has(group)) };
};

const readGroups = (reading: Reading, event: Event): Group[] => {
  const groups: Group[] = [];
  const taken = new Set(event.groups.map(({ key }) => key));
  for (const [i, row] of rows(reading.form, 'groups').entries()) {
    const known = event.groups.find(({ key }) => key === text(row, 'key'));
    if (!known && text(row, 'name').trim() === '' && text(row, 'guests').trim() === '') continue;
    const group = readGroup(reading, `groups[${i}]`, known);
    const key = known?.key ?? keyFrom(group.name, (one) => taken.has(one));
    taken.add(key);
    groups.push({ ...group, key });
  }
  keepsWhatStands(reading, event, groups);
  return groups;
};

const readGroup = (reading: Reading, at: string, known: Group | undefined): Omit<Group, 'key'> => {
  const who = reading.words(`${at}.name`, 'Name of the group', 'Say who they are: Adults, Children, Crew.');
  const name = shortWords(reading, `${at}.name`, 'Name of the group', who);
  const label = name || 'Group';
  const guests = reading.take(
    `${at}.guests`,
    `${label}, guests`,
    (typed) => readWhole(typed, 'the number of guests', 0, 100_000),
    known?.guests ?? 0,
  );
  // What still says what it was drawn with stays exactly as it was kept.
  const asShown = known && reading.text(`${at}.portion`) === typedAmount(known.portion);
  const portion = asShown
    ? known.portion
    : (reading.maybe(`${at}.portion`, `${label}, portion`, readMoreThanZero) ?? '1');
  return { name, guests, portion };
};

/** A group with guests in it, or that a dish is set for, is not taken out under them. */
const keepsWhatStands = (reading: Reading, event: Event, groups: readonly Group[]) => {
  if (groups.length === 0)
    reading.refuse('groups', 'Guests', 'A party has at least one group of guests: add one.');
  const there = new Set(groups.map(({ key }) => key));
  for (const { key, name } of event.groups) {
    if (there.has(key)) continue;
    const guests = event.guests.filter(({ group }) => group === key).length;
    if (guests > 0)
      reading.refuse(
        'groups',
        'Guests',
        `Guests with diets stand among ${name}: move them to another group under Diets first. Leave without saving to bring ${name} back.`,
      );
    if (isNamed(event, key))
      reading.refuse(
        'groups',
        'Guests',
        `A dish is set for ${name}: change who eats it under Change menu first. Leave without saving to bring ${name} back.`,
      );
  }
};

const isNamed = ({ courses }: Event, group: string): boolean =>
  courses.some(({ dishes }) =>
    dishes.some(({ eaters }) => {
      const named = 'shares' in eaters ? eaters.shares : 'counts' in eaters ? eaters.counts : [];
      return named.some((one) => one.group === group);
    }),
  );

/** How a day is read, where that isn't how it was typed. */
export const readAsDay = (typed: string, event: Event): string => {
  const read = readAnyDay(typed, event);
  return isRead(read) && typedDay(read.value) !== typed.trim() ? read.value : '';
};
