import type { FastifyReply } from 'fastify';
import { withGuests } from '../../core/guest-change.js';
import { eventSummary } from '../../core/sheets/event-summary.js';
import { eventSummarySheet } from '../../core/sheets/event-summary-sheet.js';
import { printedNow } from '../coming.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import type { Answerer } from '../house.js';
import { fragment, page, wantsPart } from '../page.js';
import { outdatedPapers } from '../printed/outdated.js';
import { quoteNeed } from '../quotes/need.js';
import { receiptOf } from '../receipt.js';
import { save, withReceipt } from '../save.js';
import { eventOf, headOf, type OneEvent } from './event.js';
import { guestPage, readGuests } from './guest-form.js';
import { eventPage } from './show.js';

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
  const model = await guestPage(reply.request, one, form, faults);
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
    part: (saved) => afterSaving(reply, saved),
  });
};

const draw = async (reply: FastifyReply, one: OneEvent, form: Form, faults: readonly Fault[]) => {
  const model = await guestPage(reply.request, one, form, faults);
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
const afterSaving = async (reply: FastifyReply, saved: { changeId: number | null; merged: string[] }) => {
  const { request } = reply;
  const one = await eventOf(request);
  const answer = eventSummary(one.event, one.facts);
  const { foot } = eventSummarySheet(answer);
  const papers = await outdatedPapers(request, [one.event]);
  const beside = { printed: printedNow(request), papers, need: await quoteNeed(request, one) };
  const model = eventPage(await headOf(request, one), answer, foot, beside);
  const { changeId, merged } = saved;
  const asked = merged.length > 0 ? { merged: String(merged.length) } : {};
  const receipt = changeId === null ? undefined : await receiptOf(request, changeId, asked);
  // With the receipt in the address, coming back to this page brings Undo back.
  reply.header('hx-push-url', withReceipt(model.at.page, saved));
  return fragment(reply, 'events/guests-update', { ...model, receipt });
};
