import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { type Facts, factsOf } from '../../core/facts/facts.js';
import { loadFacts } from '../../store/facts.js';
import { namesOf } from '../../store/names.js';
import { averagesNow } from '../averages/parties.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, rows, texts } from '../form.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { fragment, page, wantsPart } from '../page.js';
import { save } from '../save.js';
import { addressesOf } from './addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from './event.js';
import { type EatenOffer, eatenOffers, eatenPressed } from './menu-eaten.js';
import { menuForm, type Named } from './menu-form.js';
import { readMenu } from './menu-read.js';
import { menuPressed } from './menu-rows.js';
import { courseWays, dishWays, keepers, servedWords } from './menu-served.js';
import { type Ripple, ripple } from './ripple.js';

export type MenuPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  groups: { key: string; name: string; words: string }[];
  recipes: string[];
  ways: { course: Choice[]; dish: Choice[] };
  /** Guests for whom portions may be kept. */
  keepers: Choice[];
  /** How each dish of each course is served, in words. */
  servedWords: string[][];
  /** What the last parties offer for each dish of each course. */
  eaten: (EatenOffer | undefined)[][];
  currency: string;
  served: boolean;
  goOn: string;
  ripple: Ripple;
};

/** The menu of an event: its courses and dishes, when they are served and who eats them. */
export const askForMenu: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const recipes = await recipesFor(request, one);
  const f = formatFor(request.kitchen);
  const form = menuForm(one.event, one.revision, (key) => nameOf(key, recipes), f);
  return draw(reply, one, recipes, form, [], readyToType(form));
};

/** Gives every course without dishes an empty row, and names the first of them to type in. */
const readyToType = (form: Form): string => {
  const at = rows(form, 'courses').flatMap((course, i) => {
    if (rows(course, 'dishes').length > 0) return [];
    course.dishes = [{}];
    return [`courses[${i}].dishes[0]`];
  });
  return at[0] ?? '';
};

/** What the menu typed would change. Nothing is saved. */
export const previewMenu: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const recipes = await recipesFor(request, one);
  return fragment(reply, 'events/ripple-update', await modelOf(reply, one, recipes, request.body as Form));
};

/** Saves the menu; a button of a row only draws the form again. */
export const saveMenu: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event } = one;
  const form = request.body as Form;
  const recipes = await recipesFor(request, one);
  const { eaten } = await averagesNow(request.server.house.db);
  const pressed = menuPressed(form) ?? eatenPressed(form, { eaten, recipes });
  if (pressed) return draw(reply, one, recipes, pressed.form, [], pressed.at);
  const reading = new Reading(form);
  const courses = readMenu(reading, knownFor(request, event, recipes));
  const redraw = (faults: readonly Fault[]) => draw(reply, one, recipes, form, faults);
  const change = (doc: Event) => ({ ...doc, courses });
  return save(reply, { entity: 'event', key: event.key, form, faults: reading.faults, change, redraw });
};

/** The recipes a menu may name; a done event knows only those that were served, by the names they had. */
const recipesFor = async ({ server }: FastifyRequest, { event }: OneEvent): Promise<Named[]> => {
  if (event.served) return event.served.recipes;
  return (await namesOf(server.house.db)).recipes;
};

const knownFor = ({ kitchen }: FastifyRequest, event: Event, recipes: readonly Named[]) => ({
  event,
  recipes,
  currency: kitchen.currency,
  f: formatFor(kitchen),
});

const nameOf = (key: string, recipes: readonly Named[]): string =>
  recipes.find((one) => one.key === key)?.name ?? '';

const draw = async (
  reply: FastifyReply,
  one: OneEvent,
  recipes: readonly Named[],
  form: Form,
  faults: readonly Fault[] = [],
  goOn = '',
) => {
  const model = { ...(await modelOf(reply, one, recipes, form)), goOn };
  if (wantsPart(reply)) reply.header('hx-retarget', '#menu-form').header('hx-reswap', 'outerMorph');
  return page(
    reply,
    'events/menu',
    { title: `Menu, ${one.event.name}`, nav: 'Events', form, faults, ...model },
    'events/_menu-form',
  );
};

const modelOf = async (
  reply: FastifyReply,
  one: OneEvent,
  recipes: readonly Named[],
  form: Form,
): Promise<MenuPage> => {
  const { request } = reply;
  const { event } = one;
  const reading = new Reading(form);
  const courses = readMenu(reading, knownFor(request, event, recipes));
  const { eaten } = await averagesNow(request.server.house.db);
  const changed = reading.faults.length === 0 ? { ...event, courses } : undefined;
  const choices = keepers(event, one.facts);
  return {
    head: await headOf(request, one),
    at: addressesOf(event.key),
    groups: groupsFor(form, event),
    recipes: recipes
      .filter(({ archived }) => !archived)
      .map(({ name }) => name)
      .sort((a, b) => a.localeCompare(b, request.kitchen.locale)),
    ways: { course: courseWays, dish: dishWays },
    keepers: choices,
    servedWords: rows(form, 'courses').map((course) =>
      rows(course, 'dishes').map((dish) => servedWords(dish, choices)),
    ),
    eaten: eatenOffers(form, { eaten, recipes }, formatFor(request.kitchen)),
    currency: request.kitchen.currency,
    served: event.served !== null,
    goOn: '',
    ripple: ripple(event, changed, await factsWith(request, one, changed)),
  };
};

/** The facts of an event, and of the recipes that a change would bring in. */
const factsWith = async (
  { server }: FastifyRequest,
  { event, facts }: OneEvent,
  changed: Event | undefined,
): Promise<Facts> => {
  const known = factsOf(event, facts);
  const wanted = keysOf(changed ?? event);
  if (wanted.every((key) => known.recipes.has(key))) return facts;
  const more = await loadFacts(server.house.db, {
    recipes: [...keysOf(event), ...wanted],
    places: [event.place],
  });
  return more ?? facts;
};

const keysOf = ({ courses }: Event): string[] =>
  courses.flatMap(({ dishes }) => dishes.map(({ recipe }) => recipe));

/** The groups that the boxes of each dish stand for: those the form was drawn with, else those of the event. */
const groupsFor = (form: Form, { groups }: Event) => {
  const keys = texts(form, 'groups');
  const shown = keys.map(
    (key) => groups.find((group) => group.key === key) ?? { key, name: 'Taken out meanwhile' },
  );
  return shown.map(({ key, name }) => ({
    key,
    name,
    words: shown.length > 1 ? name.toLowerCase() : 'guests',
  }));
};
