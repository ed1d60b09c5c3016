import { checkYield } from '../batch.js';
import { priceProblems } from '../costing.js';
import { type Coverage, coverageOf, coverageProblems } from '../coverage.js';
import type { Event } from '../facts/event.js';
import { type Facts, factsOf } from '../facts/facts.js';
import { type DishDay, driveProblems, latestSteps } from '../latest.js';
import { ovenAsks, ovenProblems } from '../ovens.js';
import type { Problem } from '../problem.js';
import { type CourseNeed, requirementsOf, worstFirst } from '../requirements.js';
import { unreadIn } from './allergen-matrix.js';

/** An event worked out as far as it takes to say what must be settled, without its figures of money. */
export type Worked = {
  event: Event;
  facts: Facts;
  needs: CourseNeed[];
  coverage: Coverage;
  days: DishDay[];
};

/** What an event needs, who can eat it and when its work starts; a done event from the facts it was served with. */
export const workOut = (event: Event, today: Facts): Worked => {
  const facts = factsOf(event, today);
  const needs = requirementsOf(event, facts);
  return { event, facts, needs, coverage: coverageOf(event, facts), days: latestSteps(event, needs, facts) };
};

/** What must be settled about an event, worst first: who has nothing to eat, ovens that clash, facts that are missing. */
export const toSettle = ({ event, facts, needs, coverage, days }: Worked): Problem[] => {
  const dishes = needs.flatMap((course) => course.dishes);
  const recipes = new Set(dishes.flatMap((need) => need.recipes.map(({ recipe }) => recipe)));
  return worstFirst([
    ...coverageProblems(event, coverage),
    ...driveProblems(event, days, facts),
    ...ovenProblems(event, ovenAsks(event, days, facts), facts),
    ...dishes.flatMap((need) => [...need.problems, ...priceProblems(need.recipes, facts)]),
    ...[...recipes].flatMap((recipe) => checkYield(recipe, facts)),
    ...unreadIn(
      dishes.map(({ recipe }) => recipe),
      facts,
    ),
  ]);
};
