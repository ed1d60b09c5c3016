import { workbookSchema, workbookText } from '../../core/exchange/workbook.js';
import { exportWorkbook } from '../../store/workbook.js';
import type { Answerer } from '../house.js';

/** The whole kitchen as one file. */
export const workbookFile: Answerer = async (request, reply) => {
  const workbook = await exportWorkbook(request.server.house.db);
  if (!workbook) return reply.callNotFound();
  return reply
    .type('application/json; charset=utf-8')
    .header('cache-control', 'private, no-store')
    .header('content-disposition', 'attachment; filename="workbook.json"')
    .send(workbookText(workbook));
};

const schema = `${JSON.stringify(workbookSchema(), null, 2)}\n`;

/** What such a file may hold, for whoever writes one by hand. */
export const workbookSchemaFile: Answerer = (_request, reply) =>
  reply.type('application/schema+json; charset=utf-8').send(schema);
