import type { FastifyRequest } from 'fastify';
import { addDays, clockOf } from '../../core/calendar.js';
import type { Measure } from '../../core/facts/common.js';
import type { Event } from '../../core/facts/event.js';
import { type Facts, factsOf } from '../../core/facts/facts.js';
import type { Recipe } from '../../core/facts/recipe.js';
import { latestSteps } from '../../core/latest.js';
import { exact } from '../../core/quantity/amount.js';
import { isRead, type Read, readMoreThanZero } from '../../core/reading.js';
import { readMeasure } from '../../core/reading-measures.js';
import { dishNeed, requirementsOf } from '../../core/requirements.js';
import type { Asked } from '../../core/sheets/scaled-recipe.js';
import { eventFacts } from '../../store/facts.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import { query } from '../house.js';

/** How much of a recipe a page was asked for, with what could not be read of it. */
export type PageAsked = { asked: Asked | undefined; form: Form; faults: Fault[] };

/** Portions and their size as typed into the boxes beside the recipe; nothing typed is the base recipe. */
export const typedIn = (request: FastifyRequest, { yield: makes }: Recipe): PageAsked => {
  const form = { portions: query(request, 'portions').trim(), each: query(request, 'each').trim() };
  if (form.portions === '' && form.each === '') return { asked: undefined, form, faults: [] };
  const portions = readMoreThanZero(form.portions || (makes.portions ?? '1'));
  const each: Read<Measure | null> =
    form.each === '' ? { value: null } : readMeasure(withUnit(form.each, makes));
  const faults: Fault[] = [];
  if (!isRead(portions)) faults.push({ field: 'portions', label: 'Portions', sentence: portions.sentence });
  if (!isRead(each)) faults.push({ field: 'each', label: 'Each', sentence: each.sentence });
  const asked =
    isRead(portions) && isRead(each) ? { portions: exact(portions.value), portion: each.value } : undefined;
  return { asked, form, faults };
};

/** A bare figure is in the recipe's own measure. */
const withUnit = (each: string, { weight, volume }: Recipe['yield']): string => {
  const own = weight ? 'g' : volume ? 'ml' : '';
  return /^[\d.,/ ]+$/.test(each) ? `${each} ${own}` : each;
};

/** A recipe for one dish of an event, with the latest start of each step of the day, by the step's key. */
export type DishAsked = { asked: Asked; facts: Facts; recipe: Recipe; starts: Starts };
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
    return { asked, facts, recipe: own.recipe, starts: startsIn(event, dish.key, key, facts) };
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
