import { type AllergenItem, type AllergenList, type State, stateOf, worst } from './allergens.js';
import type { AllergenState, Ingredient } from './facts/ingredient.js';
import { groups, isOpen, type LabelEntry, labelOf, openly } from './label-entries.js';

type Allergens = Ingredient['allergens'];

/** How a label was read, or who says so without one. */
export type Stamp = Pick<AllergenState, 'source' | 'date' | 'by'>;

/** What a cook marked: by entry of the list, and by substance where several stand under one entry. */
export type Marked = { entries: Readonly<Record<string, State>>; states: Readonly<Record<string, State>> };

/** Marks that can't both stand: the entry and the substance that speaks against it. */
export type Conflict = { entry: AllergenItem; substance: string };

/**
 * The allergens of an ingredient as marked on its form. Where an entry has several substances, those marked stand, and
 * the group's own mark for what the label does not say more of; an entry marked worse than all of these stands for the
 * group as a whole, and "not listed" writes free for each of its substances.
 * What did not change keeps how it was known; the rest takes `stamp`.
 */
export const withMarks = (
  ingredient: Ingredient,
  list: AllergenList,
  marked: Marked,
  stamp: Stamp,
): { allergens: Allergens; conflicts: Conflict[] } => {
  const conflicts: Conflict[] = [];
  const now: Record<string, State> = {};
  for (const entry of labelOf(ingredient, list)) {
    const conflict = mark(entry, marked, now);
    if (conflict) conflicts.push({ entry: entry.item, substance: conflict });
  }
  return { allergens: stamped(ingredient.allergens, now, stamp), conflicts };
};

/** Marks one entry into `now`; returns the substance that speaks against its "not listed". */
const mark = (
  { item, group, states }: LabelEntry,
  marked: Marked,
  now: Record<string, State>,
): string | undefined => {
  const entry = marked.entries[item.id] ?? 'unknown';
  const one = states.length === 1 && !group;
  const of = (id: string) => (one ? entry : (marked.states[id] ?? 'unknown'));
  for (const { id } of states) now[id] = of(id);
  if (one) return undefined;
  if (group) now[group.id] = openly(of(group.id));
  const named = states.filter(({ id }) => isOpen(of(id)));
  if (entry === 'free') {
    if (named[0]) return named[0].name;
    for (const { id } of states) now[id] = 'free';
    if (group) now[group.id] = 'unknown';
  } else if (isOpen(entry)) {
    const all = [...named, ...(group ? [group] : [])].map(({ id }) => of(id)).filter(isOpen);
    const worstNamed = all.reduce(worst, 'free');
    if (worst(worstNamed, entry) !== worstNamed) now[group?.id ?? states[0]!.id] = entry;
  }
  return undefined;
};

const stamped = (before: Allergens, now: Readonly<Record<string, State>>, stamp: Stamp): Allergens => {
  const after: Allergens = { ...before };
  for (const [id, state] of Object.entries(now)) {
    const was = before[id] ?? freeByGroup(before, id);
    if (state === 'unknown') delete after[id];
    else after[id] = was?.state === state ? was : { state, ...stamp };
  }
  return after;
};

const freeByGroup = (allergens: Allergens, id: string): AllergenState | undefined =>
  groups
    .filter(({ members }) => members.includes(id))
    .map((group) => allergens[group.id])
    .find((entry) => entry?.state === 'free');

/**
 * The whole label was read: of what the list in force asks, what is still not known is not listed, and all of it takes
 * `stamp`. Where the label names a group but not which of it, its substances stay not known; so does what only diets
 * ask, because a label need not name that.
 */
export const wholeLabelRead = (ingredient: Ingredient, list: AllergenList, stamp: Stamp): Allergens => {
  const after: Allergens = { ...ingredient.allergens };
  for (const { beyond, group, states } of labelOf(ingredient, list)) {
    const open = isOpen(group?.state ?? 'free');
    if (group && open) after[group.id] = { ...after[group.id]!, ...stamp };
    for (const { id, state } of states) {
      if (state !== 'unknown') after[id] = { state, ...stamp };
      else if (!open && !beyond) after[id] = { state: 'free', ...stamp };
    }
    if (group && !open) delete after[group.id];
  }
  return after;
};

/** Nothing of the list in force, nor of what diets ask, is in it, in the cook's word: for plain produce. */
export const plainProduce = (ingredient: Ingredient, list: AllergenList, by: string): Allergens => {
  const after: Allergens = { ...ingredient.allergens };
  for (const { group, states } of labelOf(ingredient, list)) {
    if (group) delete after[group.id];
    for (const { id } of states) after[id] = { state: 'free', source: 'cook', date: null, by };
  }
  return after;
};

/**
 * How many entries of the list in force are not known, or may hide what is not known, and the first and last day a
 * label was read. What contains an allergen needs no more asking.
 */
export const labelState = (
  ingredient: Ingredient,
  list: AllergenList,
): { unknown: number; read: { first: string; last: string } | undefined } => {
  const open = ({ members }: AllergenItem) => {
    const { state, unknown } = stateOf(ingredient, members);
    return unknown && state !== 'contains';
  };
  const unknown = list.items.filter(open).length;
  const dates = Object.values(ingredient.allergens)
    .flatMap(({ source, date }) => (source === 'label' && date ? [date] : []))
    .sort();
  return { unknown, read: dates.length ? { first: dates[0]!, last: dates.at(-1)! } : undefined };
};
