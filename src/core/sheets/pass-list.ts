import {
  type Coverage,
  type CoverageCell,
  type CoverageRow,
  coverageOf,
  coverageProblems,
} from '../coverage.js';
import { notListed } from '../covered.js';
import type { Verdict } from '../diets.js';
import type { Course, Dish, Event, Guest } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import { type Handled, handledWith } from '../handled-with.js';
import { isKeptFor, needsApart } from '../kept-apart.js';
import { recipeOf } from '../lookup.js';
import { isChoosy, type Short } from '../portions.js';
import type { Answer } from '../problem.js';
import { headCount, worstFirst } from '../requirements.js';
import { labelDates, unreadIn } from './allergen-matrix.js';

/** A dish on its way to a guest: how their portion is kept back for them, and what stands against it. */
export type PassDish = {
  name: string;
  /** Empty where it is not kept back. */
  kept: string;
  /** How many of the guests get it, where only some of them do. */
  portions: number | undefined;
  /** The ingredients it turns on. */
  because: string[];
};

/** A guest in one course: what goes to them, what only with a caution, what must not, and what is not known. */
export type PassGuest = {
  guest: Guest;
  who: string;
  diets: string[];
  gets: PassDish[];
  may: PassDish[];
  /** What they could eat, of which there is not enough for all who could: its portions are dealt out to others. */
  others: PassDish[];
  not: PassDish[];
  /** Not known, or not kept apart where guests serve themselves. */
  open: (PassDish & { notApart: boolean })[];
  /** What they are left with by their diets, portions counted. */
  leftWith: Verdict;
  /** Portions of what they can eat that do not reach for all who need them. */
  short: Short | undefined;
};

/** Portions of a dish kept back, for whom and how. */
export type KeptBack = { name: string; portions: number; who: string[]; how: string };
export type PassTable = { table: string; guests: PassGuest[] };
export type PassCourse = { course: Course; tables: PassTable[]; kept: KeptBack[] };

export type PassList = {
  event: Event;
  facts: Facts;
  courses: PassCourse[];
  guests: number;
  /** Guests who have a diet, heads; those who have not answered are not among them. */
  withDiets: number;
  notAnswered: number;
  /** Those of them that are listed nowhere by name or number. */
  notListed: number;
  cautions: { who: string; words: string }[];
  handled: Handled[];
  labels: { first: string; last: string } | undefined;
};

/**
 * Who gets what at the pass: course by course and table by table every guest with a diet, and those who have not
 * answered, with the dishes that may go to them, those that must not, and the portions kept back. Where there is not
 * enough of a dish for all who could eat it, it is dealt out: the others leave it. Guests of no table come last. A guest who eats everything is not on it.
 */
export const passList = (event: Event, today: Facts, beside: readonly Event[] = []): Answer<PassList> => {
  const facts = factsOf(event, today);
  const coverage = coverageOf(event, facts);
  const rows = coverage.rows.filter(({ guest }) => guest && (!guest.answered || isChoosy(guest)));
  const dishes = event.courses.flatMap((course) => course.dishes);
  const cooked = dishes.map((dish) => recipeOf(dish.recipe, facts));
  return {
    value: {
      event,
      facts,
      courses: event.courses
        .filter((course) => course.dishes.length > 0)
        .map((course) => inCourse(course, { ...coverage, rows }, event, facts)),
      guests: headCount(event),
      withDiets: rows.reduce((n, { guest, count }) => (guest!.answered ? n + count : n), 0),
      notAnswered: coverage.notAnswered,
      notListed: notListed(coverage),
      cautions: rows.flatMap(({ who, cautions }) => cautions.map((words) => ({ who, words }))),
      handled: handledWith(event, beside, today).filter(({ shared }) => shared.length > 0),
      labels: labelDates(cooked, facts),
    },
    problems: worstFirst([...coverageProblems(event, coverage), ...unreadIn(cooked, facts)]),
  };
};

