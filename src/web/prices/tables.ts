import type { FastifyReply, FastifyRequest } from 'fastify';
import { type Csv, readCsv } from '../../core/exchange/csv/read.js';
import { type TableName, tableText } from '../../core/exchange/csv/tables.js';
import { keepDraft } from '../../store/csv-drafts.js';
import { exportWorkbook } from '../../store/workbook.js';
import type { Fault } from '../fields.js';
import type { Answerer } from '../house.js';
import { page } from '../page.js';
import { goTo, saving } from '../save.js';
import { sentWith } from './sent.js';

/** A kitchen's own tables are longer than any price list. */
const limits = { rows: 1_000_000, letters: 64_000_000 };

export const readTable = (text: string): Csv | { sentence: string } => readCsv(text, limits);

/** One table of the kitchen as CSV. */
export const tableFile =
  (name: TableName): Answerer =>
  async (request: FastifyRequest, reply: FastifyReply) => {
    const kitchen = await exportWorkbook(request.server.house.db);
    if (!kitchen) return reply.callNotFound();
    return reply
      .type('text/csv; charset=utf-8; header=present')
      .header('cache-control', 'private, no-store')
      .header('content-disposition', `attachment; filename="${name}.csv"`)
      .send(tableText(name, kitchen));
  };

/** Where the three tables are had, and brought in again. */
export const showTables: Answerer = (_request, reply) => draw(reply);

/** Takes a table to be looked at. */
export const beginTable: Answerer = async (request, reply) => {
  const { text } = await sentWith(request);
  const csv = readTable(text);
  if ('sentence' in csv) {
    reply.code(422);
    return draw(reply, [{ field: 'file', label: 'The file', sentence: csv.sentence }]);
  }
  const { db } = request.server.house;
  const key = await keepDraft(db, { kind: 'tables', text, settings: {} }, saving(reply));
  return goTo(reply, `/csv/${key}`);
};

const draw = (reply: FastifyReply, faults: readonly Fault[] = []) =>
  page(reply, 'prices/tables', { title: 'Tables as CSV', nav: 'Recipes', faults, form: { file: '' } });
