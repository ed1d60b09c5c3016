import type { FastifyRequest } from 'fastify';
import type { Mark } from '../../core/marks.js';
import { type DishUse, dishesUsing } from '../../store/dishes.js';
import { marksNow, todayOf } from '../coming.js';
import { type Html, html } from '../html.js';
import { pageOf } from '../links.js';
import { mark } from '../marks.js';

/** An event still to come that a recipe goes into, with the dishes it goes into there. */
export type EventUse = { key: string; name: string; mark: Mark | undefined; dishes: DishUse[] };

/** The events still to come that a recipe goes into, through any depth, by date. */
export const usesNow = async (request: FastifyRequest, recipe: string): Promise<EventUse[]> => {
  const marks = await marksNow(request);
  const events = new Map<string, EventUse>();
  for (const use of await dishesUsing(request.server.house.db, recipe, todayOf(request))) {
    if (use.state === 'done' || use.state === 'cancelled') continue;
    const event = events.get(use.event) ?? {
      key: use.event,
      name: use.name,
      mark: marks.get(use.event),
      dishes: [],
    };
    event.dishes.push(use);
    events.set(use.event, event);
  }
  return [...events.values()];
};

/** "A Harvest supper, B Silver wedding buffet", each a link. */
export const usesInWords = (uses: readonly EventUse[]): Html =>
  html`${uses.map(
    (use, i) =>
      html`${i > 0 && ', '}${mark(use.mark)} <a class="bare" href="${pageOf('event', use.key)}">${use.name}</a>`,
  )}`;
