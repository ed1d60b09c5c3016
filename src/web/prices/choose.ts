import type { Choice } from '../../core/exchange/prices/match.js';
import { nearNames, sameName } from '../../core/near-names.js';
import { chooseFor } from '../../store/csv-drafts.js';
import { type Named, namesOf } from '../../store/names.js';
import { Reading } from '../faults.js';
import { type Form, rows, text } from '../form.js';
import type { Answerer } from '../house.js';
import { goTo } from '../save.js';
import { addressOf, draftOf, listOfSupplier, notKept } from './draft.js';
import { drawPreview } from './preview.js';

/** Keeps what the cook said of rows nobody had matched, or that a match is wrong; the list is worked out anew. */
export const chooseRows: Answerer = async (request, reply) => {
  const draft = await draftOf(request);
  const list = draft && listOfSupplier(request.kitchen, draft.settings.supplier);
  if (!draft || !list) return notKept(reply);
  const { db } = request.server.house;
  const form = request.body as Form;
  const names = (await namesOf(db)).ingredients.filter(({ archived }) => !archived);
  const reading = new Reading(form);
  const chosen: Record<string, Choice> = {};
  rows(form, 'rows').forEach((row, i) => {
    const choice = readChoice(reading, row, `rows[${i}]`, names);
    if (choice) chosen[text(row, 'id')] = choice;
  });
  const again = text(form, 'ask');
  if (again !== '') chosen[again] = { to: 'ask' };
  if (reading.faults.length > 0) {
    reply.code(422);
    return drawPreview(reply, draft, list, { form, faults: reading.faults });
  }
  const settings = { ...draft.settings, choices: { ...draft.settings.choices, ...chosen } };
  await chooseFor(db, draft.key, settings);
  const asked = text(form, 'q');
  return goTo(
    reply,
    `${addressOf(draft.key)}${asked ? `?${new URLSearchParams({ q: asked })}` : ''}#unmatched`,
  );
};

const readChoice = (reading: Reading, row: Form, at: string, names: readonly Named[]): Choice | undefined => {
  const to = text(row, 'to');
  const name = text(row, 'name').trim();
  if (to === 'out') return { to: 'out' };
  if (to.startsWith('k:')) return { to: 'ingredient', ingredient: to.slice(2) };
  if (to !== 'named' && to !== 'new') return undefined;
  const there = names.find((one) => sameName(one.name, name));
  if (there) return { to: 'ingredient', ingredient: there.key };
  if (to === 'new' && name !== '' && name.length <= 120) return { to: 'new', name };
  const [near] = nearNames(
    name,
    names.map((one) => one.name),
  );
  const mean = near ? ` Did you mean ${near}?` : ' Choose “A new ingredient” to make it one.';
  reading.refuse(
    `${at}.name`,
    name || 'Name',
    name === '' || name.length > 120
      ? 'Enter a name of at most 120 letters.'
      : `There is no ingredient ${name}.${mean}`,
  );
  return undefined;
};