const inCourse = (course: Course, coverage: Coverage, event: Event, facts: Facts): PassCourse => {
  const { rows } = coverage;
  const tables = new Map<string, PassGuest[]>();
  for (const row of rows) {
    const { table } = row.guest!;
    tables.set(table, [...(tables.get(table) ?? []), atPass(row, course, coverage, facts)]);
  }
  const inOrder = new Intl.Collator(facts.kitchen.locale, { numeric: true });
  return {
    course,
    tables: [...tables]
      .map(([table, guests]) => ({ table, guests }))
      .sort((a, b) => Number(a.table === '') - Number(b.table === '') || inOrder.compare(a.table, b.table)),
    kept: course.dishes.flatMap((dish) => keptBack(dish, course, event, rows, facts)),
  };
};

const atPass = (
  { guest, who, count, diets, cells, courses }: CoverageRow,
  course: Course,
  { short, dealt }: Coverage,
  facts: Facts,
): PassGuest => {
  const dishes = new Map(course.dishes.map((dish) => [dish.key, dish]));
  const own = cells.filter((cell) => cell.course === course.key);
  const cover = courses.find((one) => one.course === course.key)!;
  const as = (wanted: CoverageCell['verdict']) =>
    own
      .filter(({ verdict }) => verdict === wanted)
      .map((cell) => {
        const dish = dishes.get(cell.dish)!;
        return { ...passDish(cell, dish, guest!, facts), notApart: !cell.counts, dealt: theirs?.get(dish) };
      });
  const theirs = dealt.get(course)?.get(guest!);
  const [gets, may] = [as('yes').sort(keptFirst), as('may').sort(keptFirst)];
  const some = (all: typeof gets): PassDish[] =>
    all.flatMap(({ dealt: portions, ...dish }) => {
      if (portions === 0) return [];
      return [{ ...dish, portions: portions === count ? undefined : portions }];
    });
  return {
    guest: guest!,
    who,
    diets,
    gets: some(gets),
    may: some(may),
    others: [...gets, ...may].filter((dish) => dish.dealt === 0),
    not: as('no'),
    open: as('unknown'),
    leftWith: cover.byDiets,
    short: short.find((one) => one.course === course && one.who.includes(guest!)),
  };
};

const keptFirst = (a: PassDish, b: PassDish): number => Number(a.kept === '') - Number(b.kept === '');

const passDish = (cell: CoverageCell, dish: Dish, guest: Guest, facts: Facts): PassDish => ({
  name: cell.name,
  kept: isKeptFor(guest, dish, facts) ? howKept(dish, guest) : '',
  portions: undefined,
  because: [
    ...new Set(
      cell.reasons.filter(({ verdict }) => verdict === cell.verdict).map(({ ingredient }) => ingredient.name),
    ),
  ],
});

const howKept = ({ keptApart, keptFor }: Dish, { key }: Guest): string =>
  keptApart || (keptFor.includes(key) ? 'by name' : '');

const keptBack = (
  dish: Dish,
  { key }: Course,
  event: Event,
  rows: Coverage['rows'],
  facts: Facts,
): KeptBack[] => {
  const byName = event.guests.filter((guest) => dish.keptFor.includes(guest.key));
  const apart = dish.keptApart === '' ? [] : rows.filter((row) => canHave(row, dish, key, facts));
  const whole = [...new Set([...byName, ...apart.map(({ guest }) => guest!)])];
  if (whole.length === 0) return [];
  const named = new Map(rows.map(({ guest, who }) => [guest, who]));
  return [
    {
      name: recipeOf(dish.recipe, facts).name,
      portions: whole.reduce((n, { count }) => n + count, 0),
      who: whole.map((guest) => named.get(guest) ?? guest.name),
      how: dish.keptApart || 'by name',
    },
  ];
};

const canHave = ({ guest, cells }: CoverageRow, dish: Dish, course: string, facts: Facts): boolean =>
  needsApart(guest!, facts) &&
  cells.some(
    (cell) => cell.course === course && cell.dish === dish.key && ['yes', 'may'].includes(cell.verdict),
  );
