import type { FastifyRequest } from 'fastify';
import { addDays, clockOf } from '../../core/calendar.js';
import type { Event } from '../../core/facts/event.js';
import { type Facts, factsOf } from '../../core/facts/facts.js';
import type { Place } from '../../core/facts/place.js';
import type { Recipe } from '../../core/facts/recipe.js';
import { latestSteps } from '../../core/latest.js';
import { dishNeed, requirementsOf } from '../../core/requirements.js';
import type { Asked } from '../../core/sheets/scaled-recipe.js';
import { eventFacts } from '../../store/facts.js';
import { query } from '../house.js';

/** A recipe for one dish of an event, with the latest start of each step of the day, by the step's key. */
export type DishAsked = {
  asked: Asked;
  facts: Facts;
  recipe: Recipe;
  starts: Starts;
  venue: Place | undefined;
};
export type Starts = ReadonlyMap<string, { date: string; time: string }>;

/** The recipe as a dish of an event needs it, by that event's facts; undefined when it is not in that dish. */
export const forDish = async (request: FastifyRequest, key: string): Promise<DishAsked | undefined> => {
  const found = await eventFacts(request.server.house.db, [query(request, 'event')]);
  const event = found?.events[0];
  const dishes = event?.courses.flatMap(({ dishes }) => dishes) ?? [];
  const wanted = query(request, 'dish');
  if (!found || !event) return undefined;
  const facts = factsOf(event, found.facts);
  for (const dish of dishes) {
    if (wanted !== '' && dish.key !== wanted) continue;
    const need = dishNeed(dish, event, facts);
    const own = need.recipes.find(({ recipe }) => recipe.key === key);
    if (!own) continue;
    const asked =
      own.recipe === need.recipe
        ? { portions: need.portions, portion: dish.portion }
        : { batches: own.factor };
    const starts = startsIn(event, dish.key, key, facts);
    return { asked, facts, recipe: own.recipe, starts, venue: facts.places.get(event.place) };
  }
  return undefined;
};

const startsIn = (event: Event, dish: string, recipe: string, facts: Facts): Starts => {
  const days = latestSteps(event, requirementsOf(event, facts), facts);
  const steps = days.find((day) => day.dish.dish.key === dish)?.steps ?? [];
  return new Map(
    steps
      .filter(({ need }) => need.recipe.key === recipe)
      .map(({ step, start }) => [
        step.key,
        { date: addDays(event.date, Math.floor(start / 1440)), time: clockOf(start) },
      ]),
  );
};
