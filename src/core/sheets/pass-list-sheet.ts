import { shortWords } from '../coverage-problems.js';
import type { Event } from '../facts/event.js';
import { handledWords } from '../handled-with.js';
import type { Answer } from '../problem.js';
import type { PassDish, PassGuest, PassList } from './pass-list.js';
import { cautions, type Sheet } from './sheet.js';

/** A dish at the pass in words: "Squash and barley (kept back: second tray)". */
export const dishAtPass = ({ name, kept, portions }: PassDish): string => {
  const said = [kept && `kept back: ${kept}`, portions && `for ${portions} of them`].filter(Boolean);
  return said.length > 0 ? `${name} (${said.join('; ')})` : name;
};

/** What must not go to a guest, or is not known, with the ingredients it turns on: "Leek tart (butter, cream)". */
export const dishWithWhy = ({ name, because }: PassDish): string =>
  because.length > 0 ? `${name} (${because.join(', ')})` : name;

/** What is still to be settled about a guest in one course, in words; nothing where something goes to them. */
export const toSettleAtPass = (one: PassGuest, event: Event): string => {
  const { guest, leftWith, short, open } = one;
  if (!guest.answered) return 'Has not answered: ask before serving.';
  if (leftWith === 'no') return 'Nothing here for them.';
  if (short) return shortWords(short, event);
  if (guest.other) return `Yours to judge: “${guest.other}”.`;
  if (leftWith === 'yes') return '';
  if (leftWith === 'may') return 'Only what may contain it: ask them first.';
  return open.some(({ notApart }) => notApart)
    ? 'Say how their portion is kept apart.'
    : 'Not known: read the labels.';
};

/** The list for the pass as tables: a row for each guest and course, the portions kept back, and what is handled together. */
export const passListSheet = ({ value, problems }: Answer<PassList>): Sheet => {
  const { event, courses } = value;
  return {
    sheet: 'pass',
    title: `For the pass, ${event.name}`,
    about: {
      event: event.key,
      name: event.name,
      date: event.date,
      guests: String(value.guests),
      withDiets: String(value.withDiets),
      notAnswered: String(value.notAnswered),
    },
    tables: [
      {
        name: 'guests',
        title: 'Who gets what',
        columns: [
          { key: 'course', label: 'Course' },
          { key: 'time', label: 'Time' },
          { key: 'atTable', label: 'At table' },
          { key: 'guest', label: 'Guest' },
          { key: 'count', label: 'How many' },
          { key: 'diets', label: 'Diets' },
          { key: 'gets', label: 'Gets' },
          { key: 'may', label: 'May contain what they avoid' },
          { key: 'others', label: 'Leave for others' },
          { key: 'not', label: 'Not' },
          { key: 'open', label: 'Not known' },
          { key: 'settle', label: 'To settle' },
        ],
        rows: courses.flatMap(({ course, tables }) =>
          tables.flatMap(({ table, guests }) =>
            guests.map((one) => ({
              course: course.name,
              time: course.time,
              atTable: table,
              ...rowOf(one, event),
            })),
          ),
        ),
      },
      {
        name: 'kept',
        title: 'Kept back',
        columns: [
          { key: 'course', label: 'Course' },
          { key: 'dish', label: 'Dish' },
          { key: 'portions', label: 'Portions' },
          { key: 'for', label: 'For' },
          { key: 'how', label: 'How' },
        ],
        rows: courses.flatMap(({ course, kept }) =>
          kept.map(({ name, portions, who, how }) => ({
            course: course.name,
            dish: name,
            portions: String(portions),
            for: who.join('; '),
            how,
          })),
        ),
      },
      {
        name: 'handled',
        title: 'Handled with',
        columns: [
          { key: 'dish', label: 'Dish' },
          { key: 'words', label: 'Handled with' },
        ],
        rows: value.handled.flatMap((one) =>
          handledWords(one).map((words) => ({ dish: one.recipe.name, words })),
        ),
      },
    ],
    problems,
    foot: [cautions.allergens, cautions.guests],
  };
};

const rowOf = (one: PassGuest, event: Event): Record<string, string> => ({
  guest: one.who,
  count: String(one.guest.count),
  diets: one.diets.join('; '),
  gets: one.gets.map(dishAtPass).join('; '),
  may: one.may.map((dish) => [dishAtPass(dish), ...dish.because].join(', ')).join('; '),
  others: one.others.map(({ name }) => name).join('; '),
  not: one.not.map(dishWithWhy).join('; '),
  open: one.open.map(dishWithWhy).join('; '),
  settle: toSettleAtPass(one, event),
});
