import type { FastifyReply } from 'fastify';
import { read } from '../../store/documents.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { rowsChanged } from '../rows.js';
import { save } from '../save.js';
import { readTerms, termsForm } from './terms-form.js';

/** What the kitchen usually offers on; a quote starts from it. */
export const showTerms: Answerer = async (request, reply) => {
  const stored = await read(request.server.house.db, 'kitchen', 'kitchen');
  return stored ? draw(reply, termsForm(stored.doc, stored.revision)) : reply.redirect('/first-run', 303);
};

export const saveTerms: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const changed = rowsChanged(form);
  if (changed) return draw(reply, changed.form, [], changed.at);
  const reading = new Reading(form);
  const terms = readTerms(reading);
  return save(reply, {
    entity: 'kitchen',
    key: 'kitchen',
    form,
    faults: reading.faults,
    change: (doc) => ({ ...doc, terms }),
    redraw: (faults) => draw(reply, form, faults),
    to: () => '/kitchen/terms',
  });
};

const draw = (reply: FastifyReply, form: Form, faults: readonly Fault[] = [], goOn = '') =>
  page(reply, 'kitchen/terms', { title: 'Your terms', form, faults, goOn }, 'kitchen/_terms');
