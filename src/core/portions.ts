import { type Dealt, deal } from './deal.js';
import { harder, type Verdict } from './diets.js';
import type { Course, Dish, Event, Guest } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import { type Eaters, fill, type Shortage } from './fill.js';
import { countsFor } from './kept-apart.js';
import { recipeOf } from './lookup.js';
import { type Bin, binsOf, isOpenTo } from './portion-bins.js';
import { listed } from './problems.js';
import { Rational } from './quantity/rational.js';
import { eatersOf } from './requirements.js';

/** What a guest's diets leave them of each dish that their group is served, in one course. */
export type Taking = { guest: Guest; verdicts: ReadonlyMap<Dish, Verdict> };

/** Portions that do not reach: these dishes hold so many for those guests, who need more. */
export type Short = {
  course: Course;
  group: string;
  names: string[];
  portions: number;
  /** How many those guests are; so many more than the portions go without. */
  guests: number;
  who: Guest[];
  /** More portions of plated dishes among them, that are kept by name for others. */
  keptForOthers: number;
  /** Whether guests serve themselves from one of the dishes, so that everybody takes of it. */
  shared: boolean;
  /** Whether there is enough for all once what is in the other dishes is known. */
  unlessKnown: boolean;
};

/** What of a course reaches: portions that do not, the hardest verdict a guest must be content with, and who gets what. */
export type Reach = { short: Short[]; verdicts: Map<Guest, Verdict>; dealt: Dealt };

/** Guests who depend on what is in a dish: those who said something of what they do not eat. */
export const isChoosy = ({ answered, diets, avoids, other }: Guest): boolean =>
  answered && diets.length + avoids.length + other.length > 0;

/**
 * Whether the portions of a course reach for the guests who depend on what is in a dish, group by group. A plated dish
 * feeds as many heads as it is made for, those guests first, and portions kept by name go to nobody else. Of one that guests serve themselves from everybody takes at
 * the rate it is made for, and what then is left must reach them; portions kept for a guest are not taken by others.
 * Over-catering is no portion, and a part of one is nobody's want. As many as can be are given what they can eat, as few
 * as can be of these what is not known, then as few as can be what may contain what they avoid.
 */
export const reachOf = (course: Course, event: Event, taking: readonly Taking[], facts: Facts): Reach => {
  const made = new Map(course.dishes.map((dish) => [dish, eatersOf(dish.eaters, event)]));
  const short: Short[] = [];
  const verdicts = new Map<Guest, Verdict>();
  const dealt = new Map<Guest, ReadonlyMap<Dish, number>>();
  for (const { key, guests } of event.groups) {
    const those = taking.filter(({ guest }) => guest.group === key && isChoosy(guest));
    if (those.length === 0) continue;
    const others = Math.max(0, guests - those.reduce((n, { guest }) => n + guest.count, 0));
    const bins = course.dishes.flatMap((dish) =>
      binsOf(dish, course, made.get(dish)!.get(key) ?? Rational.zero, {
        others,
        guests,
        named: namedFor(dish, key, taking),
      }),
    );
    const alike = alikeIn(those, bins, course, facts);
    const sizes = bins.map(({ size }) => size);
    const given = fill(alike, sizes);
    for (const one of shortagesOf(alike, sizes, given.shortages))
      short.push({ course, group: key, ...inWords(one, alike, bins, facts) });
    for (const [guest, portions] of deal(alike, bins, given, (cost) => cost !== costs.unknown))
      dealt.set(guest, portions);
    for (const [at, { from, who }] of alike.entries()) {
      const hardest = from.reduce(
        (worst, { cost }, i) => (given.given[at]![i]! > 0 ? harder(worst, verdictOf(cost)) : worst),
        'yes' as Verdict,
      );
      for (const guest of who) verdicts.set(guest, hardest);
    }
  }
  return { short, verdicts, dealt };
};

