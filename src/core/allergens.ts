import published from '../../shared/allergens.json' with { type: 'json' };
import type { Facts } from './facts/facts.js';
import type { AllergenState, Ingredient } from './facts/ingredient.js';
import type { AllergenListId, Kitchen } from './facts/kitchen.js';
import type { Recipe } from './facts/recipe.js';
import { ingredientOf, once, recipeOf } from './lookup.js';
import { closureOf } from './scaling.js';

/** contains beats may contain beats not known beats free. */
export type State = 'contains' | 'may' | 'unknown' | 'free';

/** An entry of a law's list: the substances it covers, its clause, and its GS1 code where one exists. */
export type AllergenItem = {
  id: string;
  name: string;
  short: string;
  members: string[];
  clause: string;
  /** Products of it that the law leaves out, in its words. */
  exceptions?: string[];
  gs1?: string | null;
};
/** A figure in mg a kilo or litre at which something begins to count, or still may be said: `at` is true at the figure itself. */
export type Edge = { mg: string; at: boolean; clause: string };
export type AllergenList = {
  id: string;
  name: string;
  source: string;
  /** From where sulphites count, and up to where food may be called gluten-free; null where the list has none. */
  edges: { sulphites: Edge | null; glutenFree: Edge };
  items: AllergenItem[];
};

const lists = new Map<string, AllergenList>(published.lists.map((list) => [list.id, list]));
const groups = new Map<string, string[]>(published.groups.map((group) => [group.id, group.members]));
const groupsOf = new Map<string, string[]>(
  published.substances.map(({ id }) => [
    id,
    published.groups.filter(({ members }) => members.includes(id)).map((group) => group.id),
  ]),
);
const names = new Map<string, string>(
  [...published.substances, ...published.groups].map((s) => [s.id, s.name]),
);

/** The allergen list in force. */
export const allergenList = (id: AllergenListId): AllergenList => lists.get(id)!;

export const listOf = (kitchen: Kitchen): AllergenList => allergenList(kitchen.allergenList);

/** A substance or group in words. */
export const allergenName = (id: string): string => names.get(id) ?? id;

/** Every substance and group whose state may be recorded. */
export const allergenIds: ReadonlySet<string> = new Set(names.keys());

const worse: Record<State, number> = { free: 0, unknown: 1, may: 2, contains: 3 };

/** The worse of two states. */
export const worst = (a: State, b: State): State => (worse[b] > worse[a] ? b : a);

/** A state, and whether any part of it is not known: a may-contain can hide an unread label. */
export type Known = { state: State; unknown: boolean };

/** What is said of one substance, by itself or, when free, by its group. */
export const stated = (ingredient: Ingredient, id: string): State => {
  const own = ingredient.allergens[id];
  if (own) return own.state;
  return groupsOf.get(id)?.some((group) => ingredient.allergens[group]?.state === 'free')
    ? 'free'
    : 'unknown';
};

/**
 * What is known of an ingredient for a set of substances: the worst of their states. A group's own entry ("nuts",
 * where the label doesn't say which) says free of each substance in that group and of no other, so a law's list that
 * covers more asks again; contains and may contain it says of the group as a whole.
 */
export const stateOf = (ingredient: Ingredient, members: readonly string[]): Known => {
  let state: State = 'free';
  let unknown = false;
  for (const id of members) {
    const one = stated(ingredient, id);
    if (one === 'unknown') unknown = true;
    state = worst(state, one);
  }
  for (const [group, covers] of groups) {
    const general = ingredient.allergens[group]?.state;
    if (!general || general === 'free' || !members.some((id) => covers.includes(id))) continue;
    // "Contains nuts" is not yet "contains almonds": for part of a group it leaves the question open.
    const whole = covers.every((id) => members.includes(id));
    state = worst(state, whole ? general : 'unknown');
    if (!whole) unknown = true;
  }
  return { state, unknown };
};

