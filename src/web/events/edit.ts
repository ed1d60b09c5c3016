import type { FastifyReply } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { list } from '../../store/places.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { placesInOrder } from '../listing.js';
import { fragment, page, wantsPart } from '../page.js';
import { rowsChanged } from '../rows.js';
import { save } from '../save.js';
import { addressesOf } from './addresses.js';
import { detailsForm, readAsDay, readDetails } from './edit-form.js';
import { type EventHead, eventOf, headOf, type OneEvent } from './event.js';
import { type Ripple, ripple } from './ripple.js';

export type EditPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  places: Choice[];
  states: Choice[];
  readAs: string;
  archived: boolean;
  goOn: string;
  ripple: Ripple;
};

/** The details of an event: who, when, where, how firm, which guests. */
export const askForDetails: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  return draw(reply, one, detailsForm(one.event, one.revision));
};

/** What the details typed would change. Nothing is saved. */
export const previewDetails: Answerer = async (request, reply) =>
  fragment(reply, 'events/edit-update', await modelOf(reply, await eventOf(request), request.body as Form));

/** Saves the details; a button of a row only draws the form again. */
export const saveDetails: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  const changed = rowsChanged(form);
  if (changed) return draw(reply, one, changed.form, [], changed.at);
  const reading = new Reading(form);
  const change = readDetails(reading, one.event);
  const redraw = (faults: readonly Fault[]) => draw(reply, one, form, faults);
  return save(reply, { entity: 'event', key: one.event.key, form, faults: reading.faults, change, redraw });
};

const draw = async (
  reply: FastifyReply,
  one: OneEvent,
  form: Form,
  faults: readonly Fault[] = [],
  goOn = '',
) => {
  const model = { ...(await modelOf(reply, one, form)), goOn };
  if (wantsPart(reply)) reply.header('hx-retarget', '#details').header('hx-reswap', 'outerMorph');
  return page(
    reply,
    'events/edit',
    { title: `Change ${one.event.name}`, nav: 'Events', form, faults, ...model },
    'events/_edit',
  );
};

const modelOf = async (reply: FastifyReply, one: OneEvent, form: Form): Promise<EditPage> => {
  const { request } = reply;
  const { event, facts } = one;
  const f = formatFor(request.kitchen);
  const reading = new Reading(form);
  const change = readDetails(reading, event);
  const places = placesInOrder(await list(request.server.house.db), request.kitchen.locale).filter(
    ({ archived, key }) => !archived || key === event.place,
  );
  const readAs = readAsDay(text(form, 'date'), event);
  return {
    head: await headOf(request, one),
    at: addressesOf(event.key),
    places: places.map(({ key, name }) => ({ value: key, label: name })),
    states: stateChoices(event.served?.date && f.date(event.served.date)),
    readAs: readAs && f.dateYear(readAs),
    archived: event.archived,
    goOn: '',
    ripple: ripple(event, reading.faults.length === 0 ? asSaved(change(event)) : undefined, facts),
  };
};

const stateChoices = (servedOn: string | undefined | null): Choice[] => [
  { value: 'enquiry', label: 'Enquiry', hint: 'nothing is prepared for it' },
  { value: 'quoted', label: 'Quoted', hint: 'not yet agreed; on the prep list' },
  { value: 'confirmed', label: 'Confirmed', hint: 'on the prep list' },
  { value: 'postponed', label: 'Postponed', hint: 'kept, and off the prep list' },
  { value: 'cancelled', label: 'Cancelled', hint: 'kept, and off the prep list' },
  {
    value: 'done',
    label: 'Done',
    hint: servedOn
      ? `what was served is kept as of ${servedOn}; any other state reopens it, and its sheets follow today’s recipes, labels and prices again`
      : 'keeps what was served: its sheets stay as they are now, whatever recipes, labels and prices become',
  },
];

/** An event that is reopened follows the facts of today again. */
const asSaved = (event: Event): Event => (event.state === 'done' ? event : { ...event, served: null });
