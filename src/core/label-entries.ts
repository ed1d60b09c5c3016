import published from '../../shared/allergens.json' with { type: 'json' };
import {
  type AllergenItem,
  type AllergenList,
  allergenName,
  type State,
  stated,
  worst,
} from './allergens.js';
import { askedByDiets } from './diets.js';
import type { Ingredient } from './facts/ingredient.js';

/** An entry of the list as a form asks it; `states` are of the substances that no earlier entry asked about. */
export type LabelEntry = {
  item: AllergenItem;
  /** The list in force does not ask for it and a diet does, or another list did and it was named. */
  beyond: boolean;
  /** The group that the list's entry holds, and what was said of some of it without saying which. */
  group: { id: string; state: State } | undefined;
  state: State;
  states: { id: string; name: string; state: State }[];
};

export const groups: readonly { id: string; name: string; members: string[] }[] = published.groups;

const own = (allergens: Ingredient['allergens'], id: string): State => allergens[id]?.state ?? 'unknown';
export const isOpen = (state: State): boolean => state === 'contains' || state === 'may';
/** A group's own "free" is written out for its substances, so by itself it says nothing. */
export const openly = (state: State): State => (isOpen(state) ? state : 'unknown');

/** An ingredient's label as the list in force asks it, then what diets ask beyond the list; every substance once. */
export const labelOf = (ingredient: Ingredient, list: AllergenList): LabelEntry[] => {
  const asked = new Set<string>();
  const entry = (item: AllergenItem, beyond: boolean): LabelEntry[] => {
    const members = item.members.filter((id) => !asked.has(id));
    for (const id of members) asked.add(id);
    const states = members.map((id) => ({ id, name: allergenName(id), state: stated(ingredient, id) }));
    const id = groupIn(item.members);
    const group = id === undefined ? undefined : { id, state: openly(own(ingredient.allergens, id)) };
    const general = group && isOpen(group.state) ? group.state : 'free';
    if (members.length === 0 && general === 'free') return [];
    const state = states.map((one) => one.state).reduce(worst, general);
    return [{ item, beyond, group, state, states }];
  };
  return [
    ...list.items.flatMap((item) => entry(item, false)),
    ...itemsBeyond(ingredient, list).flatMap((item) => entry(item, true)),
  ];
};

const groupIn = (members: readonly string[]): string | undefined =>
  groups.find(({ members: covers }) => covers.every((id) => members.includes(id)))?.id;

/** Groups and substances that the list does not ask for, and that a diet does or the label named under another list. */
const itemsBeyond = ({ allergens }: Ingredient, list: AllergenList): AllergenItem[] => {
  const wanted = ({ id }: { id: string }) => askedByDiets.has(id) || isOpen(own(allergens, id));
  const whole = new Set(list.items.map(({ members }) => groupIn(members)));
  const listed = new Set(list.items.flatMap(({ members }) => members));
  return [
    ...groups
      .filter((group) => !whole.has(group.id) && wanted(group))
      .map(({ id, name, members }) => item(id, restOf(name, members, listed), members)),
    ...published.substances
      .filter((one) => !listed.has(one.id) && wanted(one))
      .map(({ id, name }) => item(id, name, [id])),
  ];
};

const item = (id: string, name: string, members: string[]): AllergenItem => {
  const short = name.charAt(0).toUpperCase() + name.slice(1);
  return { id, name: short, short, members, clause: '' };
};

const restOf = (name: string, members: readonly string[], listed: ReadonlySet<string>): string => {
  const left = members.filter((id) => !listed.has(id)).length;
  if (left === 0) return `${name}, not said which`;
  return left < members.length ? `other ${name}` : name;
};
