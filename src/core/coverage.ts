import { dietName, type Judged, judgeGuest, type Verdict } from './diets.js';
import type { Dish, Event, Guest } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import { recipeOf } from './lookup.js';
import type { Problem } from './problem.js';
import { listed, ofEvent } from './problems.js';
import type { Rational } from './quantity/rational.js';
import { eatersOf, headCount } from './requirements.js';

export type CoverageCell = Judged & { dish: string; course: string; name: string };

/**
 * What a guest finds in one course: yes, only with a caution (may), only what isn't known, or nothing; and the same by
 * their diets alone, without a wish in their own words that only the cook can judge.
 */
export type CourseCover = { course: string; name: string; has: Verdict; byDiets: Verdict };

export type CoverageRow = {
  guest: Guest | undefined;
  who: string;
  count: number;
  diets: string[];
  cells: CoverageCell[];
  courses: CourseCover[];
};

export type Coverage = { rows: CoverageRow[]; notAnswered: number };

/** Guests who have not said what they eat, by name or by number; never below zero. */
export const notAnswered = (event: Event): number => {
  const asked = event.guests.filter((guest) => !guest.answered).reduce((n, guest) => n + guest.count, 0);
  const answered = event.guests.filter((guest) => guest.answered).reduce((n, guest) => n + guest.count, 0);
  return Math.max(asked, headCount(event) - answered - event.eatsAll);
};

/** How many more answers there are than guests; above zero one of the figures is wrong. */
export const tooManyAnswers = (event: Event): number =>
  Math.max(0, event.guests.reduce((n, guest) => n + guest.count, 0) + event.eatsAll - headCount(event));

const wordsFor = (guest: Guest): string[] => [
  ...guest.diets.map(dietName),
  ...(guest.other ? [guest.other] : []),
];

/** A guest in words: "Ana", or "3 vegetarian" for guests known by number. */
const named = (guest: Guest): string =>
  guest.name || `${guest.count} ${wordsFor(guest).join(', ') || (guest.count > 1 ? 'guests' : 'guest')}`;

const order: Verdict[] = ['yes', 'may', 'unknown', 'no'];
const easier = (a: Verdict, b: Verdict): Verdict => (order.indexOf(b) < order.indexOf(a) ? b : a);

/**
 * For each guest with a diet or not heard from: what they can eat of each dish they are served, and what that leaves
 * them in each course. Nobody is covered by a dish they can't eat, by an unread label or by not having answered.
 */
export const coverageOf = (event: Event, facts: Facts): Coverage => {
  const dishes = event.courses.flatMap((course) => course.dishes);
  const eaters = new Map(dishes.map((dish) => [dish, eatersOf(dish.eaters, event)]));
  const rows = event.guests.map((guest) => rowFor(guest, event, eaters, facts));
  return { rows, notAnswered: notAnswered(event) };
};

const rowFor = (
  guest: Guest,
  event: Event,
  eaters: ReadonlyMap<Dish, ReadonlyMap<string, Rational>>,
  facts: Facts,
): CoverageRow => {
  const cells: CoverageCell[] = [];
  const courses: CourseCover[] = [];
  for (const course of event.courses) {
    let has: Verdict = 'no';
    let byDiets: Verdict = 'no';
    for (const dish of course.dishes) {
      if (eaters.get(dish)!.get(guest.group)?.isZero ?? true) continue;
      const recipe = recipeOf(dish.recipe, facts);
      const judged = judgeGuest(guest, recipe, facts);
      const { verdict, reasons } = judged;
      cells.push({ verdict, reasons, dish: dish.key, course: course.key, name: recipe.name });
      has = easier(has, judged.verdict);
      const plain = guest.other ? judgeGuest({ ...guest, other: '' }, recipe, facts) : judged;
      byDiets = easier(byDiets, plain.verdict);
    }
    courses.push({ course: course.key, name: course.name, has, byDiets });
  }
  return { guest, who: named(guest), count: guest.count, diets: wordsFor(guest), cells, courses };
};

/** What must be settled about diets: who has nothing in a course, who has only what isn't known, who hasn't answered. */
export const coverageProblems = (event: Event, coverage: Coverage): Problem[] => {
  const problems: Problem[] = [];
  const say = (weight: Problem['weight'], code: string, sentence: string) =>
    problems.push({ weight, code, sentence, subject: ofEvent(event, 'guests') });
  for (const { guest, who, diets, courses } of coverage.rows) {
    if (!guest?.answered) continue;
    const name = guest.name && diets.length ? `${who} (${diets.join(', ')})` : who;
    const lacks = (has: Verdict) => courses.filter((c) => c.byDiets === has).map((c) => c.name.toLowerCase());
    const [nothing, unknown, may] = [lacks('no'), lacks('unknown'), lacks('may')];
    const verb = guest.count > 1 ? 'have' : 'has';
    if (nothing.length)
      say('stop', 'nothing-to-eat', `${name} ${verb} nothing to eat in ${listed(nothing, 'or')}.`);
    if (unknown.length)
      say('ask', 'not-known', `${name}: what is in ${listed(unknown, 'or')} is not fully known.`);
    if (guest.other)
      say('ask', 'own-words', `${who}: “${guest.other}” is a wish in their own words, for you to judge.`);
    if (may.length)
      say('check', 'may-contain', `${name}: everything in ${listed(may, 'or')} may contain what they avoid.`);
  }
  const { notAnswered: open } = coverage;
  if (open > 0) {
    const who = open === 1 ? '1 guest has' : `${open} guests have`;
    say('ask', 'not-answered', `${who} not answered about diet.`);
  }
  const over = tooManyAnswers(event);
  if (over > 0) say('check', 'too-many-answers', `${over} more answers about diet than guests.`);
  return problems;
};
