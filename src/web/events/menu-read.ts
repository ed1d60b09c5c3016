import type { Course, Dish, Event } from '../../core/facts/event.js';
import { same } from '../../core/merge.js';
import { normalName } from '../../core/names.js';
import { nearNames } from '../../core/near-names.js';
import { readClock, readMoney } from '../../core/reading.js';
import { readMeasure } from '../../core/reading-measures.js';
import type { Reading } from '../faults.js';
import { type Form, rows, text, texts } from '../form.js';
import type { Format } from '../format.js';
import { keyFrom } from '../keys.js';
import { groupsOf, readEaters } from './menu-eaters.js';
import { dishRow, type Named } from './menu-form.js';
import { readServed, readService } from './menu-served.js';
import { shortWords } from './new-form.js';

type Known = { event: Event; recipes: readonly Named[]; currency: string; f: Format };
type Taken = { courses: Set<string>; dishes: Set<string> };

/** The courses a form says, with what can't be read noted in `reading`. Rows left blank are no dishes and no courses. */
export const readMenu = (reading: Reading, known: Known): Course[] => {
  const { courses } = known.event;
  const taken: Taken = {
    courses: new Set(courses.map(({ key }) => key)),
    dishes: new Set(courses.flatMap(({ dishes }) => dishes.map(({ key }) => key))),
  };
  return rows(reading.form, 'courses').flatMap((row, i) => {
    if (isBlank(row)) return [];
    return [readCourse(reading, row, `courses[${i}]`, known, taken)];
  });
};

const isBlank = (row: Form): boolean =>
  ['key', 'name', 'time'].every((name) => text(row, name).trim() === '') &&
  rows(row, 'dishes').every(isBlankDish);

const isBlankDish = (row: Form): boolean =>
  ['key', 'recipe', 'portion', 'price'].every((name) => text(row, name).trim() === '');

const readCourse = (reading: Reading, row: Form, at: string, known: Known, taken: Taken): Course => {
  const words = reading.words(`${at}.name`, 'Name of the course', 'Name the course, such as Pudding.');
  const name = shortWords(reading, `${at}.name`, 'Name of the course', words);
  const label = name || 'Course';
  const time = reading.take(`${at}.time`, `${label}, time`, readClock, '12:00');
  const dayAfter = reading.ticked(`${at}.dayAfter`);
  const dishes = rows(row, 'dishes').flatMap((dish, j) =>
    isBlankDish(dish) ? [] : (readDish(reading, dish, `${at}.dishes[${j}]`, known, taken) ?? []),
  );
  const key = keyOf(row, name, taken.courses);
  const before = known.event.courses.find((course) => course.key === key);
  return { key, name, time, dayAfter, service: readService(row, before?.service), dishes };
};

/** A row keeps its key; a new one gets the first free one of its name, so that rows two people add do not meet. */
const keyOf = (row: Form, name: string, taken: Set<string>): string => {
  const own = text(row, 'key');
  if (own !== '') return own;
  const key = keyFrom(name, (one) => taken.has(one));
  taken.add(key);
  return key;
};

const readDish = (reading: Reading, row: Form, at: string, known: Known, taken: Taken): Dish | undefined => {
  const before = dishOf(known.event, text(row, 'key'));
  if (before && isAsShown(row, before, groupsOf(reading), known)) return before;
  const name = text(row, 'recipe').trim();
  const recipe = readRecipe(reading, `${at}.recipe`, name, known);
  const label = name || 'Dish';
  const portion = reading.maybe(`${at}.portion`, `${label}, portion`, readPortion);
  const eaters = readEaters(reading, at, label, known.event);
  const served = readServed(reading, row, at, before);
  const price = readPrice(reading, row, at, label, before, known);
  return recipe === undefined
    ? undefined
    : {
        ...served,
        key: keyOf(row, recipe, taken.dishes),
        recipe,
        portion,
        eaters,
        price,
      };
};

/** What a portion is sold at by itself; a row that does not ask leaves it as it stood. */
const readPrice = (
  reading: Reading,
  row: Form,
  at: string,
  label: string,
  before: Dish | undefined,
  { currency }: Known,
): number | null =>
  row.price === undefined
    ? (before?.price ?? null)
    : reading.maybe(`${at}.price`, `${label}, price`, (typed) => readMoney(typed, currency));

const dishOf = ({ courses }: Event, key: string): Dish | undefined =>
  courses.flatMap(({ dishes }) => dishes).find((dish) => dish.key === key);

/** Whether a row still says what it was drawn with, so that the dish stays exactly as it was kept. */
const isAsShown = (row: Form, before: Dish, groups: readonly string[], { recipes, f }: Known): boolean =>
  same(
    { ...row, keptFor: texts(row, 'keptFor') },
    dishRow(before, groups, (key) => recipes.find((one) => one.key === key)?.name ?? '', f),
  );

/** What one portion weighs or measures; a bare number is that many pieces. */
const readPortion = (typed: string) =>
  readMeasure(/^[\d\s./]+$/.test(typed.trim()) ? `${typed.trim()} each` : typed);

const readRecipe = (
  reading: Reading,
  field: string,
  name: string,
  { event, recipes }: Known,
): string | undefined => {
  if (name === '') {
    reading.refuse(field, 'Dish', 'Say which recipe this dish is, or take the dish out.');
    return undefined;
  }
  const wanted = normalName(name);
  const found = recipes.find((one) => normalName(one.name) === wanted);
  if (found) return found.key;
  const names = recipes.filter(({ archived }) => !archived).map((one) => one.name);
  const [near] = nearNames(name, names);
  const guess = near ? ` Did you mean ${near}?` : '';
  const none = event.served ? 'No recipe kept with what was served is called' : 'No recipe is called';
  reading.refuse(field, name.slice(0, 60), `${none} ${name.slice(0, 60)}.${guess}`);
  return undefined;
};