/** Heads of a group for whom portions of a dish are kept by name, and who could eat of it. */
const namedFor = (dish: Dish, group: string, taking: readonly Taking[]): number =>
  taking.reduce((n, { guest, verdicts }) => {
    const theirs = guest.group === group && dish.keptFor.includes(guest.key);
    return theirs && (verdicts.get(dish) ?? 'no') !== 'no' ? n + guest.count : n;
  }, 0);

/** Guests with the same choice of portions. */
type Alike = Eaters & { guests: number; who: Guest[] };

// Many more than any number of guests, so that fewest not known come before fewest that may contain.
const costs: Partial<Record<Verdict, number>> = { yes: 0, may: 1, unknown: 1e6 };
const verdictOf = (cost: number): Verdict => (cost === 0 ? 'yes' : cost === 1 ? 'may' : 'unknown');

const alikeIn = (taking: readonly Taking[], bins: readonly Bin[], course: Course, facts: Facts): Alike[] => {
  const found = new Map<string, Alike>();
  for (const { guest, verdicts } of taking) {
    const from = bins.flatMap((one, bin) => {
      const cost = costs[verdicts.get(one.dish) ?? 'no'];
      if (cost === undefined || !countsFor(guest, one.dish, course, facts)) return [];
      return isOpenTo(guest, one, facts) ? [{ bin, cost }] : [];
    });
    if (!from.some(({ cost }) => cost !== costs.unknown)) continue;
    const mark = from.map(({ bin, cost }) => `${bin} ${cost}`).join();
    const known = found.get(mark) ?? { guests: 0, from, who: [] };
    known.guests += guest.count;
    known.who.push(guest);
    found.set(mark, known);
  }
  return [...found.values()];
};

type Open = Shortage & { unlessKnown: boolean };

/** Portions that do not reach at all, then those that would once what is not known is known. */
const shortagesOf = (
  alike: readonly Alike[],
  sizes: readonly number[],
  none: readonly Shortage[],
): Open[] => {
  const known = alike.map(({ guests, from }) => ({
    guests,
    from: from.filter(({ cost }) => cost !== costs.unknown),
  }));
  const without = new Set(none.flatMap(({ eaters }) => eaters));
  return [
    ...none.map((one) => ({ ...one, unlessKnown: false })),
    ...fill(known, sizes)
      .shortages.filter(({ eaters }) => !eaters.some((at) => without.has(at)))
      .map((one) => ({ ...one, unlessKnown: true })),
  ];
};

const inWords = (
  { eaters, bins: from, guests, portions, unlessKnown }: Open,
  alike: readonly Alike[],
  bins: readonly Bin[],
  facts: Facts,
): Omit<Short, 'course' | 'group'> => {
  const dishes = [...new Set(from.map((at) => bins[at]!))];
  const other = bins.filter(
    (bin) => bin.kept && !bin.shared && !dishes.includes(bin) && dishes.some(({ dish }) => dish === bin.dish),
  );
  return {
    names: [...new Set(dishes.map(({ dish }) => recipeOf(dish.recipe, facts).name))],
    portions,
    guests,
    who: eaters.flatMap((at) => alike[at]!.who),
    keptForOthers: other.reduce((n, { size }) => n + size, 0),
    shared: dishes.some(({ shared }) => shared),
    unlessKnown,
  };
};

/** For whom a dish is made, in heads: "for everybody", "for 8 adults and 3 children", "for 6". */
export const madeForWords = ({ eaters }: Pick<Dish, 'eaters'>, event: Event): string => {
  const made = eatersOf(eaters, event);
  const heads = event.groups.map(({ key, name, guests }) => ({
    name: event.groups.length > 1 ? ` ${name.toLowerCase()}` : '',
    made: Number((made.get(key) ?? Rational.zero).floor()),
    guests,
  }));
  if (heads.every((group) => group.made >= group.guests)) return 'for everybody';
  const some = heads.filter((group) => group.made > 0).map((group) => `${group.made}${group.name}`);
  return some.length > 0 ? `for ${listed(some)}` : 'for nobody';
};
