import { allergenName, type Cell, type State } from '../allergens.js';
import type { Handled } from '../handled-with.js';
import { groups } from '../label-entries.js';
import { listed } from '../problems.js';
import { type AllergenMatrix, isByWord, isOpen, labelDates, type MatrixRow } from './allergen-matrix.js';

/** One dish as guests read it: every entry of the list in force stands in one of the first four, in words. */
export type TableCard = {
  /** The course, and the dish's key within the event. */
  course: string;
  key: string;
  dish: string;
  contains: string[];
  may: string[];
  /** Entries of which a label was not read, also in part; "other nuts" where those named may not be all. */
  notChecked: string[];
  notListed: string[];
  /** Whether some of what is not listed is so only by the cook's word. */
  byWord: boolean;
  /** What its equipment was shared with, apart from what is in it: "fish and gluten (shared fryer)". */
  handled: string[];
  labels: AllergenMatrix['labels'];
};

/** The dishes of a matrix as cards for the table or the buffet. */
export const tableCards = ({
  rows,
  handled,
  facts,
}: Pick<AllergenMatrix, 'rows' | 'handled' | 'facts'>): TableCard[] =>
  rows.map((row) => {
    const shared = handled.find(({ course, dish }) => course === row.course && dish === row.dish);
    return {
      ...card(row),
      handled: shared ? handledFor(shared) : [],
      labels: labelDates([row.recipe], facts),
    };
  });

const card = (row: MatrixRow): Omit<TableCard, 'handled' | 'labels'> => {
  const { course, dish, recipe, cells } = row;
  const named = (wanted: (cell: Cell) => boolean) => cells.filter(wanted).map(inFull);
  return {
    course,
    key: dish,
    dish: recipe.name,
    contains: named(({ state }) => state === 'contains'),
    may: [...named(({ state }) => state === 'may'), ...cells.flatMap(mayBeside)],
    notChecked: [...named(isOpen), ...cells.filter(hidesOthers).map(others)],
    notListed: cells.filter(({ state }) => state === 'free').map(({ item }) => lower(item.short)),
    byWord: cells.some((cell) => isByWord(row, cell)),
  };
};

/** Guests are not told of the dishes of other parties, only of what those bring; equipment that brings the same is one. */
const handledFor = ({ shared }: Handled): string[] => {
  const bySaid = new Map<string, string[]>();
  for (const { equipment, with: besides } of shared) {
    const said = broughtBy(besides);
    if (said !== '') bySaid.set(said, [...(bySaid.get(said) ?? []), equipment.toLowerCase()]);
  }
  return [...bySaid].map(([said, equipment]) => `${said} (shared ${listed(equipment)})`);
};

const broughtBy = (besides: Handled['shared'][number]['with']): string => {
  const contains = namesOf(besides.flatMap((one) => one.contains));
  const may = namesOf(besides.flatMap((one) => one.may)).filter((name) => !contains.includes(name));
  const said = [
    ...contains,
    ...(may.length > 0 ? [`what may contain ${listed(may)}`] : []),
    ...(besides.some(({ unknown }) => unknown) ? ['food that is not checked'] : []),
  ];
  return said.length > 0 ? listed(said) : '';
};

const namesOf = (items: readonly { short: string }[]): string[] => [
  ...new Set(items.map(({ short }) => lower(short))),
];

/** "cereals containing gluten (wheat, barley)": where an entry covers several substances, which of them it is. */
const inFull = (cell: Cell): string => {
  const which = substancesOf(cell).map(inShort);
  const name = lower(cell.item.name);
  return which.length > 0 ? `${name.replace(/ \(.*\)$/, '')} (${which.join(', ')})` : name;
};

/** Almonds are named, and of hazelnuts nobody knows: who may eat almonds must not take that for all. */
const hidesOthers = (cell: Cell): boolean =>
  cell.state === 'contains' && cell.unknown && substancesOf(cell).length > 0;

/** Almonds are in it and hazelnuts may be: "other nuts (hazelnut)", once for an entry. */
export const mayBeside = (cell: Cell): string[] => {
  const there = substancesOf(cell);
  if (cell.state !== 'contains' || there.length === 0) return [];
  const says = (id: string) =>
    cell.brings.some(({ ingredient }) => ingredient.allergens[id]?.state === 'may');
  const which = cell.item.members.filter((id) => !there.includes(id) && says(id)).map(inShort);
  if (which.length > 0) return [`${others(cell)} (${which.join(', ')})`];
  const covers = ({ members }: { members: string[] }) => members.some((id) => cell.item.members.includes(id));
  return groups.some((group) => covers(group) && says(group.id)) ? [others(cell)] : [];
};

const inShort = (id: string): string => allergenName(id).replace(/ \(.*\)$/, '');

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
