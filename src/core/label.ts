import published from '../../shared/allergens.json' with { type: 'json' };
import {
  type AllergenItem,
  type AllergenList,
  allergenName,
  type State,
  stated,
  stateOf,
  worst,
} from './allergens.js';
import type { AllergenState, Ingredient } from './facts/ingredient.js';

type Allergens = Ingredient['allergens'];

/** How a label was read, or who says so without one. */
export type Stamp = Pick<AllergenState, 'source' | 'date' | 'by'>;

/** An entry of the list as a form asks it; `states` are of the substances that no earlier entry asked about. */
export type LabelEntry = {
  item: AllergenItem;
  /** The group that the list's entry holds, and what was said of some of it without saying which. */
  group: { id: string; state: State } | undefined;
  state: State;
  states: { id: string; name: string; state: State }[];
};

/** What a cook marked: by entry of the list, and by substance where several stand under one entry. */
export type Marked = { entries: Readonly<Record<string, State>>; states: Readonly<Record<string, State>> };

/** Marks that can't both stand: the entry and the substance that speaks against it. */
export type Conflict = { entry: AllergenItem; substance: string };

const groups: readonly { id: string; name: string; members: string[] }[] = published.groups;

const own = (allergens: Allergens, id: string): State => allergens[id]?.state ?? 'unknown';
const isOpen = (state: State): boolean => state === 'contains' || state === 'may';
/** A group's own "free" is written out for its substances, so by itself it says nothing. */
const openly = (state: State): State => (isOpen(state) ? state : 'unknown');

/** An ingredient's label as the list in force asks it, every substance once. */
export const labelOf = (ingredient: Ingredient, list: AllergenList): LabelEntry[] => {
  const asked = new Set<string>();
  const items = [...list.items, ...elsewhere(ingredient, list)];
  return items.flatMap((item) => {
    const members = item.members.filter((id) => !asked.has(id));
    for (const id of members) asked.add(id);
    if (members.length === 0) return [];
    const states = members.map((id) => ({ id, name: allergenName(id), state: stated(ingredient, id) }));
    const id = groupIn(item.members);
    const group = id === undefined ? undefined : { id, state: openly(own(ingredient.allergens, id)) };
    const general = group && isOpen(group.state) ? group.state : 'free';
    return [{ item, group, state: states.map((one) => one.state).reduce(worst, general), states }];
  });
};

const groupIn = (members: readonly string[]): string | undefined =>
  groups.find(({ members: covers }) => covers.every((id) => members.includes(id)))?.id;

/** Groups a label named under another list, which this one does not ask for as a whole. */
const elsewhere = ({ allergens }: Ingredient, list: AllergenList): AllergenItem[] =>
  groups
    .filter(
      ({ id }) => isOpen(own(allergens, id)) && !list.items.some((item) => groupIn(item.members) === id),
    )
    .map(({ id, name, members }) => ({ id, name, short: name, members, clause: '' }));

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
 * `stamp`. Where the label names a group but not which of it, its substances stay not known.
 */
export const wholeLabelRead = (ingredient: Ingredient, list: AllergenList, stamp: Stamp): Allergens => {
  const after: Allergens = { ...ingredient.allergens };
  for (const { group, states } of labelOf(ingredient, list)) {
    const open = isOpen(group?.state ?? 'free');
    if (group && open) after[group.id] = { ...after[group.id]!, ...stamp };
    for (const { id, state } of states) {
      if (state !== 'unknown') after[id] = { state, ...stamp };
      else if (!open) after[id] = { state: 'free', ...stamp };
    }
    if (group && !open) delete after[group.id];
  }
  return after;
};

/** Nothing of the list in force is in it, in the cook's word: for plain produce. */
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
