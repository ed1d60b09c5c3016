import type { EntityName } from '../../core/facts/facts.js';
import { read } from '../../store/documents.js';
import { type Change, history } from '../../store/history.js';
import { inZone } from '../clock.js';
import { type Format, formatFor } from '../format.js';
import { type Answerer, entityParam, param } from '../house.js';
import { pageOf } from '../links.js';
import { page } from '../page.js';
import { type ChangedPlace, changedPlaces } from './places.js';

/** One save in the history: who, when, and each place with what it was and became. */
export type HistoryRow = {
  id: number;
  at: string;
  time: string;
  who: string;
  said: string;
  places: ChangedPlace[];
};

/** The last saves of one thing, newest first, each with a button that takes it back. */
export const showHistory: Answerer = async (request, reply) => {
  const entity = entityParam(request);
  const key = param(request, 'key');
  const { db } = request.server.house;
  const changes = await history(db, entity, key);
  const { kitchen } = request;
  const rows = changes.map((change) => rowOf(change, kitchen.timeZone, formatFor(kitchen)));
  const latest = changes[0];
  const last = latest ? (latest.after ?? latest.before) : (await read(db, entity, key))?.doc;
  const name = last?.name ?? key;
  const back = latest && !latest.after ? undefined : pageOf(entity, key);
  return page(reply, 'history/show', { title: `History of ${name}`, rows, back });
};

const rowOf = (change: Change<EntityName>, zone: string, f: Format): HistoryRow => {
  const { date, time } = inZone(change.at, zone);
  const { id, who, before, after } = change;
  const said = !before ? 'Added' : !after ? 'Removed' : 'Changed';
  return {
    id,
    who,
    said,
    at: f.date(date),
    time,
    places: before && after ? changedPlaces(before, after, f) : [],
  };
};
