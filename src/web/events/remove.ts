import { hasSaid } from '../../core/forget.js';
import { headCount } from '../../core/requirements.js';
import { keepsPapers } from '../../store/payments.js';
import { prints } from '../../store/printed-sheets.js';
import { quotes } from '../../store/quotes.js';
import { remove } from '../../store/removal.js';
import { ticksFor } from '../../store/ticks.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { Refused } from '../guards.js';
import { type Answerer, param } from '../house.js';
import { page } from '../page.js';
import { goTo, save, saving, withReceipt } from '../save.js';
import { addressesOf } from './addresses.js';
import { type EventHead, eventOf, headOf } from './event.js';

export type RemovePage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  revision: number;
  archived: boolean;
  goes: string[];
  /** true where guests have said what they eat. */
  forget: boolean;
  /** true where a quote was issued, or money or a numbered paper stands: then it can only be archived. */
  kept: boolean;
};

/** What would go with an event, and archiving instead. */
export const askToRemove: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const { event, revision } = one;
  const f = formatFor(request.kitchen);
  const diets = event.guests.reduce((n, { count }) => n + count, 0);
  const ticks = await ticksFor(request.server.house.db, event.key);
  const printed = (await prints(request.server.house.db, [event.key])).length;
  const { db } = request.server.house;
  const drafts = (await quotes(db, [event.key])).filter(({ doc }) => doc.state === 'draft').length;
  const dishes = event.courses.flatMap((course) => course.dishes).length;
  return page(reply, 'events/remove', {
    title: `Remove ${event.name}`,
    nav: 'Events',
    head: await headOf(request, one),
    at: addressesOf(event.key),
    revision,
    archived: event.archived,
    kept: await keepsPapers(db, event.key),
    forget: event.guests.some(hasSaid),
    goes: [
      `${f.count(headCount(event), 'guest')} on ${f.longDate(event.date)}`,
      diets > 0 ? `What ${f.count(diets, 'guest')} said, or were asked, about what they eat` : '',
      dishes > 0
        ? `Its menu: ${f.count(dishes, 'dish', 'dishes')} in ${f.count(event.courses.length, 'course')}`
        : '',
      event.served ? 'What was served, as it was kept when the event was done' : '',
      event.note && 'Its note',
      drafts > 0
        ? `${drafts === 1 ? 'The draft of a quote' : `The drafts of ${f.number(drafts)} quotes`}; Undo does not bring ${drafts === 1 ? 'that' : 'those'} back`
        : '',
      printed > 0 ? 'What its papers said when they were printed; Undo does not bring that back' : '',
      ticks > 0
        ? `${ticks === 1 ? 'The tick' : `The ${f.number(ticks)} ticks`} on its prep list; Undo does not bring ${ticks === 1 ? 'that' : 'those'} back`
        : '',
    ].filter(Boolean),
  });
};

/** Removes the event; the receipt takes it back. */
export const removeEvent: Answerer = async (request, reply) => {
  const key = param(request, 'key');
  const revision = Number(text(request.body as Form, 'revision'));
  const removal = await remove(request.server.house.db, 'event', key, { revision, ...saving(reply) });
  if (removal.outcome === 'gone') return reply.callNotFound();
  if (removal.outcome === 'refused')
    throw new Refused(removal.problems.map(({ sentence }) => sentence).join(' '), 409);
  return goTo(reply, withReceipt('/events', { ...removal, merged: [] }));
};

/** Takes an event out of the lists, or brings it back. */
export const archiveEvent: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const archived = text(form, 'archived') !== 'no';
  return save(reply, {
    entity: 'event',
    key: param(request, 'key'),
    form,
    faults: [],
    change: (event) => ({ ...event, archived }),
    redraw: (faults) => {
      throw new Refused(faults.map(({ sentence }) => sentence).join(' '), 422);
    },
  });
};
