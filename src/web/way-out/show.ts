import { createHash } from 'node:crypto';
import type { FastifyReply } from 'fastify';
import type { WayOut, WaysOut } from '../../core/way-out/find.js';
import { takeWayOut } from '../../store/way-out.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { Refused } from '../guards.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { goTo, saving } from '../save.js';
import { waysFor } from './searches.js';
import { openWords, type WayWords, wayWords } from './words.js';

export type WayOutPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  revision: number;
  /** true while the search goes on. */
  searching: boolean;
  lacking: string[];
  ways: (WayWords & { mark: string })[];
  /** Whether the menu may be left as it is: never while an allergy or a medical diet is at stake. */
  mayLeave: boolean;
  open: string[];
  /** true where what was chosen is no longer what the search finds. */
  moved: boolean;
};

// Long enough for most parties to be answered at once, short enough to say soon that it takes longer.
const patience = { page: 900, taking: 20_000 };

/** The smallest ways out of a menu that leaves guests without, to choose from; a party that is over has none. */
export const showWayOut: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  if (one.event.state === 'done')
    return reply.redirect(`${addressesOf(one.event.key).allergens}#guests`, 303);
  return draw(reply, one, await waysFor(request.server.house.db, one, patience.page));
};

/** Puts the chosen way out on the menu, as one save; what was shown and no longer stands is asked again. */
export const chooseWayOut: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const one = await openEvent(request);
  const { db } = request.server.house;
  const chosen = text(form, 'way');
  const found = await waysFor(db, one, patience.taking);
  if (chosen === 'leave' && found?.allergy === false) return goTo(reply, addressesOf(one.event.key).page);
  const way = found?.ways.find((way) => markOf(way) === chosen);
  if (!found || (!way && chosen !== '' && chosen !== 'leave')) {
    reply.code(409);
    return draw(reply, one, found, { moved: true });
  }
  if (!way) {
    reply.code(422);
    return draw(reply, one, found, { form, faults: [notChosen(found)] });
  }
  const outcome = await takeWayOut(db, way, one.revision, saving(reply));
  if (outcome.outcome === 'gone') return reply.callNotFound();
  if (outcome.outcome === 'refused') {
    reply.code(409);
    return draw(reply, await eventOf(request), undefined, { moved: true });
  }
  return goTo(reply, `${addressesOf(one.event.key).page}?together=${outcome.together}`);
};

const notChosen = ({ allergy }: WaysOut): Fault => ({
  field: 'way',
  label: 'The way out',
  sentence: allergy
    ? 'Choose one of the ways: an allergy or a medical diet is at stake, so it cannot be left.'
    : 'Choose one of the ways, or say that you leave it.',
});

const openEvent = async (request: Parameters<Answerer>[0]): Promise<OneEvent> => {
  const one = await eventOf(request);
  if (one.event.state === 'done')
    throw new Refused('This party is over: what was served stands as it was kept.', 404);
  return one;
};

/** What is the same way in every search that finds it. */
const markOf = ({ moves, event, recipes }: WayOut): string =>
  createHash('sha256')
    .update(JSON.stringify([moves, event.courses, recipes]))
    .digest('hex')
    .slice(0, 16);

type Drawn = { form?: Form; faults?: readonly Fault[]; moved?: boolean };

const draw = async (
  reply: FastifyReply,
  one: OneEvent,
  found: WaysOut | undefined,
  { form = {}, faults = [], moved = false }: Drawn = {},
): Promise<unknown> => {
  const f = formatFor(reply.request.kitchen);
  const model: WayOutPage = {
    head: await headOf(reply.request, one),
    at: addressesOf(one.event.key),
    revision: one.revision,
    searching: found === undefined,
    lacking: (found?.lacking ?? []).map(({ who, course }) => `${who}, in ${course.toLowerCase()}`),
    ways: (found?.ways ?? []).map((way) => ({ ...wayWords(way, f), mark: markOf(way) })),
    mayLeave: found?.allergy === false,
    open: found ? openWords(found, f) : [],
    moved,
  };
  const title = `The smallest way out, ${one.event.name}`;
  return page(reply, 'way-out/show', { title, nav: 'Events', form, faults, ...model }, 'way-out/_ways');
};
