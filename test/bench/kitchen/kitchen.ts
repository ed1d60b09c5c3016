import type { z } from 'zod';
import { parseWorkbook } from '../../../src/core/exchange/workbook.js';
import type { Workbook, workbook } from '../../../src/core/facts/facts.js';
import { today } from './days.js';
import { type EventIn, eventAt } from './events.js';
import { ingredientAt } from './ingredients.js';
import { recipeAt } from './recipes.js';

type Sizes = { recipes: number; ingredients: number; events: number };

export const sizes: Sizes = { recipes: 2000, ingredients: 3000, events: 500 };

/** A kitchen of these sizes, always the same, read as a workbook file is read: shape and rules hold, or this throws. */
export const kitchenOf = ({ recipes, ingredients, events }: Sizes): Workbook => {
  const list = <T>(count: number, one: (i: number) => T): T[] =>
    Array.from({ length: count }, (_, i) => one(i));
  const written: z.input<typeof workbook> = {
    format: 'catering-workbook',
    version: 1,
    kitchen: { name: 'The bench kitchen', currency: 'GBP', timeZone: 'Europe/London', people: [cook] },
    places: [home, venue('barn', 'The barn', 35), venue('hall', 'The hall', 20)],
    ingredients: list(ingredients, ingredientAt),
    recipes: list(recipes, (i) => recipeAt(i, recipes, ingredients)),
    events: withDone(list(events, (i) => eventAt(i, events, recipes))),
  };
  const read = parseWorkbook(JSON.stringify(written));
  if ('faults' in read)
    throw new Error(
      read.faults
        .slice(0, 5)
        .map(({ place, sentence }) => `${place}: ${sentence}`)
        .join('\n'),
    );
  return read.workbook;
};

/** What was served is kept whole and weighs more than half a megabyte an event, so only the latest are marked done. */
const done = 10;

const withDone = (events: EventIn[]): EventIn[] => {
  const over = events.filter(({ date, state }) => date < today && state === 'confirmed');
  const latest = new Set(over.toSorted((a, b) => (a.date < b.date ? 1 : -1)).slice(0, done));
  return events.map((event) => (latest.has(event) ? { ...event, state: 'done' } : event));
};

const hours = [{ from: '08:00', to: '17:00' }];
const cook = {
  key: 'cook',
  name: 'The cook',
  hours: { mon: hours, tue: hours, wed: hours, thu: hours, fri: hours },
};

const oven = (key: string) => ({ key, name: `Oven ${key}`, shelves: 4 });
const home = {
  key: 'home',
  name: 'Home',
  kind: 'home' as const,
  ovens: [oven('one'), oven('two')],
  rings: 6,
  mixers: 1,
  fridgeShelves: 8,
  freezerShelves: 4,
};
const venue = (key: string, name: string, drive: number) => ({
  key,
  name,
  kind: 'venue' as const,
  ovens: [oven(`${key}-oven`)],
  rings: 4,
  water: 'yes' as const,
  drive,
});
