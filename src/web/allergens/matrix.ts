import type { Cell } from '../../core/allergens.js';
import {
  type AllergenMatrix,
  cellOfDish,
  cellWords,
  isByWord,
  type MatrixRow,
} from '../../core/sheets/allergen-matrix.js';
import type { Format } from '../format.js';
import type { AllergenSign } from '../marks.js';
import { type Source, sourcesOf } from './sources.js';

export type CellView = {
  state: AllergenSign;
  /** True where a may-contain is also in part not known. */
  alsoUnknown: boolean;
  /** What a screen reader says of the link; nothing for a cell that is free. */
  label: string;
  href: string;
};
export type MatrixDish = { id: string; name: string; href: string; cells: CellView[] };
export type MatrixCourse = { name: string; dishes: MatrixDish[] };

/** One dish with every entry of the list: its state in words and what brings it in. */
export type DishItem = {
  id: string;
  name: string;
  state: AllergenSign;
  alsoUnknown: boolean;
  words: string;
  sources: Source[];
};
export type OneDish = {
  id: string;
  name: string;
  items: DishItem[];
  before: DishLink | undefined;
  after: DishLink | undefined;
};
export type DishLink = { href: string; name: string };

/** A dish is told apart by its course and its key. */
export const dishId = ({ course, dish }: Pick<MatrixRow, 'course' | 'dish'>): string =>
  `${course} ${dish}`.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');

/** The dishes of each course; `page` is the address of the matrix. */
export const matrixCourses = ({ rows, event }: AllergenMatrix, page: string): MatrixCourse[] =>
  event.courses
    .map(({ name }) => ({
      name,
      dishes: rows.filter(({ course }) => course === name).map((row) => matrixDish(row, page)),
    }))
    .filter(({ dishes }) => dishes.length > 0);

const matrixDish = (row: MatrixRow, page: string): MatrixDish => {
  const id = dishId(row);
  const { name } = row.recipe;
  return {
    id,
    name,
    href: `${page}?dish=${id}#dish`,
    cells: row.cells.map((cell) => ({
      state: signOf(row, cell),
      alsoUnknown: cell.state === 'may' && cell.unknown,
      label:
        cell.state === 'free' ? '' : `${name}: ${cell.item.short}, ${cellWords(cell)}. See what brings it in`,
      href: `${page}?dish=${id}#${id}-${cell.item.id}`,
    })),
  };
};

const signOf = (row: MatrixRow, cell: Cell): AllergenSign => (isByWord(row, cell) ? 'word' : cell.state);

/** The dish asked for, the first where none is; undefined without dishes. */
export const oneDish = (
  { rows }: AllergenMatrix,
  asked: string,
  page: string,
  f: Format,
): OneDish | undefined => {
  const at = Math.max(
    0,
    rows.findIndex((row) => dishId(row) === asked),
  );
  const row = rows[at];
  if (!row) return undefined;
  const link = (other: MatrixRow | undefined): DishLink | undefined =>
    other && { href: `${page}?dish=${dishId(other)}#dish`, name: other.recipe.name };
  return {
    id: dishId(row),
    name: row.recipe.name,
    items: row.cells.map((cell) => ({
      id: cell.item.id,
      name: cell.item.name,
      state: signOf(row, cell),
      alsoUnknown: cell.state === 'may' && cell.unknown,
      words: cellOfDish(row, cell),
      sources: sourcesOf(cell, f),
    })),
    before: link(rows[at - 1]),
    after: link(rows[at + 1]),
  };
};

/** What brings allergens into each dish, for paper; those that one label leaves open stand in one line. */
export type SourceLine = { dish: string; allergens: string; words: string; sources: Source[] };

export const sourceLines = ({ rows }: AllergenMatrix, f: Format): SourceLine[] =>
  rows.flatMap(({ recipe, cells }) => {
    const lines = new Map<string, Omit<SourceLine, 'allergens'> & { of: string[] }>();
    for (const cell of cells.filter(({ state }) => state !== 'free')) {
      const words = cellWords(cell);
      const sources = sourcesOf(cell, f);
      const key = [words, ...sources.map(({ href, through, said }) => `${href} ${through} ${said}`)].join(
        '; ',
      );
      const line = lines.get(key);
      if (line) line.of.push(cell.item.short);
      else lines.set(key, { dish: recipe.name, words, sources, of: [cell.item.short] });
    }
    return [...lines.values()].map(({ of, ...line }) => ({ ...line, allergens: f.list(of) }));
  });
