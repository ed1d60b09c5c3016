import { weekOf } from '../../core/calendar.js';
import { create } from '../../store/changes.js';
import { read } from '../../store/documents.js';
import { openExample } from '../../store/example.js';
import { inZone } from '../clock.js';
import { type Form, text } from '../form.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { saving } from '../save.js';
import { newHome, newKitchen } from './new-kitchen.js';

/** What a newcomer sees: start with something of one's own, or look round the example. */
export const showFirstRun: Answerer = async (request, reply) => {
  if (await read(request.server.house.db, 'kitchen', 'kitchen')) return reply.redirect('/', 303);
  const { clock } = request.server.house;
  const week = weekOf(inZone(clock(), request.kitchen.timeZone).date);
  return page(reply, 'first-run/show', { title: 'An empty week', nav: 'Week', week, kitchenSet: '' });
};

const next: Record<string, string> = {
  kitchen: '/kitchen',
  event: '/events/new',
  recipe: '/recipes/new',
  read: '/recipes/read',
};

/** Begins the kitchen and goes on to what was asked for; one that is there already is left as it is. */
export const beginKitchen: Answerer = async (request, reply) => {
  const { db, config } = request.server.house;
  const wanted = text(request.body as Form, 'do');
  const by = saving(reply);
  if (!(await read(db, 'kitchen', 'kitchen'))) {
    if (wanted === 'example') await openExample(db, { ...by, dataDir: config.dataDir });
    else {
      await create(db, 'kitchen', newKitchen, by);
      await create(db, 'place', newHome, by);
    }
  }
  return reply.redirect(next[wanted] ?? '/', 303);
};
