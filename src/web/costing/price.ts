import type { FastifyReply } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { addressesOf } from '../events/addresses.js';
import { eventOf, type OneEvent } from '../events/event.js';
import { Reading } from '../faults.js';
import { type Form, text } from '../form.js';
import type { Answerer } from '../house.js';
import { fragment, wantsPart } from '../page.js';
import { save } from '../save.js';
import { drawCosting } from './draw.js';
import { viewAsked, withView } from './in-view.js';
import { costingPage } from './model.js';
import { readPrice } from './price-form.js';

const readSent = async ({ request }: FastifyReply) => {
  const one = await eventOf(request);
  const form = request.body as Form;
  const reading = new Reading(form);
  const price = readPrice(reading, one.event, request.kitchen.currency);
  return {
    one,
    form,
    faults: reading.faults,
    price,
    asked: await viewAsked(request, one, text(form, 'view')),
  };
};

/** What the price typed would leave. Nothing is saved. */
export const previewPrice: Answerer = async (_request, reply) => {
  const { one, form, faults, price, asked } = await readSent(reply);
  const typed = faults.length === 0 ? withPrice(one, price) : undefined;
  if (!wantsPart(reply)) return drawCosting(reply, one, asked, { form, faults, typed });
  const { model } = await costingPage(reply.request, one, asked, typed);
  return fragment(reply, 'costing/price-update', model);
};

const withPrice = ({ event }: OneEvent, price: Event['price']): Event => ({ ...event, price });

/** Saves how the price is set; what can't be read comes back with all that was typed. */
export const savePrice: Answerer = async (_request, reply) => {
  const { one, form, faults, price, asked } = await readSent(reply);
  return save(reply, {
    entity: 'event',
    key: one.event.key,
    form,
    faults,
    change: (doc: Event) => ({ ...doc, price }),
    redraw: (found) => drawCosting(reply, one, asked, { form, faults: found }),
    to: () => withView(addressesOf(one.event.key).costing, text(form, 'view')),
  });
};
