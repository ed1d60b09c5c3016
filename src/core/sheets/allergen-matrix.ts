import {
  type AllergenItem,
  allergensOf,
  type Cell,
  isUnread,
  listOf,
  notFree,
  unwritten,
  ways,
} from '../allergens.js';
import { type Coverage, coverageOf, coverageProblems } from '../coverage.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import type { Ingredient } from '../facts/ingredient.js';
import type { Recipe } from '../facts/recipe.js';
import { type Handled, handledWith } from '../handled-with.js';
import { recipeOf } from '../lookup.js';
import type { Answer, Problem } from '../problem.js';
import { noLines, unreadLabel } from '../problems.js';
import { worstFirst } from '../requirements.js';
import { byWordOf } from './free-ground.js';

export type MatrixRow = {
  course: string;
  dish: string;
  recipe: Recipe;
  cells: Cell[];
  /** The entries that it is free of not by labels alone: for some of it only the cook or a reference says so. */
  byWord: ReadonlySet<string>;
};

export type AllergenMatrix = {
  event: Event;
  facts: Facts;
  list: string;
  items: AllergenItem[];
  rows: MatrixRow[];
  coverage: Coverage;
  /** The dishes that share equipment with others, and what those contain: no state of theirs. */
  handled: Handled[];
  /** How many cells are not known, also in part; what contains it needs no more asking. */
  notKnown: number;
  /** First and last day a label behind this sheet was read; undefined when none was. */
  labels: { first: string; last: string } | undefined;
};

/**
 * Dishes of an event by the entries of the allergen list in force, each cell with what brings it; who can eat what; and
 * apart from both what a dish is handled with, in this event and in those `beside` it.
 */
export const allergenMatrix = (
  event: Event,
  today: Facts,
  beside: readonly Event[] = [],
): Answer<AllergenMatrix> => {
  const facts = factsOf(event, today);
  const list = listOf(facts.kitchen);
  const rows = event.courses.flatMap((course) =>
    course.dishes.map((dish) => {
      const recipe = recipeOf(dish.recipe, facts);
      const cells = allergensOf(recipe, facts);
      return { course: course.name, dish: dish.key, recipe, cells, byWord: byWordOf(recipe, facts) };
    }),
  );
  const coverage = coverageOf(event, facts);
  const recipes = rows.map(({ recipe }) => recipe);
  const blank = recipes.flatMap((recipe) => unwritten(recipe, facts));
  return {
    value: {
      event,
      facts,
      list: list.name,
      items: list.items,
      rows,
      coverage,
      handled: handledWith(event, beside, today).filter(({ shared }) => shared.length > 0),
      notKnown: rows.reduce((n, row) => n + row.cells.filter(isOpen).length, 0),
      labels: labelDates(recipes, facts),
    },
    problems: worstFirst([
      ...coverageProblems(event, coverage),
      ...blank.map(noLines),
      ...unreadIn(recipes, facts),
    ]),
  };
};

/** Whether a cell is still to be asked about: what contains it needs no more asking. */
export const isOpen = ({ state, unknown }: Pick<Cell, 'state' | 'unknown'>): boolean =>
  unknown && state !== 'contains';

/** The unread labels in dishes: each ingredient once, with all it leaves open and in which dishes. */
export const unreadIn = (recipes: readonly Recipe[], facts: Facts): Problem[] => {
  const list = listOf(facts.kitchen);
  const open = new Map<string, { ingredient: Ingredient; dishes: Set<string>; items: Set<string> }>();
  for (const recipe of recipes)
    for (const { ingredient } of ways(recipe, facts))
      for (const entry of notFree(ingredient, list)) {
        // A may-contain can hide a label that was not read to the end.
        if (!isOpen(entry) || (entry.state === 'may' && !isUnread(ingredient, entry.item))) continue;
        const found = open.get(ingredient.key) ?? { ingredient, dishes: new Set(), items: new Set() };
        found.dishes.add(recipe.name);
        found.items.add(entry.item.short.toLowerCase());
        open.set(ingredient.key, found);
      }
  return [...open.values()].map(({ ingredient, dishes, items }) =>
    unreadLabel([...dishes], ingredient, [...items]),
  );
};

/** The first and last day on which a label of what is in the dishes was read. */
export const labelDates = (recipes: readonly Recipe[], facts: Facts): AllergenMatrix['labels'] => {
  const inDishes = new Set(recipes.flatMap((recipe) => ways(recipe, facts)).map((way) => way.ingredient));
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

/** Whether a cell is free, and not by labels alone. */
export const isByWord = ({ byWord }: Pick<MatrixRow, 'byWord'>, { item, state }: Cell): boolean =>
  state === 'free' && byWord.has(item.id);

/** What a cell of a dish says in full, and of a free one also when that is not by labels alone. */
export const cellOfDish = (row: Pick<MatrixRow, 'byWord'>, cell: Cell): string =>
  isByWord(row, cell) ? 'not listed, in part by the cook’s word' : cellWords(cell);
