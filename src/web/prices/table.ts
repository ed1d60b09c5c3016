import type { FastifyReply, FastifyRequest } from 'fastify';
import type { TablePlan } from '../../core/exchange/csv/plan.js';
import type { Csv } from '../../core/exchange/csv/read.js';
import type { Found, Refused } from '../../core/exchange/csv/reader.js';
import { draftBy } from '../../store/csv-drafts.js';
import { planTable, takeTable } from '../../store/csv-tables.js';
import { type Form, text } from '../form.js';
import { formatFor } from '../format.js';
import { type ChangedPlace, changedPlaces } from '../history/places.js';
import { type Answerer, param } from '../house.js';
import { listOf, pageOf } from '../links.js';
import { page } from '../page.js';
import { goTo, saving } from '../save.js';
import { mostShown } from './model.js';
import { readTable } from './tables.js';

type ChangedRow = { name: string; href: string; line: number; places: ChangedPlace[] };
export type TablePage = {
  address: string;
  entity: TablePlan['entity'];
  mark: string;
  unreadable: string;
  moved: boolean;
  fresh: { name: string; line: number }[];
  freshCount: number;
  changed: ChangedRow[];
  changedCount: number;
  same: number;
  refused: Refused[];
  refusedCount: number;
};

/** What one of the kitchen's tables would change; nothing has changed yet. */
export const showTable: Answerer = async (request, reply) => {
  const csv = await csvOf(request);
  return csv ? draw(reply, csv) : reply.callNotFound();
};

/** Takes the table over, all of it or nothing. */
export const takeOverTable: Answerer = async (request, reply) => {
  const csv = await csvOf(request);
  if (!csv) return reply.callNotFound();
  const asked = {
    mark: text(request.body as Form, 'mark'),
    draft: param(request, 'draft'),
    ...saving(reply),
  };
  const outcome = await takeTable(request.server.house.db, csv, asked);
  if (outcome.outcome === 'saved') {
    const list = listOf(text(request.body as Form, 'entity') === 'recipe' ? 'recipe' : 'ingredient');
    return goTo(reply, outcome.together === null ? list : `${list}?together=${outcome.together}`);
  }
  reply.code(409);
  return draw(reply, csv, true);
};

const csvOf = async (request: FastifyRequest): Promise<Csv | undefined> => {
  const draft = await draftBy(request.server.house.db, 'tables', param(request, 'draft'));
  const csv = draft && readTable(draft.text);
  return csv && !('sentence' in csv) ? csv : undefined;
};

const draw = async (reply: FastifyReply, csv: Csv, moved = false) => {
  const { server, kitchen } = reply.request;
  const planned = await planTable(server.house.db, csv);
  const unreadable = 'sentence' in planned ? planned.sentence : '';
  const nothing = { entity: 'ingredient' as const, fresh: [], changed: [], same: 0, refused: [] };
  const { plan, mark } = 'sentence' in planned ? { plan: nothing, mark: '' } : planned;
  const { entity, fresh, changed, refused } = plan;
  const row = ({ doc, before, line }: Found): ChangedRow => ({
    name: doc.name,
    href: pageOf(entity, doc.key),
    line,
    places: before ? changedPlaces(before, doc, formatFor(kitchen)) : [],
  });
  const model: TablePage = {
    address: `/csv/${param(reply.request, 'draft')}`,
    entity,
    mark,
    unreadable,
    moved,
    fresh: fresh.slice(0, mostShown).map(({ doc, line }) => ({ name: doc.name, line })),
    freshCount: fresh.length,
    changed: changed.slice(0, mostShown).map(row),
    changedCount: changed.length,
    same: plan.same,
    refused: refused.slice(0, mostShown),
    refusedCount: refused.length,
  };
  if (unreadable) reply.code(422);
  return page(reply, 'prices/table', { title: titleOf(model), nav: 'Recipes', ...model });
};

const titleOf = ({ entity, freshCount, changedCount, refusedCount, unreadable }: TablePage): string => {
  if (unreadable) return 'Not one of our tables';
  if (refusedCount > 0) return 'Something must be mended first';
  return freshCount + changedCount === 0 ? 'Nothing would change' : `What this table of ${entity}s changes`;
};
