import {
  type AllergenItem,
  allergensOf,
  type Cell,
  isUnread,
  listOf,
  saidBy,
  unwritten,
  ways,
} from '../allergens.js';
import { type Coverage, coverageOf, coverageProblems } from '../coverage.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import { recipeOf } from '../lookup.js';
import type { Answer, Problem } from '../problem.js';
import { noLines, unreadLabel } from '../problems.js';
import { worstFirst } from '../requirements.js';
import { cautions, type Sheet } from './sheet.js';

export type MatrixRow = { course: string; dish: string; recipe: Recipe; cells: Cell[] };

export type AllergenMatrix = {
  event: Event;
  facts: Facts;
  list: string;
  items: AllergenItem[];
  rows: MatrixRow[];
  coverage: Coverage;
  /** How many cells are not known, also in part; what contains it needs no more asking. */
  notKnown: number;
  /** First and last day a label behind this sheet was read; undefined when none was. */
  labels: { first: string; last: string } | undefined;
};

/** Dishes of an event by the entries of the allergen list in force, each cell with what brings it; and who can eat what. */
export const allergenMatrix = (event: Event, today: Facts): Answer<AllergenMatrix> => {
  const facts = factsOf(event, today);
  const list = listOf(facts.kitchen);
  const rows = event.courses.flatMap((course) =>
    course.dishes.map((dish) => {
      const recipe = recipeOf(dish.recipe, facts);
      return { course: course.name, dish: dish.key, recipe, cells: allergensOf(recipe, facts) };
    }),
  );
  const coverage = coverageOf(event, facts);
  const blank = rows.flatMap(({ recipe }) => unwritten(recipe, facts));
  return {
    value: {
      event,
      facts,
      list: list.name,
      items: list.items,
      rows,
      coverage,
      notKnown: rows.reduce((n, row) => n + row.cells.filter(isOpen).length, 0),
      labels: labelDates(rows, facts),
    },
    problems: worstFirst([...coverageProblems(event, coverage), ...blank.map(noLines), ...unreadIn(rows)]),
  };
};

/** Whether a cell is still to be asked about: what contains it needs no more asking. */
export const isOpen = ({ state, unknown }: Pick<Cell, 'state' | 'unknown'>): boolean =>
  unknown && state !== 'contains';

/** The unread labels behind not-known cells: each ingredient once, with all it leaves open and in which dishes. */
export const unreadIn = (rows: readonly Pick<MatrixRow, 'recipe' | 'cells'>[]): Problem[] => {
  const open = new Map<string, { ingredient: Ingredient; dishes: Set<string>; items: Set<string> }>();
  for (const { recipe, cells } of rows)
    for (const cell of cells)
      for (const bringer of cell.brings) {
        const { ingredient, state } = bringer;
        // A may-contain can hide a label that was not read to the end.
        if (!isOpen(bringer) || (state === 'may' && !isUnread(ingredient, cell.item))) continue;
        const entry = open.get(ingredient.key) ?? { ingredient, dishes: new Set(), items: new Set() };
        entry.dishes.add(recipe.name);
        entry.items.add(cell.item.short.toLowerCase());
        open.set(ingredient.key, entry);
      }
  return [...open.values()].map(({ ingredient, dishes, items }) =>
    unreadLabel([...dishes], ingredient, [...items]),
  );
};

/** The first and last day on which a label of what is in the dishes was read. */
export const labelDates = (
  rows: readonly Pick<MatrixRow, 'recipe'>[],
  facts: Facts,
): AllergenMatrix['labels'] => {
  const inDishes = new Set(rows.flatMap(({ recipe }) => ways(recipe, facts)).map((way) => way.ingredient));
  const dates = [...inDishes]
    .flatMap(({ allergens }) => Object.values(allergens))
    .flatMap(({ source, date }) => (source === 'label' && date ? [date] : []))
    .sort();
  return dates.length ? { first: dates[0]!, last: dates.at(-1)! } : undefined;
};

export const stateWords = {
  contains: 'contains',
  may: 'may contain',
  unknown: 'not known: treat as contains',
  free: 'not listed',
} as const;

/** What a cell says in full: its state, and under a may-contain also what is still not known. */
export const cellWords = (cell: Pick<Cell, 'state' | 'unknown'>): string =>
  cell.state === 'may' && cell.unknown
    ? 'may contain; in part not known: treat as contains'
    : stateWords[cell.state];

const verdictWords = {
  yes: 'can eat',
  may: 'may contain what they avoid',
  unknown: 'not known',
  no: 'no',
} as const;

/** The allergen matrix as tables: the states, what brings them in, and who can eat what. */
export const allergenMatrixSheet = ({ value, problems }: Answer<AllergenMatrix>): Sheet => {
  const { event, items, rows, coverage, list } = value;
  return {
    sheet: 'allergens',
    title: `Allergens, ${event.name}`,
    about: { event: event.key, date: event.date, list, notKnown: String(value.notKnown) },
    get tables() {
      return [
        {
          name: 'matrix',
          title: 'Dishes',
          columns: [
            { key: 'course', label: 'Course' },
            { key: 'dish', label: 'Dish' },
            ...items.map((item) => ({ key: item.id, label: item.name })),
          ],
          rows: rows.map(({ course, recipe, cells }) => ({
            course,
            dish: recipe.name,
            ...Object.fromEntries(cells.map((cell) => [cell.item.id, cellWords(cell)])),
          })),
        },
        {
          name: 'sources',
          title: 'What brings them in',
          columns: [
            { key: 'dish', label: 'Dish' },
            { key: 'allergen', label: 'Allergen' },
            { key: 'gs1', label: 'GS1 code' },
            { key: 'state', label: 'State' },
            { key: 'ingredient', label: 'Ingredient' },
            { key: 'through', label: 'Through' },
            { key: 'source', label: 'Source' },
            { key: 'date', label: 'Label read' },
          ],
          rows: rows.flatMap(({ recipe, cells }) => cells.flatMap((cell) => sourceRows(recipe, cell))),
        },
        {
          name: 'coverage',
          title: 'Who can eat what',
          columns: [
            { key: 'guest', label: 'Guest' },
            { key: 'diets', label: 'Diets' },
            { key: 'course', label: 'Course' },
            { key: 'dish', label: 'Dish' },
            { key: 'verdict', label: 'Can eat' },
            { key: 'because', label: 'Because of' },
          ],
          rows: coverage.rows.flatMap(({ who, diets, cells }) =>
            cells.map(({ course, name, verdict, reasons }) => ({
              guest: who,
              diets: diets.join('; '),
              course: event.courses.find((c) => c.key === course)!.name,
              dish: name,
              verdict: verdictWords[verdict],
              because: [...new Set(reasons.map((reason) => reason.ingredient.name))].join('; '),
            })),
          ),
        },
      ];
    },
    problems,
    foot: [cautions.allergens],
  };
};

const sourceRows = (recipe: Recipe, { item, brings }: Cell): Record<string, string>[] =>
  brings.map(({ ingredient, state, unknown, through }) => {
    const said = saidBy(ingredient, item, state);
    return {
      dish: recipe.name,
      allergen: item.name,
      gs1: item.gs1 ?? '',
      state: cellWords({ state, unknown }),
      ingredient: ingredient.name,
      through: through
        .slice(1)
        .map((one) => one.name)
        .join(' → '),
      source: said?.source ?? '',
      date: said?.date ?? '',
    };
  });
