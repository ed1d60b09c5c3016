import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Sheet } from '../core/sheets/sheet.js';
import { csvOf } from './csv.js';
import { type Head, page } from './page.js';
import type { ViewName, Views } from './views.js';

export type Form = 'page' | 'csv' | 'json';

/** How a sheet is asked for: by the ending of its address, else by what the reader accepts. */
export const formOf = ({ url, headers }: Pick<FastifyRequest, 'url' | 'headers'>): Form => {
  const path = url.split('?')[0]!;
  if (path.endsWith('.csv')) return 'csv';
  if (path.endsWith('.json')) return 'json';
  const { accept = '*/*' } = headers;
  if (/text\/html|\*\/\*/.test(accept)) return 'page';
  if (accept.includes('text/csv')) return 'csv';
  return /application\/json/.test(accept) ? 'json' : 'page';
};

/** Answers with a sheet as a page (which prints as paper), as CSV or as JSON, all of one and the same answer. */
export const answerSheet = <V extends ViewName>(
  reply: FastifyReply,
  sheet: Sheet,
  view: V,
  model: Views[V] & Head,
  part: ViewName = view,
): FastifyReply | Promise<FastifyReply> => {
  const form = formOf(reply.request);
  if (form === 'page') return page(reply, view, model, part);
  reply.header('vary', 'Accept').header('cache-control', 'private, no-cache');
  if (form === 'json') return reply.type('application/json; charset=utf-8').send(JSON.stringify(sheet));
  return reply
    .type('text/csv; charset=utf-8; header=present')
    .header('content-disposition', `attachment; filename="${sheet.sheet}.csv"`)
    .send(csvOf(sheet));
};
