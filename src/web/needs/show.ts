import type { FastifyRequest } from 'fastify';
import { isLive } from '../../core/prep.js';
import { type Shown, showQuantity } from '../../core/quantity/show.js';
import { type Needs, needsOf } from '../../core/sheets/needs.js';
import { needsSheet } from '../../core/sheets/needs-sheet.js';
import { list } from '../../store/events.js';
import { eventFacts } from '../../store/facts.js';
import { answerSheet } from '../answer.js';
import { printedNow, todayOf } from '../coming.js';
import { type CostIngredient, ingredientRows } from '../costing/rows.js';
import { addressesOf } from '../events/addresses.js';
import { allergenWords, costShown } from '../events/dishes.js';
import { texts } from '../form.js';
import { formatFor } from '../format.js';
import { Refused } from '../guards.js';
import type { Answerer } from '../house.js';
import { pageOf } from '../links.js';
import { withMend } from '../mends.js';

export type NeedsPage = {
  choices: { key: string; label: string; on: boolean }[];
  events: {
    name: string;
    href: string;
    cost: string;
    dishes: { portions: Shown; name: string; allergens: ReturnType<typeof allergenWords>; cost: string }[];
  }[];
  components: { amount: Shown | undefined; name: string; href: string; events: string }[];
  ingredients: CostIngredient[];
  total: string;
  complete: boolean;
  missing: ReturnType<typeof withMend>[];
  foot: string[];
  query: string;
  paper: { left: string; middle: string; right: string; foot: string };
};

const most = 60;

/** What a set of events needs together; all that are prepared for until others are chosen. */
export const showNeeds: Answerer = async (request, reply) => {
  const { db } = request.server.house;
  const rows = (await list(db, { from: todayOf(request), most })).filter(({ archived }) => !archived);
  const asked = texts(request.query as Record<string, string>, 'event');
  const keys = asked.length > 0 ? asked : rows.filter(isLive).map(({ key }) => key);
  const found = await eventFacts(db, [...new Set(keys)].slice(0, most));
  if (!found || found.events.length < Math.min(new Set(asked).size, most))
    throw new Refused('One of these events is gone: it was removed, or never was.', 404);
  const answer = needsOf(found.events, found.facts);
  const sheet = needsSheet(answer);
  const f = formatFor(request.kitchen);
  const choices = rows.map(({ key, name, date }) => ({
    key,
    label: `${f.date(date)}, ${name}`,
    on: keys.includes(key),
  }));
  return answerSheet(reply, sheet, 'needs/show', {
    title: 'What these events need',
    nav: 'Costing',
    ...needsPage(request, answer.value),
    missing: answer.problems.filter(({ weight }) => weight !== 'check').map(withMend),
    foot: sheet.foot,
    choices,
    query: keys.map((key) => `event=${encodeURIComponent(key)}`).join('&'),
  });
};

const needsPage = (request: FastifyRequest, needs: Needs) => {
  const { kitchen } = request;
  const f = formatFor(kitchen);
  return {
    events: needs.events.map(({ event, cost, dishes }) => ({
      name: `${event.name}, ${f.date(event.date)}, ${f.count(cost.guests, 'guest')}`,
      href: addressesOf(event.key).page,
      cost: costShown(cost.total, cost.complete, f),
      dishes: dishes.map(({ dish, allergens }) => ({
        portions: showQuantity({ value: dish.need.portions, base: 'each' }, kitchen),
        name: dish.need.recipe.name,
        allergens: allergenWords(allergens, f),
        cost: costShown(dish.cost, dish.complete, f),
      })),
    })),
    components: needs.components.map(({ recipe, makes, events }) => ({
      amount: makes && showQuantity(makes, kitchen),
      name: recipe.name,
      href: pageOf('recipe', recipe.key),
      events: events.map(({ name }) => name).join(', '),
    })),
    ingredients: ingredientRows(needs),
    total: costShown(needs.total, needs.complete, f),
    complete: needs.complete,
    paper: {
      left: kitchen.name,
      middle: needs.events.map(({ event }) => event.name).join(', '),
      right: 'Needs',
      foot: `${printedNow(request)} Void when guests, a menu, a recipe or a price change.`,
    },
  };
};
