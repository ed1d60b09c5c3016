import { notAnswered } from './answers.js';
import type { Dealt } from './deal.js';
import { dietName, dietOf, harder, type Judged, judgeGuest, type Verdict } from './diets.js';
import type { Course, Dish, Event, Guest } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import { countsFor } from './kept-apart.js';
import { recipeOf } from './lookup.js';
import { isChoosy, type Reach, reachOf, type Short } from './portions.js';
import type { Rational } from './quantity/rational.js';
import { eatersOf } from './requirements.js';

export { notAnswered, tooManyAnswers } from './answers.js';
export { coverageProblems } from './coverage-problems.js';

/**
 * What a guest finds in a dish as it is served to them. `counts` is false where guests serve themselves and nobody
 * said how their portion is kept apart: then it is not known whether they can eat it.
 */
export type CoverageCell = Judged & { dish: string; course: string; name: string; counts: boolean };

/**
 * What a guest finds in one course: yes, only with a caution (may), only what isn't known, or nothing; and the same by
 * their diets alone, without a wish in their own words that only the cook can judge.
 */
export type CourseCover = {
  course: string;
  name: string;
  has: Verdict;
  byDiets: Verdict;
  /** Dishes that would do if only it were said how their portion is kept apart; empty where something else does. */
  apart: string[];
  /** Portions of what they can eat that do not reach for all who depend on them; then they have nothing for sure. */
  short: Short | undefined;
  /** The same, and where it would reach once what is in other dishes is known. */
  few: Short | undefined;
};

export type CoverageRow = {
  guest: Guest | undefined;
  who: string;
  count: number;
  diets: string[];
  /** What is usually minded with their diets, beyond the facts kept here. */
  cautions: string[];
  cells: CoverageCell[];
  courses: CourseCover[];
};

/** `dealt`: whose the portions are of dishes that not all who could eat them can have, course by course. */
export type Coverage = {
  rows: CoverageRow[];
  notAnswered: number;
  short: Short[];
  dealt: Map<Course, Dealt>;
};

/** What a guest does not eat, in words: their diets, their dislikes, that traces do not matter, their own words. */
const wordsFor = ({ diets, avoids, traces, other }: Guest, { kitchen, ingredients }: Facts): string[] => [
  ...diets.map((id) => dietName(id, kitchen)),
  ...avoids.map((key) => `no ${ingredients.get(key)?.name.toLowerCase() ?? key}`),
  ...(!traces && diets.length > 0 ? ['traces do not matter'] : []),
  ...(other ? [other] : []),
];

/** A guest in words: "Ana", or "3 vegetarian" for guests known by number. */
export const guestNamed = (guest: Guest, facts: Facts): string =>
  guest.name ||
  `${guest.count} ${wordsFor(guest, facts).join(', ') || (guest.count > 1 ? 'guests' : 'guest')}`;

const order: Verdict[] = ['yes', 'may', 'unknown', 'no'];
const easier = (a: Verdict, b: Verdict): Verdict => (order.indexOf(b) < order.indexOf(a) ? b : a);

type EatersOf = ReadonlyMap<Dish, ReadonlyMap<string, Rational>>;
type Found = { cells: CoverageCell[]; cover: CourseCover; verdicts: Map<Dish, Verdict> };

/**
 * For each guest with a diet or not heard from: what they can eat of each dish they are served, and what that leaves
 * them in each course. Nobody is covered by a dish they can't eat, by an unread label, by not having answered, by a
 * dish that must be kept apart for them and is not, or by portions that do not reach.
 */
export const coverageOf = (event: Event, facts: Facts): Coverage => {
  const known = answers.get(event);
  if (known?.facts === facts) return known.coverage;
  const coverage = workOut(event, facts);
  answers.set(event, { facts, coverage });
  return coverage;
};

// By the event, so that what was only tried out in a form is forgotten with it.
const answers = new WeakMap<Event, { facts: Facts; coverage: Coverage }>();

const workOut = (event: Event, facts: Facts): Coverage => {
  const dishes = event.courses.flatMap((course) => course.dishes);
  const eaters: EatersOf = new Map(dishes.map((dish) => [dish, eatersOf(dish.eaters, event)]));
  const found = event.courses.map((course) => {
    const taking = event.guests.map((guest) => ({ guest, ...findIn(course, guest, eaters, facts) }));
    return { taking, reach: reachOf(course, event, taking, facts) };
  });
  const rows = event.guests.map((guest, at) => ({
    guest,
    who: guestNamed(guest, facts),
    count: guest.count,
    diets: wordsFor(guest, facts),
    cautions: guest.diets.map((id) => dietOf(id, facts.kitchen)?.caution ?? '').filter(Boolean),
    cells: found.flatMap(({ taking }) => taking[at]!.cells),
    courses: found.map(({ taking, reach }) => withReach(taking[at]!.cover, guest, reach)),
  }));
  return {
    rows,
    notAnswered: notAnswered(event),
    short: found.flatMap(({ reach }) => reach.short),
    dealt: new Map(event.courses.map((course, at) => [course, found[at]!.reach.dealt])),
  };
};

const withReach = (cover: CourseCover, guest: Guest, { short, verdicts }: Reach): CourseCover => {
  const few = short.find(({ who }) => who.includes(guest));
  if (few && !few.unlessKnown) return { ...cover, few, short: few, has: 'no' };
  const content = verdicts.get(guest) ?? 'yes';
  return { ...cover, few, has: harder(cover.has, content), byDiets: harder(cover.byDiets, content) };
};

const findIn = (course: Course, guest: Guest, eaters: EatersOf, facts: Facts): Found => {
  const cells: CoverageCell[] = [];
  const verdicts = new Map<Dish, Verdict>();
  const apart: string[] = [];
  let [has, byDiets]: Verdict[] = ['no', 'no'];
  for (const dish of course.dishes) {
    if (eaters.get(dish)!.get(guest.group)?.isZero ?? true) continue;
    const recipe = recipeOf(dish.recipe, facts);
    const judged = judgeGuest(guest, recipe, facts);
    const counts = !isChoosy(guest) || countsFor(guest, dish, course, facts);
    const served = (verdict: Verdict) => (counts ? verdict : harder(verdict, 'unknown'));
    const verdict = served(judged.verdict);
    const { reasons } = judged;
    cells.push({ verdict, reasons, counts, dish: dish.key, course: course.key, name: recipe.name });
    has = easier(has!, verdict);
    const plain = guest.other ? judgeGuest({ ...guest, other: '' }, recipe, facts).verdict : judged.verdict;
    verdicts.set(dish, served(plain));
    byDiets = easier(byDiets!, served(plain));
    if (!counts && (plain === 'yes' || plain === 'may')) apart.push(recipe.name);
  }
  const cover = {
    course: course.key,
    name: course.name,
    has: has!,
    byDiets: byDiets!,
    apart: byDiets === 'unknown' ? apart : [],
    short: undefined,
    few: undefined,
  };
  return { cells, cover, verdicts };
};
