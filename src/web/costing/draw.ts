import type { FastifyReply } from 'fastify';
import type { Event } from '../../core/facts/event.js';
import { answerSheet } from '../answer.js';
import type { OneEvent } from '../events/event.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import { formatFor } from '../format.js';
import type { InView } from './in-view.js';
import { costingPage } from './model.js';
import { priceForm } from './price-form.js';

/** What a drawing of the costing page shows beside what is stored. */
export type Drawn = {
  form?: Form;
  faults?: readonly Fault[];
  /** The event with the price that was typed, to say what that would leave. */
  typed?: Event;
};

/** Answers with the costing of an event in one view: as its page, on paper, as CSV and JSON. */
export const drawCosting = async (reply: FastifyReply, one: OneEvent, asked: InView, drawn: Drawn = {}) => {
  const { form, faults, typed } = drawn;
  const { model, sheet } = await costingPage(reply.request, one, asked, typed);
  const f = formatFor(reply.request.kitchen);
  return answerSheet(
    reply,
    sheet,
    'costing/show',
    {
      title: `Costing, ${one.event.name}`,
      nav: 'Costing',
      form: form ?? priceForm(one.event, one.revision, f),
      faults,
      ...model,
    },
    faults ? 'costing/_price' : 'costing/show',
  );
};
