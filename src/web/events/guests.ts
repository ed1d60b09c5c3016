import type { FastifyReply } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { guestChange, withGuests } from '../../core/guest-change.js';
import { readWhole } from '../../core/reading.js';
import { headCount } from '../../core/requirements.js';
import { eventSummary } from '../../core/sheets/event-summary.js';
import { printedNow } from '../coming.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { fragment, page, wantsPart } from '../page.js';
import type { Receipt } from '../receipt.js';
import { save } from '../save.js';
import { addressesOf } from './addresses.js';
import { type Clashes, clashes, clashesAfter } from './clashes.js';
import { type EventHead, eventOf, headOf, type OneEvent } from './event.js';
import { type GuestPreview, guestPreview } from './guest-preview.js';
import { type EventPage, eventPage } from './show.js';

type GuestGroup = { name: string; label: string; held: number };
export type GuestPage = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  held: number;
  groups: GuestGroup[];
  preview: GuestPreview | undefined;
  clashes: Clashes;
};

/** The form for another number of guests: in the place of the facts for htmx, else on a page of its own. */
export const askForGuests: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const groups = one.event.groups.map(({ key, guests }) => ({ key, guests: String(guests) }));
  return draw(reply, one, { revision: String(one.revision), groups }, []);
};

/** What the numbers typed would change. Nothing is saved. */
export const previewGuests: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  const { faults } = readGuests(form, one.event);
  if (!wantsPart(reply)) return draw(reply, one, form, faults);
  const model = await modelOf(reply, one, form, faults);
  return fragment(reply, 'events/guest-preview-update', { ...model, form, faults });
};

/** Saves the numbers of guests. */
export const saveGuests: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  const { guests, faults } = readGuests(form, one.event);
  return save(reply, {
    entity: 'event',
    key: one.event.key,
    form,
    faults,
    change: (event) => withGuests(event, guests),
    redraw: (found) => draw(reply, one, form, found),
    part: ({ doc, changeId, merged }) => afterSaving(reply, doc, changeId, merged.length > 0),
  });
};

const most = 100_000;

/** The numbers typed, by group; the groups are those of the event. */
const readGuests = (form: Form, event: Event): { guests: Map<string, number>; faults: Fault[] } => {
  const reading = new Reading(form);
  const guests = new Map<string, number>();
  const read = (typed: string) => readWhole(typed, 'the number of guests', 0, most);
  for (const [i, row] of rows(form, 'groups').entries()) {
    const group = event.groups.find(({ key }) => key === text(row, 'key'));
    if (!group) continue;
    guests.set(
      group.key,
      reading.take(`groups[${i}].guests`, labelOf(event, group.name), read, group.guests),
    );
  }
  const nobody = headCount(withGuests(event, guests)) === 0;
  if (nobody && reading.faults.length === 0)
    reading.refuse(
      'groups[0].guests',
      'Guests',
      'A party has at least one guest. One that is called off can be marked cancelled under Change details.',
    );
  return { guests, faults: reading.faults };
};

const labelOf = ({ groups }: Event, name: string): string => (groups.length === 1 ? 'New guest count' : name);

const modelOf = async (
  reply: FastifyReply,
  one: OneEvent,
  form: Form,
  faults: readonly Fault[],
): Promise<GuestPage> => {
  const { event, facts } = one;
  const { guests } = readGuests(form, event);
  const change = guestChange(event, guests, facts);
  const preview = faults.length > 0 ? undefined : guestPreview(change);
  const same = !preview || preview.rows.length === 0;
  const now = formatFor(reply.request.kitchen).number(preview?.now ?? 0);
  return {
    head: await headOf(reply.request, one),
    at: addressesOf(event.key),
    held: headCount(event),
    groups: rows(form, 'groups').flatMap((row, i) => {
      const group = event.groups.find(({ key }) => key === text(row, 'key'));
      return group ? [{ name: `groups[${i}]`, label: labelOf(event, group.name), held: group.guests }] : [];
    }),
    preview,
    clashes: same
      ? clashes(change.problems.map(({ problem }) => problem))
      : clashesAfter(`Clashes at ${now}`, change),
  };
};

const draw = async (reply: FastifyReply, one: OneEvent, form: Form, faults: readonly Fault[]) => {
  const model = await modelOf(reply, one, form, faults);
  if (wantsPart(reply)) reply.header('hx-retarget', '#head-count').header('hx-reswap', 'outerHTML');
  const { name } = one.event;
  return page(
    reply,
    'events/guests',
    { title: name, nav: 'Events', form, faults, ...model },
    'events/_guests',
  );
};

/** The event as it is now, with the receipt of the save, in the place of the form. */
const afterSaving = async (reply: FastifyReply, event: Event, changeId: number | null, merged: boolean) => {
  const { request } = reply;
  const one = await eventOf(request);
  const model: EventPage = eventPage(
    one,
    await headOf(request, one),
    eventSummary(one.event, one.facts),
    printedNow(request),
  );
  const guests = formatFor(request.kitchen).count(headCount(event), 'guest');
  const others = merged ? ' What others had changed meanwhile is kept too.' : '';
  const receipt: Receipt | undefined =
    changeId === null ? undefined : { change: changeId, sentence: `Saved ${guests}.${others}` };
  reply.header('hx-push-url', model.at.page);
  return fragment(reply, 'events/guests-update', { ...model, receipt });
};
