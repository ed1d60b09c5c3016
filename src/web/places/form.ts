import type { Kitchen } from '../../core/facts/kitchen.js';
import { type Place, place } from '../../core/facts/place.js';
import { isRead, type Read, readClock, readWhole } from '../../core/reading.js';
import { readLitres } from '../../core/reading-litres.js';
import { asWritten } from '../as-written.js';
import type { Reading } from '../faults.js';
import { type Form, text } from '../form.js';
import { withKeys } from '../rows.js';
import { typedAmount } from '../typed.js';
import { heatText, readHeat } from './heat.js';

type Heat = 'C' | 'F';

/** A place as its form shows it. */
export const placeForm = (doc: Place, revision: number, heat: Heat): Form => ({
  revision: String(revision),
  name: doc.name,
  ovens: doc.ovens.map(({ key, name, shelves, coolest, hottest }) => ({
    key,
    name,
    shelves: String(shelves),
    coolest: heatText(coolest, heat),
    hottest: heatText(hottest, heat),
  })),
  pans: doc.pans.map(({ key, name, litres, count }) => ({
    key,
    name,
    litres: typedAmount(litres),
    count: String(count),
  })),
  rings: String(doc.rings),
  mixers: String(doc.mixers),
  fridgeShelves: String(doc.fridgeShelves),
  freezerShelves: String(doc.freezerShelves),
  water: doc.water,
  access: { from: doc.access?.from ?? '', to: doc.access?.to ?? '' },
  drive: doc.drive === null ? '' : String(doc.drive),
  note: doc.note,
  archived: doc.archived ? 'on' : '',
});

/** A place as the form says, with what can't be read noted in `reading`. */
export const readPlace = (reading: Reading, kitchen: Kitchen): ((before: Place) => Place) => {
  const { heat } = kitchen;
  const { form } = reading;
  const count = (name: string, what: string, most: number) =>
    reading.text(name) === ''
      ? 0
      : reading.take(name, what, (typed) => readWhole(typed, what.toLowerCase(), 0, most), 0);
  const read = {
    name: reading.words('name', 'Name', 'Enter what you call this place.'),
    ovens: withKeys(form, 'ovens', 'o').map((row, at) => readOven(reading, row, `ovens[${at}]`, heat)),
    pans: withKeys(form, 'pans', 'p').map((row, at) => readPan(reading, row, `pans[${at}]`, kitchen)),
    rings: count('rings', 'Hob rings', 40),
    mixers: count('mixers', 'Mixers', 20),
    fridgeShelves: count('fridgeShelves', 'Fridge shelves', 200),
    freezerShelves: count('freezerShelves', 'Freezer shelves', 200),
    water: reading.oneOf('water', ['yes', 'no', 'unknown'], 'unknown'),
    access: readAccess(reading),
    drive: reading.maybe('drive', 'Drive, minutes', (typed) => readWhole(typed, 'the drive', 0, 6000)),
    note: reading.text('note'),
    archived: reading.ticked('archived'),
  };
  return (before) => asWritten(before, { ...before, ...read });
};

/** A new place: a venue, since there is one home kitchen from the start. */
export const newPlace = (key: string): Place => place.parse({ key, name: 'New place', kind: 'venue' });

const readAccess = (reading: Reading): Place['access'] => {
  const from = reading.maybe('access.from', 'Access from', readClock);
  const to = reading.maybe('access.to', 'Access until', readClock);
  if (from && to) return { from, to };
  const half = from ? 'access.to' : 'access.from';
  if ((from || to) && reading.text(half) === '')
    reading.refuse(half, 'Access', 'Enter both times, or neither when the hours are not known.');
  return null;
};

const readOven = (reading: Reading, row: Form, at: string, heat: Heat): Place['ovens'][number] => {
  const name = reading.words(
    `${at}.name`,
    'Name of an oven',
    'Enter what you call this oven, such as Oven 1.',
  );
  const about = name || 'Oven';
  return {
    key: text(row, 'key'),
    name,
    shelves: reading.take(
      `${at}.shelves`,
      `${about}, shelves`,
      (typed) => atLeastOne(readWhole(typed, 'the shelves', 1, 40)),
      1,
    ),
    coolest: reading.take(`${at}.coolest`, `${about}, coolest`, (typed) => readHeat(typed, heat, 50), 50),
    hottest: reading.take(`${at}.hottest`, `${about}, hottest`, (typed) => readHeat(typed, heat, 250), 250),
  };
};

const atLeastOne = (read: Read<number>): Read<number> =>
  isRead(read) ? read : { sentence: 'Enter how many shelves it takes at once, such as 3.' };

const readPan = (reading: Reading, row: Form, at: string, kitchen: Kitchen): Place['pans'][number] => {
  const name = reading.words(
    `${at}.name`,
    'Name of a pan',
    'Enter what you call this pan, such as Stockpot.',
  );
  return {
    key: text(row, 'key'),
    name,
    litres: reading.take(
      `${at}.litres`,
      `${name || 'Pan'}, litres`,
      (typed) => readLitres(typed, kitchen),
      '1',
    ),
    count:
      reading.text(`${at}.count`) === ''
        ? 1
        : reading.take(
            `${at}.count`,
            `${name || 'Pan'}, how many`,
            (typed) => readWhole(typed, 'how many of these pans', 1, 100),
            1,
          ),
  };
};
