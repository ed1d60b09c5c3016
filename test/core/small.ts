import published from '../../shared/allergens.json' with { type: 'json' };
import { type Event, event } from '../../src/core/facts/event.js';
import { byKey, type Facts } from '../../src/core/facts/facts.js';
import { type Ingredient, ingredient } from '../../src/core/facts/ingredient.js';
import { kitchen } from '../../src/core/facts/kitchen.js';
import { place } from '../../src/core/facts/place.js';
import { type Recipe, recipe, scalings } from '../../src/core/facts/recipe.js';
import { requirementsOf } from '../../src/core/requirements.js';
import type { LineNeed } from '../../src/core/scaling.js';

/** Short ways to write the small kitchens of worked examples; all invented. */
type Loose = object;

/** An ingredient of which everything bought is eaten, unless it is said otherwise. */
export const food = (key: string, more: Loose = {}): Ingredient =>
  ingredient.parse({ key, name: capital(key), edibleYield: { yield: '1' }, ...more });

/** Packs of one pack: "1 kg at 240", in minor units. */
export const pack = (text: string, more: Loose = {}) => {
  const [amount, unit, , price] = text.split(' ');
  const prices = price ? [{ key: 'paid', date: '2026-01-05', price: Number(price), ...more }] : [];
  return { packs: [{ key: 'pack', size: { amount, unit }, preferred: true, prices }] };
};

/** Allergens of a label read to the end: those named, and free of everything else that can be stated. */
export const labelled = (named: { contains?: string[]; may?: string[] } = {}) => {
  const { contains = [], may = [] } = named;
  const state = (id: string) => (contains.includes(id) ? 'contains' : may.includes(id) ? 'may' : 'free');
  const entry = (id: string) => ({ state: state(id), source: 'label', date: '2026-01-05' });
  return { allergens: Object.fromEntries(published.substances.map(({ id }) => [id, entry(id)])) };
};

/**
 * "300 g leek", "2-3 clove garlic" for a range, "2 each @pastry" for a component, "taste salt"; then how it is stated
 * or scales: "pieces", "herb", "bought", "once roasted".
 */
const line = (text: string, at: number) => {
  const [first, ...rest] = text.split(' ');
  const toTaste = first === 'taste';
  const [unit, what, ...ways] = toTaste ? ['each', ...rest] : rest;
  const item = what!.startsWith('@') ? { component: what!.slice(1) } : { ingredient: what };
  const scales = toTaste ? 'taste' : (ways.find((way) => scalings.some((one) => one === way)) ?? 'straight');
  const once = ways.indexOf('once');
  const cooked = once < 0 ? '' : ways[once + 1];
  const stated = cooked ? 'cooked' : (ways.find((way) => way === 'bought' || way === 'prepared') ?? 'usual');
  const [amount, amountTo = null] = toTaste ? [null] : first!.split('-');
  return { key: `l${at}`, amount, amountTo, unit, item, scales, stated, cooked };
};

const measureOf = (text: string) => {
  const [amount, unit] = text.split(' ');
  return { amount, unit };
};

/** A recipe that makes "10 portions", "2 kg" or "10 portions, 2 kg", of lines as above. */
export const dish = (key: string, makes: string, lines: string[], more: Loose = {}): Recipe => {
  const made = makes.split(', ').map(measureOf);
  const portions = made.find(({ unit }) => unit?.startsWith('portion'))?.amount ?? null;
  const weight = made.find(({ unit }) => unit === 'g' || unit === 'kg') ?? null;
  const volume = made.find(({ unit }) => unit === 'ml' || unit === 'l') ?? null;
  const doc = {
    key,
    name: capital(key),
    yield: { portions, weight, volume },
    lines: lines.map(line),
    ...more,
  };
  return recipe.parse(doc);
};

/** Steps with keys s0, s1 …, each as little or as much as it says. */
export const steps = (...list: Loose[]) => ({
  steps: list.map((more, at) => ({ key: `s${at}`, words: 'Do it.', ...more })),
});

export const home = place.parse({
  key: 'home',
  name: 'Home',
  kind: 'home',
  ovens: [{ key: 'oven', name: 'The oven', shelves: 2 }],
});

/** The facts of a small kitchen; in pounds, metric, with the EU list, unless it is said otherwise. */
export const factsOf = (docs: (Ingredient | Recipe)[], ways: Loose = {}, places = [home]): Facts => ({
  kitchen: kitchen.parse({ name: 'Invented', currency: 'GBP', timeZone: 'Europe/London', ...ways }),
  places: byKey(places),
  ingredients: byKey(docs.filter((doc): doc is Ingredient => 'packs' in doc)),
  recipes: byKey(docs.filter((doc): doc is Recipe => 'lines' in doc)),
});

/** A party of so many adults, and children at half a portion, on a Saturday; one course at 18:00 of the dishes named. */
export const party = (adults: number, dishes: (string | Loose)[], more: Loose = {}): Event =>
  event.parse({
    key: 'party',
    name: 'Party',
    date: '2026-11-28',
    place: 'home',
    state: 'confirmed',
    groups: [
      { key: 'adults', name: 'Adults', guests: adults },
      { key: 'children', name: 'Children', guests: 0, portion: '1/2' },
    ],
    courses: [{ key: 'main', name: 'Main', time: '18:00', dishes: dishes.map(named) }],
    ...more,
  });

const named = (one: string | Loose, at: number) =>
  typeof one === 'string' ? { key: `d${at}`, recipe: one } : { key: `d${at}`, ...one };

/** Every line of an event's dishes at the amount that is cooked, by recipe and line: "tart/l0". The last use stands. */
export const lines = (event: Event, facts: Facts): Map<string, LineNeed> =>
  new Map(
    requirementsOf(event, facts)
      .flatMap(({ dishes }) => dishes.flatMap(({ recipes }) => recipes))
      .flatMap(({ recipe, lines }) => lines.map((need) => [`${recipe.key}/${need.line.key}`, need] as const)),
  );

const capital = (key: string) => key.charAt(0).toUpperCase() + key.slice(1).replace(/-/g, ' ');
