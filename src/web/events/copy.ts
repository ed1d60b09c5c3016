import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { copyMenu } from '../../core/menu.js';
import { list } from '../../store/events.js';
import { todayOf } from '../coming.js';
import type { Choice, Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { type Answerer, query } from '../house.js';
import { pageOf } from '../links.js';
import { fragment, page, wantsPart } from '../page.js';
import { add, save } from '../save.js';
import { addressesOf } from './addresses.js';
import type { Clashes } from './clashes.js';
import { type CopyTo, readCopy, seenOf } from './copy-form.js';
import { type CopyPreview, previewOf } from './copy-preview.js';
import { type EventHead, eventOf, headOf, type OneEvent } from './event.js';
import { freeKey } from './new.js';

export type CopyPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  events: Choice[];
  preview: CopyPreview | undefined;
  clashes: Clashes;
  /** true when the preview was asked for by a button, so that the next step is to save. */
  pressed: boolean;
};

/** Asks to which event a menu is copied. */
export const askForCopy: Answerer = async (request, reply) =>
  draw(reply, await eventOf(request), {
    to: query(request, 'to'),
    adults: query(request, 'adults'),
    children: query(request, 'children'),
    margin: query(request, 'margin'),
  });

/** What the copied menu makes there. Nothing is saved. */
export const previewCopy: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  const { faults } = await readCopy(request, form, one.event);
  if (!wantsPart(reply)) return draw(reply, one, form, faults);
  return fragment(reply, 'events/copy-update', await modelOf(reply, one, form));
};

/** Copies the menu, once what it makes there was seen; until then it is shown. */
export const copyTheMenu: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  const { to, faults } = await readCopy(request, form, one.event);
  const redraw = (found: readonly Fault[]) => draw(reply, one, form, found);
  if (to && faults.length === 0 && text(form, 'seen') !== seenOf(to) && !isOlder(form, to)) return redraw([]);
  const change = (doc: Event) => ({ ...doc, courses: copyMenu(one.event, doc) });
  if (to && to.revision > 0)
    return save(reply, { entity: 'event', key: to.event.key, form, faults, change, redraw });
  const doc = { ...(to?.changed ?? one.event), key: to ? await freeKey(request, to.changed.name) : 'new' };
  return add(reply, {
    entity: 'event',
    form,
    faults,
    doc,
    redraw,
    to: ({ doc }) => pageOf('event', doc.key),
  });
};

/** Whether the event was saved by somebody since its preview, which is then merged and not shown afresh. */
const isOlder = (form: Form, { event, revision }: CopyTo): boolean => {
  const [key, seen] = text(form, 'seen').split(':');
  return revision > 0 && key === event.key && Number(seen) < revision && text(form, 'revision') === seen;
};

const draw = async (reply: FastifyReply, one: OneEvent, form: Form, faults: readonly Fault[] = []) => {
  const model = { ...(await modelOf(reply, one, form)), pressed: faults.length === 0 };
  if (wantsPart(reply)) reply.header('hx-retarget', '#copy').header('hx-reswap', 'outerMorph');
  return page(
    reply,
    'events/copy',
    { title: `Copy the menu of ${one.event.name}`, nav: 'Events', form, faults, ...model },
    'events/_copy',
  );
};

const modelOf = async (reply: FastifyReply, one: OneEvent, form: Form): Promise<CopyPage> => {
  const { request } = reply;
  const { to } = await readCopy(request, form, one.event);
  return {
    head: await headOf(request, one),
    at: addressesOf(one.event.key),
    events: await choices(request, one.event),
    pressed: false,
    ...(to ? await previewOf(request, one, to) : { preview: undefined, clashes: notChosen }),
  };
};

const notChosen: Clashes = {
  title: 'Clashes there',
  count: '',
  items: [],
  none: 'Choose the event first.',
};

const over = ['done', 'cancelled'];

const choices = async (request: FastifyRequest, from: Event): Promise<Choice[]> => {
  const f = formatFor(request.kitchen);
  const coming = await list(request.server.house.db, { from: todayOf(request) });
  const open = coming.filter(
    ({ key, archived, state }) => key !== from.key && !archived && !over.includes(state),
  );
  return [
    { value: '', label: 'Choose an event' },
    { value: 'new', label: 'A new event' },
    ...open.map(({ key, name, date, guests }) => ({
      value: key,
      label: `${name}, ${f.date(date)}, ${f.count(guests, 'guest')}`,
    })),
  ];
};
