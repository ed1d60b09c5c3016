import type { FastifyReply } from 'fastify';
import { read } from '../../store/documents.js';
import { exampleCount } from '../../store/example.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import type { Form } from '../form.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { rowsChanged } from '../rows.js';
import { save } from '../save.js';
import { kitchenChoices } from './choices.js';
import { kitchenForm, readKitchen } from './form.js';

/** The kitchen's settings, which are their own form. */
export const showKitchen: Answerer = async (request, reply) => {
  const stored = await read(request.server.house.db, 'kitchen', 'kitchen');
  if (!stored) return reply.redirect('/first-run', 303);
  return draw(reply, kitchenForm(stored.doc, stored.revision));
};

export const saveKitchen: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const changed = rowsChanged(form);
  if (changed) return draw(reply, changed.form, [], changed.at);
  const reading = new Reading(form);
  const change = readKitchen(reading);
  const redraw = (faults: readonly Fault[]) => draw(reply, form, faults);
  return save(reply, { entity: 'kitchen', key: 'kitchen', form, faults: reading.faults, change, redraw });
};

const draw = async (reply: FastifyReply, form: Form, faults: readonly Fault[] = [], at = '') => {
  const { kitchen, account, server } = reply.request;
  const more = { examples: await exampleCount(server.house.db), accountName: account?.name };
  const model = { title: 'Your kitchen', form, faults, at, ...more, ...kitchenChoices(kitchen) };
  return page(reply, 'kitchen/show', model, 'kitchen/_form');
};
