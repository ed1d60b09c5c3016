import type { FastifyRequest } from 'fastify';
import { priceBy } from '../../core/copy-costs.js';
import type { Event } from '../../core/facts/event.js';
import { copyMenu } from '../../core/menu.js';
import { readPercent } from '../../core/reading.js';
import { read } from '../../store/documents.js';
import { todayOf } from '../coming.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { readNewEvent } from './new-form.js';

/** Where a menu is to be copied: an event as it stands, its revision and what becomes of it; a new one has none of 0. */
export type CopyTo = { event: Event; changed: Event; revision: number };

/** What the form of a copy asks; `to` is undefined while nothing is chosen or something can't be read. */
export const readCopy = async (
  request: FastifyRequest,
  form: Form,
  from: Event,
): Promise<{ to: CopyTo | undefined; faults: Fault[] }> => {
  const chosen = text(form, 'to');
  if (chosen === 'new') return readNew(request, form, from);
  const stored = chosen === '' ? undefined : await read(request.server.house.db, 'event', chosen);
  if (!stored || stored.key === from.key) {
    const fault = { field: 'to', label: 'To which event?', sentence: 'Choose an event, or a new one.' };
    return { to: undefined, faults: [fault] };
  }
  const { doc, revision } = stored;
  return { to: { event: doc, changed: { ...doc, courses: copyMenu(from, doc) }, revision }, faults: [] };
};

const readNew = (request: FastifyRequest, form: Form, from: Event) => {
  const reading = new Reading({ ...form, place: from.place });
  const f = formatFor(request.kitchen);
  const made = readNewEvent(reading, {
    today: todayOf(request),
    f,
    from,
    kitchen: request.kitchen,
  });
  // From a price in a minute: the margin it was worked out by goes before the rule of the menu's own event.
  const margin = reading.maybe('margin', 'Margin to keep', (typed) => readPercent(typed, 'the margin', 99));
  if (margin !== null) made.price = priceBy(made.price, { margin }, request.kitchen);
  const { faults } = reading;
  const to = { event: { ...made, courses: [] }, changed: made, revision: 0 };
  return { to: faults.length === 0 ? to : undefined, faults };
};

/** What a preview was drawn of; a save of anything else is shown first. */
export const seenOf = ({ event, revision }: CopyTo): string =>
  [revision === 0 ? 'new' : event.key, revision, ...event.groups.map(({ guests }) => guests)].join(':');