/** Whether a label read to the end would tell more: of a substance, neither it nor its group says anything. */
export const isUnread = (ingredient: Ingredient, { members }: AllergenItem): boolean =>
  members.some((id) => [id, ...(groupsOf.get(id) ?? [])].every((one) => !ingredient.allergens[one]));

/** The entry that puts an ingredient into a state for an allergen: a substance's own first, then its group's. */
export const saidBy = (
  ingredient: Ingredient,
  item: AllergenItem,
  state: State,
): AllergenState | undefined => {
  const about = [...groups].filter(([, covers]) => covers.some((id) => item.members.includes(id)));
  return [...item.members, ...about.map(([group]) => group)]
    .map((id) => ingredient.allergens[id])
    .find((entry) => entry?.state === state);
};

/** An ingredient, and the recipes it comes through, the dish first. */
export type Way = { ingredient: Ingredient; through: Recipe[] };

/** What brings an allergen in, in which state, and whether part of it is not known. */
export type Bringer = Way & Known;

export type Cell = Known & { item: AllergenItem; brings: Bringer[] };

// In a deep web of components the ways double at every level; nobody reads on past so many into one recipe.
const mostWays = 12;

/** Every ingredient below a recipe, once for each way it comes in. */
export const ways = once((recipe: Recipe, facts: Facts): Way[] => {
  const found: Way[] = [];
  const times = new Map<Recipe, number>();
  const visit = (one: Recipe, above: readonly Recipe[]) => {
    const before = times.get(one) ?? 0;
    if (before === mostWays) return;
    times.set(one, before + 1);
    const through = [...above, one];
    const seen = new Set<string>();
    for (const { item } of one.lines) {
      const key = 'component' in item ? item.component : item.ingredient;
      const mark = 'component' in item ? `component ${key}` : key;
      if (seen.has(mark)) continue;
      seen.add(mark);
      if ('component' in item) visit(recipeOf(key, facts), through);
      else found.push({ ingredient: ingredientOf(key, facts), through });
    }
  };
  visit(recipe, []);
  return found;
});

/** Recipes without a single line, the recipe itself or below it: of what is in them nothing is known. */
export const unwritten = once((recipe: Recipe, facts: Facts): Recipe[] =>
  closureOf(recipe, facts).filter(({ lines }) => lines.length === 0),
);

/**
 * The allergens of a recipe by the list in force, through any depth: for each entry the worst state of everything in
 * it, with the ingredients that bring it and the way they come in. Adding an ingredient never improves a state.
 */
export const allergensOf = once((recipe: Recipe, facts: Facts): Cell[] => {
  const cells = cellsOf(ways(recipe, facts), facts);
  if (unwritten(recipe, facts).length === 0) return cells;
  return cells.map((cell) => ({ ...cell, state: worst(cell.state, 'unknown'), unknown: true }));
});

/** The same for any set of ingredients and the ways they come in. */
export const cellsOf = (all: readonly Way[], facts: Facts): Cell[] => {
  const list = listOf(facts.kitchen);
  const cells = list.items.map((item): Cell => ({ item, state: 'free', unknown: false, brings: [] }));
  for (const { ingredient, through } of all)
    for (const { at, state, unknown } of notFree(ingredient, list)) {
      const cell = cells[at]!;
      cell.state = worst(cell.state, state);
      cell.unknown ||= unknown;
      cell.brings.push({ ingredient, through, state, unknown });
    }
  return cells;
};

type NotFree = Known & { item: AllergenItem; at: number };

const kept = new WeakMap<Ingredient, { list: AllergenList; entries: NotFree[] }>();

/** The entries of a list that an ingredient is not free of, with their place in it; most ingredients have few. */
export const notFree = (ingredient: Ingredient, list: AllergenList): readonly NotFree[] => {
  const known = kept.get(ingredient);
  if (known?.list === list) return known.entries;
  const entries = list.items
    .map((item, at) => ({ item, at, ...stateOf(ingredient, item.members) }))
    .filter(({ state }) => state !== 'free');
  kept.set(ingredient, { list, entries });
  return entries;
};
