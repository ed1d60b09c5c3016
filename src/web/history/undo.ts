import { changeById, changesTogether } from '../../store/history.js';
import { undo } from '../../store/undo.js';
import { undoTogether } from '../../store/undo-together.js';
import { Refused } from '../guards.js';
import { type Answerer, param } from '../house.js';
import { listOf, pageOf } from '../links.js';
import { answer, goTo, saving, withReceipt } from '../save.js';

/** Takes one save back and keeps what was saved since; where the same place changed since, both are shown. */
export const takeBack: Answerer = async (request, reply) => {
  const { db } = request.server.house;
  const id = param(request, 'change');
  const change = /^\d{1,15}$/.test(id) ? await changeById(db, Number(id)) : undefined;
  if (!change) throw new Refused('This save is no longer kept, so it can’t be taken back.', 404);
  const { entity, key, revision } = change;
  const outcome = await undo(db, change.id, saving(reply));
  if (outcome.outcome === 'removed')
    return goTo(reply, withReceipt(`${listOf(entity)}?undone`, { ...outcome, merged: [] }));
  const redraw = (faults: readonly { sentence: string }[]) => {
    throw new Refused(`This can’t be taken back. ${faults.map(({ sentence }) => sentence).join(' ')}`, 422);
  };
  const to = () => `${pageOf(entity, key)}?undone`;
  return answer(reply, { entity, key, form: {}, redraw, to }, outcome, revision);
};

/** Takes back all that was saved together, or, where one of it was changed since, nothing. */
export const takeBackTogether: Answerer = async (request, reply) => {
  const { db } = request.server.house;
  const id = param(request, 'change');
  const outcome = /^\d{1,15}$/.test(id) ? await undoTogether(db, Number(id), saving(reply)) : undefined;
  if (!outcome || outcome.outcome === 'gone')
    throw new Refused('This save is no longer kept, so it can’t be taken back.', 404);
  if (outcome.outcome === 'refused') {
    const reasons = outcome.problems.slice(0, 5).map(({ sentence }) => sentence);
    throw new Refused(`Nothing was taken back. ${reasons.join(' ')}`, 422);
  }
  const { together } = outcome;
  if (together === null) return goTo(reply, '/ingredients');
  const event = (await changesTogether(db, together)).find(({ entity }) => entity === 'event');
  return goTo(
    reply,
    `${event ? pageOf('event', event.key) : '/ingredients'}?together=${together}&undone=yes`,
  );
};
