import { startingWith } from '../../core/copy-costs.js';
import type { Event } from '../../core/facts/event.js';
import { event as schema } from '../../core/facts/event.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { beginAt, copyMenu } from '../../core/menu.js';
import { readClock, readWhole } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import type { Format } from '../format.js';
import { takeComingDay } from './day.js';

type Asked = { today: string; f: Format; from: Event | undefined; kitchen: Kitchen };

/**
 * A new event as typed, under a key to come; faults are noted. Its menu, costs and price rule are those of `from`, else
 * one empty course and what the kitchen usually starts with.
 */
export const readNewEvent = (reading: Reading, { today, f, from, kitchen }: Asked): Event => {
  const name = readName(reading);
  const date = takeComingDay(reading, 'date', today, f);
  const groups = readGroups(reading);
  const time =
    from && reading.text('time') === ''
      ? undefined
      : reading.take('time', 'Service time', readClock, '12:00');
  const made = schema.parse({
    key: 'new',
    name: name || 'New event',
    client: readClient(reading),
    date,
    place: reading.text('place') || 'home',
    state: reading.oneOf('state', ['enquiry', 'quoted', 'confirmed'], 'enquiry'),
    groups,
    courses: [],
  });
  const courses = from ? coursesOf(from, made, time) : [{ ...emptyCourse, time: time! }];
  return { ...made, ...startingWith(from, made, kitchen), courses };
};

const emptyCourse = { key: 'menu', name: 'Menu', dayAfter: false, service: 'plated' as const, dishes: [] };

const coursesOf = (from: Event, made: Event, time: string | undefined) => {
  const courses = copyMenu(from, made);
  return time === undefined ? courses : beginAt(courses, time);
};

/** What a party is called. */
export const readName = (reading: Reading): string =>
  shortWords(
    reading,
    'name',
    'What is it?',
    reading.words('name', 'What is it?', 'Say what it is, as you would on the phone: Harvest tea.'),
  );

/** Whom it is for; may stay empty. */
export const readClient = (reading: Reading): string =>
  shortWords(reading, 'client', 'Who for?', reading.text('client'));

/** Words as a name takes them; the ones that are too many are asked about, never cut off. */
export const shortWords = (reading: Reading, field: string, label: string, words: string): string => {
  if (words.length > 120)
    reading.refuse(
      field,
      label,
      `At most 120 letters fit here; these are ${words.length}. The rest can stand in the note.`,
    );
  return words.slice(0, 120);
};

const readGuests = (typed: string) => readWhole(typed, 'the number of guests', 0, 100_000);

/** Adults, and children at half a portion where there are any. */
const readGroups = (reading: Reading) => {
  const adults = reading.take('adults', 'Guests', readGuests, 0);
  const children = reading.maybe('children', 'Children', readGuests) ?? 0;
  const nobody =
    adults + children === 0 &&
    reading.faults.every(({ field }) => field !== 'adults' && field !== 'children');
  if (nobody)
    reading.refuse(
      'adults',
      'Guests',
      'A party has at least one guest. A round figure such as 40 will do for now.',
    );
  const own = { key: 'adults', name: 'Adults', guests: adults };
  return children > 0
    ? [own, { key: 'children', name: 'Children', guests: children, portion: '1/2' }]
    : [own];
};
