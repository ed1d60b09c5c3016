import { type Cell, type State, saidBy } from '../allergens.js';
import { apartWords } from '../coverage-problems.js';
import { dietOf } from '../diets.js';
import type { Recipe } from '../facts/recipe.js';
import { handledWords } from '../handled-with.js';
import type { Answer } from '../problem.js';
import {
  type AllergenMatrix,
  cellOfDish,
  cellWords,
  isByWord,
  isOpen,
  type MatrixRow,
} from './allergen-matrix.js';
import { cautions, type Sheet } from './sheet.js';

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
          rows: rows.map((row) => ({
            course: row.course,
            dish: row.recipe.name,
            ...Object.fromEntries(row.cells.map((cell) => [cell.item.id, cellOfDish(row, cell)])),
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
            { key: 'apart', label: 'To be kept apart' },
            { key: 'restrictedDiet', label: 'schema.org RestrictedDiet' },
          ],
          rows: coverage.rows.flatMap(({ guest, who, diets, cells }) =>
            cells.map(({ course, name, verdict, reasons, counts }) => ({
              guest: who,
              diets: diets.join('; '),
              course: event.courses.find((c) => c.key === course)!.name,
              dish: name,
              verdict: verdictWords[verdict],
              because: [...new Set(reasons.map((reason) => reason.ingredient.name))].join('; '),
              apart: counts ? '' : apartWords(name, who, guest?.name !== ''),
              restrictedDiet: (guest?.diets ?? [])
                .flatMap((id) => dietOf(id, value.facts.kitchen)?.schemaOrg ?? [])
                .join('; '),
            })),
          ),
        },
        {
          name: 'containment',
          title: 'By allergen code',
          columns: [
            { key: 'course', label: 'Course' },
            { key: 'dish', label: 'Dish' },
            { key: 'gs1', label: 'GS1 code' },
            { key: 'allergen', label: 'Allergen' },
            { key: 'containment', label: 'Containment' },
            { key: 'open', label: 'Also not known' },
            { key: 'ground', label: 'Free from by' },
          ],
          rows: rows.flatMap((row) => row.cells.map((cell) => containmentRow(row, cell))),
        },
        {
          name: 'handled',
          title: 'Handled with',
          columns: [
            { key: 'dish', label: 'Dish' },
            { key: 'words', label: 'Handled with' },
          ],
          rows: value.handled.flatMap((one) =>
            handledWords(one).map((words) => ({ dish: one.recipe.name, words })),
          ),
        },
      ];
    },
    problems,
    foot: [cautions.allergens],
  };
};

/** GS1 knows the first three (code list T4078 for the allergens); that nobody has read a label is our own. */
const containments: Record<State, string> = {
  contains: 'contains',
  may: 'may contain',
  free: 'free from',
  unknown: 'not known',
};

const containmentRow = (row: MatrixRow, cell: Cell): Record<string, string> => ({
  course: row.course,
  dish: row.recipe.name,
  gs1: cell.item.gs1 ?? '',
  allergen: cell.item.name,
  containment: containments[cell.state],
  open: cell.state === 'may' && isOpen(cell) ? 'yes' : 'no',
  ground: cell.state !== 'free' ? '' : isByWord(row, cell) ? 'labels and the cook’s word' : 'labels',
});

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
