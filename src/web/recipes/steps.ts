import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Step } from '../../core/facts/recipe.js';
import { type Read, readMoreThanZero, readWhole } from '../../core/reading.js';
import { readEquipment } from '../../core/reading-equipment.js';
import { readLitres } from '../../core/reading-litres.js';
import { readHeat, readMinutes, readTolerance } from '../../core/reading-measures.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import { keyFrom } from '../keys.js';

const stepFields = [
  'words',
  'minutes',
  'minutesLongest',
  'oven',
  'portionsPerShelf',
  'pan',
  'servedWithin',
  'equipment',
];
const isBlank = (row: Form): boolean => stepFields.every((name) => text(row, name).trim() === '');

/** The steps a form says, with what can't be read noted in `reading`; rows left blank are no steps. */
export const readSteps = (reading: Reading, kitchen: Kitchen): Step[] => {
  const all = keyed(reading.form);
  return all.flatMap((row, at) =>
    isBlank(row) ? [] : [readStep(reading, row, `steps[${at}]`, `Step ${at + 1}`, kitchen)],
  );
};

/** The rows of the method, each with a key by its first words, so that other steps can name it. */
export const keyed = (form: Form): Form[] => {
  const all = rows(form, 'steps');
  for (const row of all) {
    if (text(row, 'key') !== '' || isBlank(row)) continue;
    const taken = all.map((other) => text(other, 'key'));
    const words = text(row, 'words').trim().split(/\s+/).slice(0, 3).join(' ');
    row.key = keyFrom(words || 'step', (key) => taken.includes(key));
  }
  return all;
};

const readStep = (reading: Reading, row: Form, at: string, label: string, kitchen: Kitchen): Step => {
  const minutes = (name: string, what: string) =>
    reading.maybe(`${at}.${name}`, `${label}: ${what}`, (typed) => readMinutes(typed, what));
  const count = (name: string, what: string, most: number) =>
    reading.maybe(`${at}.${name}`, `${label}: ${what}`, (typed) => readWhole(typed, what, 0, most)) ?? 0;
  return {
    key: text(row, 'key'),
    words: reading.words(`${at}.words`, `${label}: words`, 'Say what is done in this step, or take it out.'),
    minutes: minutes('minutes', 'how long it takes'),
    minutesLongest: minutes('minutesLongest', 'how long at most'),
    attended: reading.ticked(`${at}.attended`),
    oven: readOven(reading, at, label, kitchen),
    portionsPerShelf: reading.maybe(
      `${at}.portionsPerShelf`,
      `${label}: portions a shelf`,
      (typed): Read<string> => readMoreThanZero(typed),
    ),
    rings: count('rings', 'hob rings', 20),
    pan: reading.maybe(`${at}.pan`, `${label}: litres in the pan`, (typed) => readLitres(typed, kitchen)),
    mixers: count('mixers', 'mixers', 5),
    fridgeShelves: count('fridgeShelves', 'fridge shelves', 50),
    after: rows(row, 'after').flatMap((_, i) => readAfter(reading, `${at}.after[${i}]`, label)),
    servedWithin: minutes('servedWithin', 'how soon it is served'),
    equipment: reading.maybe(`${at}.equipment`, `${label}: equipment`, readEquipment) ?? [],
    where: reading.oneOf(`${at}.where`, ['home', 'venue', 'either'], 'home'),
    daysAhead: count('daysAhead', 'days ahead', 365),
  };
};

const readOven = (reading: Reading, at: string, label: string, kitchen: Kitchen): Step['oven'] => {
  const heat = reading.maybe(`${at}.oven`, `${label}: oven heat`, (typed) => readHeat(typed, kitchen));
  const tolerance = reading.maybe(`${at}.tolerance`, `${label}: degrees off`, (typed) =>
    readTolerance(typed, kitchen),
  );
  if (reading.text(`${at}.oven`) === '' && tolerance !== null)
    reading.refuse(`${at}.oven`, `${label}: oven heat`, 'Enter the oven’s heat, or leave both empty.');
  return heat === null ? null : { heat, tolerance: tolerance ?? 0 };
};

const readAfter = (reading: Reading, at: string, label: string): Step['after'] => {
  const step = reading.text(`${at}.step`);
  const gap = (name: 'least' | 'most') =>
    reading.maybe(`${at}.${name}`, `${label}: ${name} gap`, (typed) => readMinutes(typed, 'the gap'));
  const [least, most] = [gap('least'), gap('most')];
  if (step !== '') return [{ step, least: least ?? 0, most }];
  if (least !== null || most !== null)
    reading.refuse(`${at}.step`, `${label}: after which step`, 'Choose the step that the gap counts from.');
  return [];
};
