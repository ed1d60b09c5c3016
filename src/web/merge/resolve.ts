import { type EntityName, entities } from '../../core/facts/facts.js';
import type { Choice } from '../../core/merge.js';
import { resolve } from '../../store/changes.js';
import { type Form, rows, text } from '../form.js';
import { Refused } from '../guards.js';
import { type Answerer, entityParam, param } from '../house.js';
import { answer, saving } from '../save.js';

/** Saves a merge as chosen. A place left without a choice is asked again. */
export const saveMerge: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const entity = entityParam(request);
  const key = param(request, 'key');
  const base = Number(text(form, 'base'));
  const outcome = await resolve(request.server.house.db, entity, key, {
    base,
    seen: Number(text(form, 'seen')),
    yours: yoursIn(form, entity),
    choices: choicesIn(form),
    ...saving(reply),
  });
  const redraw = (faults: readonly { sentence: string }[]) => {
    throw new Refused(faults.map(({ sentence }) => sentence).join(' '), 422);
  };
  return answer(reply, { entity, key, form, redraw }, outcome, base);
};

const yoursIn = (form: Form, entity: EntityName) => {
  try {
    return entities[entity].parse(JSON.parse(text(form, 'yours')));
  } catch {
    throw new Refused('What you had changed did not arrive whole. Go back and save again.', 400);
  }
};

const choicesIn = (form: Form): Record<string, Choice> =>
  Object.fromEntries(
    rows(form, 'choices').flatMap((row) => {
      const take = text(row, 'take');
      return take === 'yours' || take === 'theirs' ? [[text(row, 'path'), take]] : [];
    }),
  );
