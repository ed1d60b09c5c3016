import type { FastifyReply } from 'fastify';
import type { TaxRounding } from '../../core/facts/price.js';
import { read } from '../../store/documents.js';
import { type LineChoices, lineChoices } from '../cost-lines/choices.js';
import { Reading } from '../faults.js';
import type { Choice, Fault } from '../fields.js';
import type { Form } from '../form.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { rowsChanged } from '../rows.js';
import { save } from '../save.js';
import { readUsual, usualForm } from './costs-form.js';

export type UsualCosts = {
  choices: LineChoices;
  goOn: string;
  unit: string;
  /** What the tax is called; nothing when none is charged. */
  taxed: string;
  roundings: Choice[];
};

/** The costs a new event starts with, and the margin and the tax that prices keep to. */
export const showUsualCosts: Answerer = async (request, reply) => {
  const stored = await read(request.server.house.db, 'kitchen', 'kitchen');
  return stored ? draw(reply, usualForm(stored.doc, stored.revision)) : reply.redirect('/first-run', 303);
};

export const saveUsualCosts: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const changed = rowsChanged(form);
  if (changed) return draw(reply, changed.form, [], changed.at);
  const reading = new Reading(form);
  const change = readUsual(reading, request.kitchen);
  const redraw = (faults: readonly Fault[]) => draw(reply, form, faults);
  const to = () => '/kitchen/costs';
  return save(reply, { entity: 'kitchen', key: 'kitchen', form, faults: reading.faults, change, redraw, to });
};

const roundingWords: Record<TaxRounding, string> = {
  'whole-down': 'once for a paper, rounded down',
  'whole-nearest': 'once for a paper, rounded to the nearest',
  'line-nearest': 'on each line, rounded to the nearest',
  'line-down': 'on each line, rounded down to a tenth of a penny or cent',
};

const roundings = Object.entries(roundingWords).map(([value, label]) => ({ value, label }));

const draw = (reply: FastifyReply, form: Form, faults: readonly Fault[] = [], goOn = '') => {
  const { kitchen } = reply.request;
  const { currency, tax } = kitchen;
  const model = {
    choices: lineChoices(kitchen, form),
    goOn,
    unit: currency,
    taxed: tax?.name ?? '',
    roundings,
  };
  return page(
    reply,
    'cost-lines/kitchen',
    { title: 'Usual costs and margin', form, faults, ...model },
    'cost-lines/_kitchen',
  );
};
