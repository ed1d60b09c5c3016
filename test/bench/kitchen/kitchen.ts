import type { z } from 'zod';
import { parseWorkbook } from '../../../src/core/exchange/workbook.js';
import type { Workbook, workbook } from '../../../src/core/facts/facts.js';
import { type EventIn, eventAt } from './events.js';
import { ingredientAt } from './ingredients.js';
import { recipeAt } from './recipes.js';
import { withServed } from './served.js';

type Sizes = { recipes: number; ingredients: number; events: number };

export const sizes: Sizes = { recipes: 2000, ingredients: 3000, events: 500 };

/** A kitchen of these sizes, always the same, read as a workbook file is read: shape and rules hold, or this throws. */
export const kitchenOf = ({ recipes, ingredients, events }: Sizes): Workbook => {
  const list = <T>(count: number, one: (i: number) => T): T[] =>
    Array.from({ length: count }, (_, i) => one(i));
  const today = {
    kitchen: { name: 'The bench kitchen', currency: 'GBP', timeZone: 'Europe/London', people: [cook] },
    places: [home, venue('barn', 'The barn', 35), venue('hall', 'The hall', 20)],
    ingredients: list(ingredients, ingredientAt),
    recipes: list(recipes, (i) => recipeAt(i, recipes, ingredients)),
  };
  const all = list(events, (i) => eventAt(i, events, recipes));
  const kept = new Set(lastDone(all));
  const written: z.input<typeof workbook> = {
    format: 'catering-workbook',
    version: 1,
    ...today,
    events: all.map((event) => (kept.has(event) ? withServed(event, today) : event)),
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

/** What was served weighs near a megabyte an event, so only some keep it, the same number in a short book and a long one. */
const mostServed = 10;

const lastDone = (events: readonly EventIn[]): EventIn[] =>
  events
    .filter(({ state }) => state === 'done')
    .sort((a, b) => (a.date < b.date ? 1 : -1))
    .slice(0, mostServed);

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
