import { type AllergenItem, allergensOf } from './allergens.js';
import { datedSteps, type Span } from './due.js';
import type { Event } from './facts/event.js';
import { type Facts, factsOf } from './facts/facts.js';
import type { Recipe, Step } from './facts/recipe.js';
import { recipeOf } from './lookup.js';
import { normalName } from './names.js';
import { isLive } from './prep.js';
import { listed } from './problems.js';
import { closureOf } from './scaling.js';

/** What else touches a piece of equipment: a dish of this event or of another one that is worked on that day. */
export type Beside = {
  dish: string;
  /** undefined for a dish of the same event. */
  event: Event | undefined;
  contains: AllergenItem[];
  may: AllergenItem[];
  /** Some of what is in it is not known, so neither is all that the equipment carries. */
  unknown: boolean;
};

/** A piece of equipment that a dish shares, and with what. */
export type Shared = { equipment: string; with: Beside[] };

/** A dish by its course and key, and the equipment it shares; none where it shares nothing. */
export type Handled = { course: string; dish: string; recipe: Recipe; shared: Shared[] };

type Use = {
  event: Event;
  dish: string;
  root: Recipe;
  recipe: Recipe;
  facts: Facts;
  equipment: string;
  dates: ReadonlySet<string>;
  places: readonly string[];
};

/**
 * What each dish of an event is handled with: the dishes whose steps use the same piece of equipment in the same
 * kitchen, in this event on any day of its work, and in the other live events of `events` on a day both are worked on,
 * with the allergens of the recipe that touches it. Recorded apart from what a dish contains, and no state of it:
 * whether equipment is cleaned between is the cook's to say.
 */
export const handledWith = (event: Event, events: readonly Event[], today: Facts): Handled[] => {
  const facts = factsOf(event, today);
  const own = usesOf(event, facts);
  const others = events
    .filter((one) => one.key !== event.key && isLive(one))
    .flatMap((one) => usesOf(one, factsOf(one, today)));
  return event.courses.flatMap((course) =>
    course.dishes.map((dish) => {
      const recipe = recipeOf(dish.recipe, facts);
      const mine = own.filter((use) => use.dish === dish.key);
      return { course: course.name, dish: dish.key, recipe, shared: sharedBy(mine, [...own, ...others]) };
    }),
  );
};

/** The first and the last day an event is worked on; its own day where nothing is on its menu. */
export const workDays = (event: Event, today: Facts): Span => {
  const dates = [...datedSteps(event, factsOf(event, today)).values()].flat().map(({ date }) => date);
  const days = [...dates, event.date].sort();
  return { from: days[0]!, to: days.at(-1)! };
};

/** Every piece of equipment a dish or a component of it touches, with the days and kitchens of that work. */
const usesOf = (event: Event, facts: Facts): Use[] => {
  if (event.courses.length === 0) return [];
  const dated = datedSteps(event, facts);
  return event.courses.flatMap(({ dishes }) =>
    dishes.flatMap((dish) => {
      const root = recipeOf(dish.recipe, facts);
      return closureOf(root, facts).flatMap((recipe) =>
        recipe.steps.flatMap((step) => {
          const worked = dated.get(recipe.key) ?? [];
          const dates = new Set(worked.filter((one) => one.step?.key === step.key).map(({ date }) => date));
          const places = placesOf(step, event, facts);
          const use = { event, dish: dish.key, root, recipe, facts, dates, places };
          return step.equipment.map((equipment) => ({ ...use, equipment }));
        }),
      );
    }),
  );
};

const placesOf = ({ where }: Step, event: Event, facts: Facts): string[] => {
  const home = [...facts.places.values()].find(({ kind }) => kind === 'home')?.key ?? 'home';
  if (where === 'home') return [home];
  return where === 'venue' ? [event.place] : [home, event.place];
};

const sharedBy = (mine: readonly Use[], all: readonly Use[]): Shared[] => {
  const found = new Map<string, { equipment: string; uses: Use[] }>();
  for (const use of mine)
    for (const other of all) {
      if (!meets(use, other)) continue;
      const name = normalName(use.equipment);
      const entry = found.get(name) ?? { equipment: use.equipment, uses: [] };
      if (!entry.uses.includes(other)) entry.uses.push(other);
      found.set(name, entry);
    }
  return [...found.values()].map(({ equipment, uses }) => ({
    equipment,
    with: besides(uses, mine[0]!.event),
  }));
};

const meets = (use: Use, other: Use): boolean =>
  !(use.event === other.event && use.dish === other.dish) &&
  use.root.key !== other.root.key &&
  normalName(use.equipment) === normalName(other.equipment) &&
  use.places.some((place) => other.places.includes(place)) &&
  (use.event === other.event || [...use.dates].some((date) => other.dates.has(date)));

/** One entry for each dish, with all of its recipes that touch the equipment. */
const besides = (uses: readonly Use[], own: Event): Beside[] => {
  const dishes = new Map<string, Use[]>();
  for (const use of uses) {
    const key = `${use.event.key} ${use.root.key}`;
    dishes.set(key, [...(dishes.get(key) ?? []), use]);
  }
  return [...dishes.values()].map((some) => {
    const cells = some.flatMap(({ recipe, facts }) => allergensOf(recipe, facts));
    const contains = itemsOf(cells.filter(({ state }) => state === 'contains'));
    const there = new Set(contains.map(({ id }) => id));
    return {
      dish: some[0]!.root.name,
      event: some[0]!.event.key === own.key ? undefined : some[0]!.event,
      contains,
      may: itemsOf(cells.filter(({ state, item }) => state === 'may' && !there.has(item.id))),
      unknown: cells.some(({ unknown, item }) => unknown && !there.has(item.id)),
    };
  });
};

const itemsOf = (cells: readonly { item: AllergenItem }[]): AllergenItem[] => [
  ...new Map(cells.map(({ item }) => [item.id, item])).values(),
];

/**
 * What a dish is handled with, in one sentence for all the equipment it shares: "Chips: handled with fish and gluten
 * (shared fryer with Battered cod; shared board and knife with Salad)"; what is not known of another dish is said as
 * well. None where it shares nothing.
 */
export const handledWords = ({ recipe, shared }: Handled): string[] => {
  if (shared.length === 0) return [];
  const besides = shared.flatMap((one) => one.with);
  const contains = shortNames(besides.flatMap((one) => one.contains));
  const may = shortNames(besides.flatMap((one) => one.may)).filter((name) => !contains.includes(name));
  const said = [
    contains.length > 0 ? listed(contains) : '',
    may.length > 0 ? `what may contain ${listed(may)}` : '',
    besides.some(({ unknown }) => unknown) ? 'what is not known' : '',
  ].filter(Boolean);
  const what = said.length > 0 ? listed(said) : 'nothing that is on the list';
  return [`${recipe.name}: handled with ${what} (${equipmentWords(shared)})`];
};

/** Pieces that are shared with the same dishes are named together. */
const equipmentWords = (shared: readonly Shared[]): string => {
  const pieces = new Map<string, string[]>();
  for (const one of shared) {
    const dishes = listed(one.with.map(({ dish, event }) => (event ? `${dish} of ${event.name}` : dish)));
    pieces.set(dishes, [...(pieces.get(dishes) ?? []), one.equipment]);
  }
  return [...pieces].map(([dishes, names]) => `shared ${listed(names)} with ${dishes}`).join('; ');
};

const shortNames = (items: readonly AllergenItem[]): string[] => [
  ...new Set(items.map(({ short }) => short.toLowerCase())),
];
