import type { FastifyReply } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { headCount } from '../../core/requirements.js';
import { startingCosts } from '../../core/whole-cost/cost-of-party.js';
import { averagesNow } from '../averages/parties.js';
import { addressesOf } from '../events/addresses.js';
import { type EventHead, eventOf, headOf, type OneEvent } from '../events/event.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, rows, text } from '../form.js';
import { formatFor } from '../format.js';
import type { Answerer } from '../house.js';
import { fragment, page, wantsPart } from '../page.js';
import { rowsChanged } from '../rows.js';
import { save } from '../save.js';
import { type LineChoices, lineChoices } from './choices.js';
import { linesForm } from './form.js';
import { readCostLines } from './read.js';
import { costRipple } from './ripple.js';
import { withUsual } from './usual.js';
import { type WorkedOffer, workedOffers, workedPressed } from './worked.js';

export type EventCosts = {
  head: EventHead;
  at: ReturnType<typeof addressesOf>;
  choices: LineChoices;
  goOn: string;
  unit: string;
  /** true when the kitchen has usual lines to start with. */
  usual: boolean;
  /** What the last parties offer for each line. */
  worked: (WorkedOffer | undefined)[];
  /** What the lines typed make of the cost, in words. */
  ripple: string;
};

/** The costs of an event beside its food, to be changed. */
export const askForCosts: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const costs = linesForm(one.event.costs, formatFor(request.kitchen));
  return draw(reply, one, { revision: String(one.revision), costs });
};

/** What the lines typed would make of the cost. Nothing is saved. */
export const previewCosts: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  if (!wantsPart(reply)) return draw(reply, one, form);
  return fragment(reply, 'cost-lines/ripple-update', await modelOf(reply, one, form));
};

/** Saves the lines; a button of a row, and the one for the usual lines, only draws the form again. */
export const saveCosts: Answerer = async (request, reply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  if (text(form, 'do') === 'usual') {
    const f = formatFor(request.kitchen);
    return draw(reply, one, withUsual(form, startingCosts(request.kitchen), f));
  }
  const changed = rowsChanged(form) ?? workedPressed(form, await workedAt(reply, one.event));
  if (changed) return draw(reply, one, changed.form, [], changed.at);
  const reading = new Reading(form);
  const costs = readFor(reply, reading, one.event);
  return save(reply, {
    entity: 'event',
    key: one.event.key,
    form,
    faults: reading.faults,
    change: (doc: Event) => ({ ...doc, costs }),
    redraw: (faults) => draw(reply, one, form, faults),
    to: () => addressesOf(one.event.key).costing,
  });
};

const readFor = ({ request: { kitchen } }: FastifyReply, reading: Reading, { costs: before }: Event) =>
  readCostLines(reading, { currency: kitchen.currency, f: formatFor(kitchen), before });

const workedAt = async ({ request }: FastifyReply, event: Event) => ({
  lines: (await averagesNow(request.server.house.db)).lines,
  guests: headCount(event),
});

const draw = async (
  reply: FastifyReply,
  one: OneEvent,
  form: Form,
  faults: readonly Fault[] = [],
  goOn = '',
) => {
  const model = { ...(await modelOf(reply, one, form)), goOn };
  const title = `Costs of ${one.event.name}`;
  return page(
    reply,
    'cost-lines/event',
    { title, nav: 'Costing', form, faults, ...model },
    'cost-lines/_event',
  );
};

const modelOf = async (reply: FastifyReply, one: OneEvent, form: Form): Promise<EventCosts> => {
  const { kitchen } = reply.request;
  const reading = new Reading(structuredClone(form));
  const costs = readFor(reply, reading, one.event);
  return {
    head: await headOf(reply.request, one),
    at: addressesOf(one.event.key),
    choices: lineChoices(kitchen, form),
    goOn: '',
    worked: workedOffers(form, await workedAt(reply, one.event), formatFor(kitchen)),
    unit: kitchen.currency,
    usual: kitchen.costs.length > 0,
    ripple:
      rows(form, 'costs').length === 0 && one.event.costs.length === 0
        ? ''
        : costRipple(one, reading.faults.length === 0 ? costs : undefined),
  };
};
