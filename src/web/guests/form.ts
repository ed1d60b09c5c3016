import { isDiet } from '../../core/diets.js';
import type { Event, Guest } from '../../core/facts/event.js';
import { readGuestWords } from '../../core/guest-words.js';
import { readWhole } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text, texts } from '../form.js';
import { rowsChanged, withKeys } from '../rows.js';

/** Who eats what at an event, as its form shows it. */
export const dietsForm = ({ guests, eatsAll }: Event, revision: number): Form => ({
  revision: String(revision),
  eatsAll: String(eatsAll),
  new: '',
  guests: guests.map(guestRow),
});

const guestRow = ({ key, name, count, group, answered, diets, other }: Guest): Form => ({
  key,
  name,
  count: String(count),
  group,
  answered: answered ? 'yes' : 'no',
  diets,
  other,
});

/** The form with the guest in it that was said in one line, "Ana Reed, vegan" or "3 vegetarians". */
export const withSaid = (form: Form, event: Event): Form => {
  const said = text(form, 'new').trim();
  if (said === '') return form;
  const { count, name, diets, other } = readGuestWords(said);
  const wishes = other.split(', ');
  const group = event.groups.find((one) => wishes.some((wish) => isOf(wish, one.name)));
  const row: Form = {
    name,
    count: String(count),
    group: (group ?? event.groups[0]!).key,
    answered: 'yes',
    diets,
    other: wishes.filter((wish) => !group || !isOf(wish, group.name)).join(', '),
  };
  return { ...form, new: '', guests: [...rows(form, 'guests'), row] };
};

/** "Bea, child" and "2 children" are of the group Children. */
const isOf = (wish: string, group: string): boolean =>
  ['', 's', 'ren'].some((ending) => `${wish}${ending}`.toLowerCase() === group.trim().toLowerCase());

/** What a button of the list asks; a guest said in one line is added as that, an empty line as an empty row. */
export const guestsChanged = (form: Form, event: Event): ReturnType<typeof rowsChanged> => {
  if (text(form, 'do') !== 'add:guests' || text(form, 'new').trim() === '') return rowsChanged(form);
  return { form: withSaid(form, event), at: 'new' };
};

/** Who eats what as the form says, with what can't be read noted in `reading`. */
export const readDiets = (reading: Reading, event: Event): Pick<Event, 'guests' | 'eatsAll'> => ({
  guests: withKeys(reading.form, 'guests', 'g').flatMap((row, i) =>
    readGuest(reading, row, `guests[${i}]`, event),
  ),
  eatsAll:
    reading.text('eatsAll') === ''
      ? 0
      : reading.take(
          'eatsAll',
          'Eat everything',
          (typed) => readWhole(typed, 'how many eat everything', 0, 100_000),
          0,
        ),
});

const readGuest = (reading: Reading, row: Form, at: string, { groups, guests }: Event): Guest[] => {
  const before = guests.find(({ key }) => key === text(row, 'key'));
  const said = (name: string) => text(row, name).trim();
  const name = said('name');
  const diets = texts(row, 'diets').filter((id) => isDiet(id));
  const other = said('other');
  const answered = said('answered') !== 'no';
  if (name === '' && diets.length === 0 && other === '' && answered) {
    if (said('count') === '') return [];
    reading.refuse(
      `${at}.name`,
      'Guest',
      'Enter a name or tick a diet. Guests who eat everything are counted below; those not heard from say so here.',
    );
  }
  const count =
    said('count') === ''
      ? 1
      : reading.take(
          `${at}.count`,
          'How many',
          (typed) => readWhole(typed, 'how many guests', 1, 100_000),
          1,
        );
  const group = groups.find(({ key }) => key === said('group')) ?? groups[0]!;
  const { avoids = [], traces = true, table = '' } = before ?? {};
  const who = { key: said('key'), name, count, group: group.key, table };
  return [{ ...who, answered, diets, avoids, traces, other }];
};
