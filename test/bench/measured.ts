import type { FastifyInstance, FastifyRequest } from 'fastify';
import type { Facts } from '../../src/core/facts/facts.js';
import { coming } from '../../src/store/coming.js';
import { eventFacts } from '../../src/store/facts.js';
import { today } from './kitchen/days.js';
import { measured as event } from './kitchen/events.js';

/** A page, and what it loads: `facts` asks the store exactly as the page does. */
export type Measured = { name: string; page: string; facts(request: FastifyRequest): Promise<unknown> };

export const pages: readonly Measured[] = [
  {
    name: 'event page',
    page: `/events/${event}`,
    facts: async ({ server: { house } }) => [
      await eventFacts(house.db, [event]),
      await coming(house.db, today),
    ],
  },
];

/** Where the facts of a page are answered as bare JSON, by the process that answers the page. */
export const factsAt = (name: string): string => `/bench/${name.replaceAll(' ', '-')}`;

export const serveFacts = (app: FastifyInstance): void => {
  for (const { name, facts } of pages)
    app.get(factsAt(name), async (request, reply) =>
      reply.type('application/json; charset=utf-8').send(JSON.stringify(plain(await facts(request)))),
    );
};

/** JSON has no maps, so they leave as lists. */
const plain = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(plain);
  if (!isLoaded(value)) return value;
  const { kitchen, places, ingredients, recipes } = value.facts;
  return {
    ...value,
    facts: { kitchen, places: list(places), ingredients: list(ingredients), recipes: list(recipes) },
  };
};

const isLoaded = (value: unknown): value is { facts: Facts } =>
  typeof value === 'object' && value !== null && 'facts' in value;

const list = <T>(map: ReadonlyMap<string, T>): T[] => [...map.values()];
