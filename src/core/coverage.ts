import { dietName, type Judged, judgeGuest, type Verdict } from './diets.js';
import type { Event, Guest } from './facts/event.js';
import type { Facts } from './facts/facts.js';
import { recipeOf } from './lookup.js';
import type { Problem } from './problem.js';
import { listed, ofEvent } from './problems.js';
import { eatersOf, headCount } from './requirements.js';

export type CoverageCell = Judged & { dish: string; course: string; name: string };

/** What a guest finds in one course: yes, only with a caution (may), only what isn't known, or nothing. */
export type CourseCover = { course: string; name: string; has: Verdict };

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
  guest.name || `${guest.count} ${wordsFor(guest).join(', ') || 'guests'}`;

const order: Verdict[] = ['yes', 'may', 'unknown', 'no'];

/**
 * For each guest with a diet or not heard from: what they can eat of each dish they are served, and what that leaves
 * them in each course. Nobody is covered by a dish they can't eat, by an unread label or by not having answered.
 */
export const coverageOf = (event: Event, facts: Facts): Coverage => {
  const rows = event.guests.map((guest) => rowFor(guest, event, facts));
  return { rows, notAnswered: notAnswered(event) };
};

const rowFor = (guest: Guest, event: Event, facts: Facts): CoverageRow => {
  const cells: CoverageCell[] = [];
  const courses: CourseCover[] = [];
  for (const course of event.courses) {
    let has: Verdict = 'no';
    for (const dish of course.dishes) {
      if (eatersOf(dish.eaters, event).get(guest.group)?.isZero ?? true) continue;
      const recipe = recipeOf(dish.recipe, facts);
      const judged = judgeGuest(guest, recipe, facts);
      cells.push({ ...judged, dish: dish.key, course: course.key, name: recipe.name });
      if (order.indexOf(judged.verdict) < order.indexOf(has)) has = judged.verdict;
    }
    courses.push({ course: course.key, name: course.name, has });
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
    const lacks = (has: Verdict) => courses.filter((c) => c.has === has).map((c) => c.name.toLowerCase());
    const [nothing, unknown, may] = [lacks('no'), lacks('unknown'), lacks('may')];
    const verb = guest.count > 1 ? 'have' : 'has';
    if (nothing.length)
      say('stop', 'nothing-to-eat', `${name} ${verb} nothing to eat in ${listed(nothing, 'or')}.`);
    if (unknown.length)
      say('ask', 'not-known', `${name}: what is in ${listed(unknown, 'or')} is not fully known.`);
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
