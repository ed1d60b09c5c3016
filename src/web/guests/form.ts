import { readAvoids } from '../../core/avoid-words.js';
import { dietsOf, isDiet } from '../../core/diets.js';
import type { Event, Guest } from '../../core/facts/event.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import { readGuestWords } from '../../core/guest-words.js';
import { isRead, readWhole } from '../../core/reading.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text, texts } from '../form.js';
import { nextKey } from '../keys.js';
import { rowsChanged } from '../rows.js';

/** What guests may have and avoid: the kitchen's diets and its ingredients by name. */
export type Ground = {
  event: Event;
  kitchen: Kitchen;
  ingredients: readonly { key: string; name: string }[];
};

/** Who eats what at an event, as its form shows it. */
export const dietsForm = (ground: Ground, revision: number): Form => ({
  revision: String(revision),
  eatsAll: String(ground.event.eatsAll),
  new: '',
  guests: ground.event.guests.map((guest) => guestRow(guest, ground)),
});

const guestRow = (guest: Guest, { ingredients }: Ground): Form => ({
  key: guest.key,
  name: guest.name,
  count: String(guest.count),
  group: guest.group,
  answered: guest.answered ? 'yes' : 'no',
  diets: guest.diets,
  avoids: guest.avoids.map((key) => ingredients.find((one) => one.key === key)?.name ?? key).join('; '),
  traces: guest.traces ? 'yes' : 'no',
  table: guest.table,
  other: guest.other,
});

/** The form with the guest in it that was said in one line, "Ana Reed, vegan" or "3 vegetarians, no olives". */
export const withSaid = (form: Form, { event, kitchen, ingredients }: Ground): Form => {
  const said = text(form, 'new').trim();
  if (said === '') return form;
  const { count, name, diets, other } = readGuestWords(said, dietsOf(kitchen));
  const wishes = other.split(', ');
  const group = event.groups.find((one) => wishes.some((wish) => isOf(wish, one.name)));
  const left = wishes.filter((wish) => wish !== '' && !(group && isOf(wish, group.name)));
  const disliked = left.filter((wish) => dislikes(wish, ingredients) !== '');
  const row: Form = {
    name,
    count: String(count),
    group: (group ?? event.groups[0]!).key,
    answered: 'yes',
    diets,
    avoids: disliked.map((wish) => dislikes(wish, ingredients)).join('; '),
    traces: 'yes',
    table: '',
    other: left.filter((wish) => !disliked.includes(wish)).join(', '),
  };
  return { ...form, new: '', guests: [...rows(form, 'guests'), row] };
};

/** "no olives" and "hates onions", where there are such ingredients; nothing for any other wish. */
const dislikes = (wish: string, ingredients: Ground['ingredients']): string => {
  const [, what = ''] = /^(?:no|without|hates|dislikes|avoids|not) (.+)$/i.exec(wish) ?? [];
  const found = readAvoids(what, ingredients);
  return what !== '' && isRead(found) ? what : '';
};

/** "Bea, child" and "2 children" are of the group Children. */
const isOf = (wish: string, group: string): boolean =>
  ['', 's', 'ren'].some((ending) => `${wish}${ending}`.toLowerCase() === group.trim().toLowerCase());

/** What a button of the list asks; a guest said in one line is added as that, an empty line as an empty row. */
export const guestsChanged = (form: Form, ground: Ground): ReturnType<typeof rowsChanged> => {
  if (text(form, 'do') !== 'add:guests' || text(form, 'new').trim() === '') return rowsChanged(form);
  return { form: withSaid(form, ground), at: 'new' };
};

/** Who eats what as the form says, with what can't be read noted in `reading`. */
export const readDiets = (reading: Reading, ground: Ground): Pick<Event, 'guests' | 'eatsAll'> => ({
  guests: keyed(reading.form, ground.event).flatMap((row, i) =>
    readGuest(reading, row, `guests[${i}]`, ground),
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

/** A new row gets a key that no guest of the event had: a portion kept for one who is gone is nobody else's. */
const keyed = (form: Form, { guests }: Event): Form[] => {
  const all = rows(form, 'guests');
  const taken = [...guests.map(({ key }) => key), ...all.map((row) => text(row, 'key')).filter(Boolean)];
  for (const row of all) {
    if (text(row, 'key') !== '') continue;
    row.key = nextKey('g', taken);
    taken.push(row.key);
  }
  return all;
};

const readGuest = (reading: Reading, row: Form, at: string, ground: Ground): Guest[] => {
  const { event, kitchen, ingredients } = ground;
  const before = event.guests.find(({ key }) => key === text(row, 'key'));
  const said = (name: string) => text(row, name).trim();
  const name = said('name');
  const diets = texts(row, 'diets').filter((id) => isDiet(id, kitchen));
  if (diets.length < texts(row, 'diets').length)
    reading.refuse(
      `${at}.diets`,
      `${name || 'Guest'}, diets`,
      'A diet ticked here is not kept in the kitchen any more. Tick what they do not eat, or write it in their own words.',
    );
  const other = said('other');
  const answered = said('answered') !== 'no';
  if (name === '' && diets.length === 0 && other === '' && said('avoids') === '' && answered) {
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
  const group = event.groups.find(({ key }) => key === said('group')) ?? event.groups[0]!;
  const { avoids: kept = [], traces: minded = true, table: seat = '' } = before ?? {};
  const avoids =
    row.avoids === undefined
      ? kept
      : reading.take(
          `${at}.avoids`,
          `${name || 'Guest'}, does not eat`,
          (typed) => readAvoids(typed, ingredients),
          [],
        );
  const traces = row.traces === undefined ? minded : said('traces') !== 'no';
  const table = row.table === undefined ? seat : said('table').slice(0, 60);
  const who = { key: said('key'), name, count, group: group.key, table };
  return [{ ...who, answered, diets, avoids, traces, other }];
};

/** An event whose dishes keep portions only for guests who are listed. */
export const keptForListed = (event: Event): Event => {
  const listed = new Set(event.guests.map(({ key }) => key));
  const courses = event.courses.map((course) => ({
    ...course,
    dishes: course.dishes.map((dish) => ({
      ...dish,
      keptFor: dish.keptFor.filter((key) => listed.has(key)),
    })),
  }));
  return { ...event, courses };
};
