import type { FastifyReply } from 'fastify';
import { read } from '../../store/documents.js';
import { list } from '../../store/places.js';
import { Reading } from '../faults.js';
import type { Fault } from '../fields.js';
import { type Form, text } from '../form.js';
import { type Answerer, param } from '../house.js';
import { keyFrom } from '../keys.js';
import { page } from '../page.js';
import { rowsChanged } from '../rows.js';
import { add, save } from '../save.js';
import { newPlace, placeForm, readPlace } from './form.js';

/** A place, which is its own form. */
export const showPlace: Answerer = async (request, reply) => {
  const stored = await read(request.server.house.db, 'place', param(request, 'key'));
  if (!stored) return reply.callNotFound();
  const { doc, revision } = stored;
  return draw(reply, placeForm(doc, revision, request.kitchen.heat), {
    key: doc.key,
    home: doc.kind === 'home',
  });
};

export const savePlace: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const key = param(request, 'key');
  const at = { key, home: text(form, 'home') === 'on' };
  const changed = rowsChanged(form);
  if (changed) return draw(reply, changed.form, at, [], changed.at);
  const reading = new Reading(form);
  const change = readPlace(reading, request.kitchen);
  const redraw = (faults: readonly Fault[]) => draw(reply, form, at, faults);
  return save(reply, { entity: 'place', key, form, faults: reading.faults, change, redraw });
};

export const askForPlace: Answerer = (request, reply) =>
  draw(reply, { ...placeForm(newPlace('new'), 0, request.kitchen.heat), name: '' }, { key: '', home: false });

export const addPlace: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const at = { key: '', home: false };
  const changed = rowsChanged(form);
  if (changed) return draw(reply, changed.form, at, [], changed.at);
  const taken = new Set((await list(request.server.house.db)).map(({ key }) => key));
  const reading = new Reading(form);
  const fill = readPlace(reading, request.kitchen);
  const doc = fill(newPlace(keyFrom(text(form, 'name'), (key) => taken.has(key))));
  const redraw = (faults: readonly Fault[]) => draw(reply, form, at, faults);
  return add(reply, {
    entity: 'place',
    form,
    faults: reading.faults,
    doc,
    redraw,
  });
};

type At = { key: string; home: boolean };

const draw = (reply: FastifyReply, form: Form, { key, home }: At, faults: readonly Fault[] = [], at = '') => {
  const title = text(form, 'name') || (key ? 'A place' : 'A new place');
  return page(reply, 'places/change', { title, form, faults, key, home, at }, 'places/_form');
};
