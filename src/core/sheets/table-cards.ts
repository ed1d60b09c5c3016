import { allergenName, type Cell, type State } from '../allergens.js';
import { type AllergenMatrix, isOpen, type MatrixRow } from './allergen-matrix.js';

/** One dish as guests read it: every entry of the list in force stands in one of these, in words. */
export type TableCard = {
  course: string;
  dish: string;
  contains: string[];
  may: string[];
  /** Entries of which a label was not read, also in part; "other nuts" where those named may not be all. */
  notChecked: string[];
  notListed: string[];
};

/** The dishes of a matrix as cards for the table. */
export const tableCards = ({ rows }: Pick<AllergenMatrix, 'rows'>): TableCard[] => rows.map(card);

const card = ({ course, recipe, cells }: MatrixRow): TableCard => {
  const named = (wanted: (cell: Cell) => boolean) => cells.filter(wanted).map(inFull);
  return {
    course,
    dish: recipe.name,
    contains: named(({ state }) => state === 'contains'),
    may: named(({ state }) => state === 'may'),
    notChecked: [...named(isOpen), ...cells.filter(hidesOthers).map(others)],
    notListed: cells.filter(({ state }) => state === 'free').map(({ item }) => lower(item.short)),
  };
};

/** "cereals containing gluten (wheat, barley)": where an entry covers several substances, which of them it is. */
const inFull = (cell: Cell): string => {
  const which = substancesOf(cell).map((id) => allergenName(id).replace(/ \(.*\)$/, ''));
  const name = lower(cell.item.name);
  return which.length > 0 ? `${name.replace(/ \(.*\)$/, '')} (${which.join(', ')})` : name;
};

/** Almonds are named, and of hazelnuts nobody knows: who may eat almonds must not take that for all. */
const hidesOthers = (cell: Cell): boolean =>
  cell.state === 'contains' && cell.unknown && substancesOf(cell).length > 0;

const others = ({ item }: Cell): string => `other ${lower(item.name).replace(/ \(.*\)$/, '')}`;

const lower = (name: string): string => name.charAt(0).toLowerCase() + name.slice(1);

/** The substances that put an entry into its state, where it covers several. */
export const substancesOf = ({ item, state, brings }: Cell): string[] => {
  if (item.members.length < 2 || !isStated(state)) return [];
  return item.members.filter((id) =>
    brings.some(({ ingredient }) => ingredient.allergens[id]?.state === state),
  );
};

const isStated = (state: State): boolean => state === 'contains' || state === 'may';
