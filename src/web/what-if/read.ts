import { Rational } from '../../core/quantity/rational.js';
import { type Read, readPercent, readWhole } from '../../core/reading.js';
import { readMeasure } from '../../core/reading-measures.js';
import type { DishAt, WhatIf } from '../../core/whole-cost/what-if.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, rows, text } from '../form.js';

/** What may be chosen: ingredients with a price, packs they are not priced at, the dishes of the menu. */
export type Offered = { ingredients: Choice[]; packs: Choice[]; dishes: Choice[] };

/** How many may stand beside what is. */
export const columns = 3;

const names = ['guests', 'ingredient', 'percent', 'pack', 'without', 'dish', 'portion'];

/** The form with as many columns as there are, each with every field. */
export const whatIfForm = (sent: Form): Form => ({
  if: Array.from({ length: columns }, (_, i) => {
    const row = rows(sent, 'if')[i] ?? {};
    return Object.fromEntries(names.map((name) => [name, text(row, name).trim()]));
  }),
});

/** What each column asks, undefined for one left empty or with something in it that can't be read. */
export const readWhatIfs = (
  form: Form,
  offered: Offered,
): { changes: (WhatIf | undefined)[]; faults: Fault[] } => {
  const reading = new Reading(form);
  const changes = Array.from({ length: columns }, (_, i) => {
    const before = reading.faults.length;
    const change = readOne(reading, `if[${i}]`, `If ${i + 1}`, offered);
    return reading.faults.length > before || Object.keys(change).length === 0 ? undefined : change;
  });
  return { changes, faults: reading.faults };
};

const readOne = (reading: Reading, at: string, label: string, offered: Offered): WhatIf => {
  const change: WhatIf = {};
  const guests = reading.maybe(`${at}.guests`, `${label}, guests`, readGuests);
  if (guests !== null) change.guests = guests;
  const dearer = readDearer(reading, at, label, offered);
  if (dearer) change.dearer = dearer;
  const pack = chosen(reading, `${at}.pack`, `${label}, another pack`, offered.packs);
  if (pack) change.pack = { ingredient: pack[0]!, pack: pack[1]! };
  const without = chosen(reading, `${at}.without`, `${label}, left out`, offered.dishes);
  if (without) change.without = dishAt(without);
  const portion = readPortion(reading, at, label, offered);
  if (portion) change.portion = portion;
  return change;
};

const readGuests = (typed: string): Read<number> => readWhole(typed, 'the number of guests', 1, 100_000);

/** One of the choices offered, in its parts; undefined where none is chosen. */
const chosen = (
  reading: Reading,
  name: string,
  label: string,
  choices: readonly Choice[],
): string[] | undefined => {
  const value = reading.text(name);
  if (value === '') return undefined;
  if (choices.some((choice) => choice.value === value)) return value.split('/');
  reading.refuse(name, label, 'That is not there any more. Choose one of those offered.');
  return undefined;
};

const dishAt = ([course, dish]: string[]): DishAt => ({ course: course!, dish: dish! });

const readDearer = (reading: Reading, at: string, label: string, { ingredients }: Offered) => {
  const found = chosen(reading, `${at}.ingredient`, `${label}, whose price`, ingredients);
  const percent = reading.maybe(`${at}.percent`, `${label}, per cent`, readChange);
  if (found && reading.text(`${at}.percent`) === '')
    reading.refuse(
      `${at}.percent`,
      `${label}, per cent`,
      'Enter how much dearer in per cent, such as 8, or −5 for less.',
    );
  if (reading.text(`${at}.ingredient`) === '' && percent !== null)
    reading.refuse(`${at}.ingredient`, `${label}, whose price`, 'Choose the ingredient whose price changes.');
  return found && percent !== null ? { ingredient: found[0]!, percent } : undefined;
};

/** "8", "8 %", "+8", "−5"; no price falls below nothing. */
const readChange = (typed: string): Read<Rational> => {
  const less = /^\s*[-−–]/.test(typed);
  const read = readPercent(typed.replace(/^\s*[-−–+]/, ''), 'how much dearer', less ? 100 : 1000);
  if (!('value' in read)) return read;
  const percent = Rational.parse(read.value);
  return { value: less ? percent.negated() : percent };
};

const readPortion = (reading: Reading, at: string, label: string, { dishes }: Offered) => {
  const dish = chosen(reading, `${at}.dish`, `${label}, dish`, dishes);
  const portion = reading.maybe(`${at}.portion`, `${label}, portion`, readMeasure);
  if (dish && reading.text(`${at}.portion`) === '')
    reading.refuse(`${at}.portion`, `${label}, portion`, 'Enter what a portion is then, such as 150 g.');
  if (reading.text(`${at}.dish`) === '' && portion !== null)
    reading.refuse(`${at}.dish`, `${label}, dish`, 'Choose the dish whose portion changes.');
  return dish && portion !== null ? { ...dishAt(dish), portion } : undefined;
};
