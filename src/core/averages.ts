import { dishesEaten, guestsWhoCame } from './afterwards.js';
import type { CostKind, CostLine } from './facts/cost-line.js';
import type { Event } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import { normalName } from './names.js';
import { exact } from './quantity/amount.js';
import { Rational, sum } from './quantity/rational.js';

/** How many parties an average rests on, at most: the last ones. */
export const lastParties = 3;

/** What guests ate of a recipe at the last parties where that was noted. */
export type EatenAverage = {
  recipe: string;
  name: string;
  parties: number;
  /** Portions eaten for each guest who came, whatever group they were of; exact. */
  aGuest: Rational;
  /** Per cent of the portions that all who came would have had, children counting as their group does; exact. */
  share: Rational;
  /** At how many of them nothing was left, so that more might have been eaten. */
  ranOut: number;
};

/** Hours that were worked for ten guests who came, on one kind of cost or one line of it. */
export type HoursAverage = { kind: CostKind; name: string; parties: number; perTen: Rational };

/** Done events with something noted afterwards, the last first. */
const notedLately = (events: readonly Event[]): Event[] =>
  events
    .filter(({ state, afterwards }) => state === 'done' && afterwards !== null)
    .sort((a, b) => (a.date > b.date ? -1 : a.date < b.date ? 1 : a.key < b.key ? -1 : 1));

type Eaten = { name: string; eaten: Rational; left: Rational; guests: number; portions: Rational };

/**
 * Portions eaten of each recipe by the last done events that noted what was left of it and who came: all portions over
 * all guests, so that a large party counts for more. What was not noted counts nowhere.
 */
export const eatenAverages = (
  events: readonly Event[],
  today: Facts,
  most = lastParties,
): ReadonlyMap<string, EatenAverage> => {
  const found = new Map<string, Eaten[]>();
  for (const event of notedLately(events))
    for (const [recipe, eaten] of eatenAt(event, today)) {
      const known = found.get(recipe) ?? [];
      if (known.length < most) found.set(recipe, [...known, eaten]);
    }
  return new Map([...found].map(([recipe, parties]) => [recipe, averageOf(recipe, parties)]));
};

const averageOf = (recipe: string, parties: readonly Eaten[]): EatenAverage => {
  const eaten = sum(parties.map((one) => one.eaten));
  const guests = Rational.of(parties.reduce((n, one) => n + one.guests, 0));
  const portions = sum(parties.map((one) => one.portions));
  return {
    recipe,
    name: parties[0]!.name,
    parties: parties.length,
    aGuest: eaten.over(guests),
    share: eaten.over(portions).times(Rational.of(100)),
    ranOut: parties.filter(({ left }) => left.isZero).length,
  };
};

/** By recipe, as one may be on a menu twice: known where it was noted for each of its dishes. */
const eatenAt = (event: Event, today: Facts): Map<string, Eaten> => {
  const found = new Map<string, Eaten>();
  const guests = guestsWhoCame(event);
  const portions = portionsWhoCame(event);
  if (!guests || portions.isZero) return found;
  const dishes = dishesEaten(event, today);
  for (const { recipe } of dishes) {
    const all = dishes.filter((one) => one.recipe.key === recipe.key);
    if (found.has(recipe.key) || all.some(({ eaten }) => eaten === undefined)) continue;
    const eaten = sum(all.map((one) => one.eaten!));
    const left = sum(all.map((one) => one.left!));
    found.set(recipe.key, { name: recipe.name, eaten, left, guests, portions });
  }
  return found;
};

const portionsWhoCame = ({ groups, afterwards }: Event): Rational =>
  sum(
    groups.map(({ key, portion }) =>
      exact(portion).times(Rational.of(afterwards?.came.find(({ group }) => group === key)?.guests ?? 0)),
    ),
  );

/**
 * Hours worked for ten guests by the last done events that noted them and who came: by kind, where they were noted for
 * every line of it that goes by the hour; or by the name of a line.
 */
export const hoursAverages = (
  events: readonly Event[],
  by: 'kind' | 'line',
  most = lastParties,
): HoursAverage[] => {
  const found = new Map<
    string,
    { kind: CostKind; name: string; parties: { hours: Rational; guests: number }[] }
  >();
  for (const event of notedLately(events)) {
    const guests = guestsWhoCame(event);
    if (!guests) continue;
    for (const { id, kind, name, hours } of hoursAt(event, by)) {
      const known = found.get(id) ?? { kind, name, parties: [] };
      if (known.parties.length < most) known.parties.push({ hours, guests });
      found.set(id, known);
    }
  }
  return [...found.values()].map(({ kind, name, parties }) => ({
    kind,
    name,
    parties: parties.length,
    perTen: sum(parties.map(({ hours }) => hours))
      .times(Rational.of(10))
      .over(Rational.of(parties.reduce((n, { guests }) => n + guests, 0))),
  }));
};

type HoursAt = { id: string; kind: CostKind; name: string; hours: Rational };

const hoursAt = ({ costs, afterwards }: Event, by: 'kind' | 'line'): HoursAt[] => {
  const groups = new Map<string, { line: CostLine; hours: (Rational | undefined)[] }>();
  for (const line of costs) {
    const noted = afterwards?.spent.find((one) => one.line === line.key)?.hours;
    // A line that goes by no hours is asked about only where hours were noted for it.
    if (!noted && !('rate' in line.by)) continue;
    const id = by === 'kind' ? line.kind : lineId(line);
    const group = groups.get(id) ?? { line, hours: [] };
    group.hours.push(noted ? exact(noted) : undefined);
    groups.set(id, group);
  }
  return [...groups].flatMap(([id, { line, hours }]) => {
    const known = hours.filter((one) => one !== undefined);
    return known.length < hours.length
      ? []
      : [{ id, kind: line.kind, name: by === 'kind' ? line.kind : line.name, hours: sum(known) }];
  });
};

const lineId = ({ kind, name }: Pick<CostLine, 'kind' | 'name'>): string => `${kind} ${normalName(name)}`;

/** The average for a cost line, by its kind and name. */
export const hoursOf = (
  averages: readonly HoursAverage[],
  line: Pick<CostLine, 'kind' | 'name'>,
): HoursAverage | undefined => averages.find((one) => lineId(one) === lineId(line));

/** The share to plan a dish with, in whole per cent rounded up; undefined above 100, which no share of guests is. */
export const shareFrom = ({ share }: EatenAverage): number | undefined => {
  const whole = Number(share.ceil());
  return whole > 100 ? undefined : whole;
};

/** Hours of each of so many people for so many guests, up to a quarter of an hour. */
export const hoursFrom = ({ perTen }: HoursAverage, guests: number, people: number): Rational => {
  const all = perTen.times(Rational.of(guests)).over(Rational.of(10 * Math.max(1, people)));
  return all.times(Rational.of(4)).roundedUp().over(Rational.of(4));
};
