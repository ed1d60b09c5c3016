import type { FastifyInstance } from 'fastify';
import type { Facts } from '../../src/core/facts/facts.js';
import { coming, preparedOn } from '../../src/store/coming.js';
import { dishesUsing } from '../../src/store/dishes.js';
import { read } from '../../src/store/documents.js';
import { list } from '../../src/store/events.js';
import { consistently, eventFacts, loadFacts } from '../../src/store/facts.js';
import { periods } from '../../src/store/prep-periods.js';
import { printedLabels } from '../../src/store/printed-labels.js';
import { prints } from '../../src/store/printed-sheets.js';
import { acceptedQuote } from '../../src/store/quotes.js';
import { relativesOf } from '../../src/store/recipes.js';
import type { Db } from '../../src/store/schema.js';
import { daysFrom, today } from './kitchen/days.js';
import { measured as event } from './kitchen/events.js';
import { measured as recipe } from './kitchen/recipes.js';

/** A page, and what it loads: `facts` asks the store exactly as the page does. */
export type Measured = { name: string; page: string; facts(db: Db): Promise<unknown> };

const [from, to] = [today, daysFrom(today, 6)];

export const pages: readonly Measured[] = [
  {
    name: 'event page',
    page: `/events/${event}`,
    facts: async (db) => [
      await eventFacts(db, [event]),
      await prints(db, [event]),
      await printedLabels(db),
      await acceptedQuote(db, event),
      await coming(db, today),
    ],
  },
  {
    name: 'recipe page',
    page: `/recipes/${recipe}`,
    facts: (db) =>
      consistently(db, async (trx) => [
        await read(trx, 'recipe', recipe),
        await relativesOf(trx, recipe),
        { facts: await loadFacts(trx, { recipes: [recipe, recipe] }) },
      ]).then(async (found) => [...found, await coming(db, today), await dishesUsing(db, recipe, today)]),
  },
  {
    name: 'week',
    page: '/',
    facts: async (db) => {
      const listed = await list(db, { from, to });
      const later = await list(db, { from: daysFrom(to, 1), most: 40 });
      const keys = new Set([...listed.map(({ key }) => key), ...(await preparedOn(db, { from, to }))]);
      const loaded = (await eventFacts(db, [...keys]))!;
      const ticks = await periods(db, { from, to });
      const open = loaded.events.filter(
        ({ state, date }) => state !== 'done' && state !== 'cancelled' && date >= today,
      );
      const printed = await prints(
        db,
        open.map(({ key }) => key),
      );
      const labels = await printedLabels(db);
      return [listed, later, loaded, ticks, printed, labels, await coming(db, today)];
    },
  },
  {
    name: 'prep sheet',
    page: '/prep',
    facts: async (db) => {
      const keys = await preparedOn(db, { from: today, to: today });
      return [
        await eventFacts(db, keys),
        await periods(db, { from: today, to: today }),
        await coming(db, today),
      ];
    },
  },
];

/** Where the facts of a page are answered as bare JSON, by the process that answers the page. */
export const factsAt = (name: string): string => `/bench/${name.replaceAll(' ', '-')}`;

export const serveFacts = (app: FastifyInstance): void => {
  for (const { name, facts } of pages)
    app.get(factsAt(name), async (_request, reply) => {
      const found = await facts(app.house.db);
      return reply.type('application/json; charset=utf-8').send(JSON.stringify(plain(found)));
    });
};

/** JSON has no maps, so they leave as lists. */
const plain = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(plain);
  if (!isLoaded(value)) return value;
  const { kitchen, places, ingredients, recipes } = value.facts;
  const lists = { places: all(places), ingredients: all(ingredients), recipes: all(recipes) };
  return { ...value, facts: { kitchen, ...lists } };
};

const isLoaded = (value: unknown): value is { facts: Facts } =>
  typeof value === 'object' && value !== null && 'facts' in value;

const all = <T>(map: ReadonlyMap<string, T>): T[] => [...map.values()];
