import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { page, wantsPart } from './page.js';

type Trouble = { title: string; sentence: string };

const troubles: Record<number, Trouble> = {
  400: { title: 'That could not be read', sentence: 'The page sent something the workbook does not know.' },
  401: { title: 'Sign in first', sentence: 'Sign in to go on; what you typed stays on the page.' },
  403: { title: 'Not from here', sentence: 'This is not allowed from where you are.' },
  404: {
    title: 'Nothing at this address',
    sentence: 'What stood here was renamed or never was. The find box looks through everything.',
  },
  409: { title: 'That was not done', sentence: 'Something else stands in its way. Go back and look again.' },
  413: {
    title: 'Too much at once',
    sentence: 'What was sent is larger than the workbook takes: 2 MB for a form, 64 MB for a file.',
  },
  415: { title: 'That could not be read', sentence: 'The workbook reads forms; this was something else.' },
  422: { title: 'That was not done', sentence: 'What was sent does not fit. Go back and look again.' },
  429: { title: 'Wait a little', sentence: 'Too many tries. Wait a minute, then try again.' },
  503: {
    title: 'The database does not answer',
    sentence: 'Nothing was saved just now. Wait a moment, then go back and try again.',
  },
};

const mistake = (id: string): Trouble => ({
  title: 'The workbook made a mistake',
  sentence: `Nothing was saved by this step. Go back and try again; if it stays, the log of the workbook has the details under ${id}.`,
});

/** Answers every error in plain words: a whole page, a line above the page for htmx, JSON where JSON was asked. */
export const useErrors = (app: FastifyInstance): void => {
  app.setNotFoundHandler((request, reply) => answer(request, reply, 404));
  app.setErrorHandler<FastifyError>((error, request, reply) => {
    const status = lost(error) ? 503 : (error.statusCode ?? 500);
    if (status >= 500) request.log.error({ err: error }, 'page failed');
    if (status === 503) reply.header('retry-after', '5');
    return answer(request, reply, status, status < 500 && spoken(error) ? error.message : undefined);
  });
};

/** Our own errors carry a sentence for people; those of libraries carry a code. */
const spoken = (error: FastifyError): boolean => error.code === undefined;

const lostCodes = new Set(['ECONNREFUSED', 'ECONNRESET', 'ETIMEDOUT', 'EPIPE', '57P01', '57P02', '57P03']);

const lost = (error: FastifyError): boolean =>
  lostCodes.has(error.code) ||
  error.code?.startsWith('08') === true ||
  /connection terminated|timeout exceeded when trying to connect|not queryable|is closed|been destroyed/i.test(
    error.message,
  );

const answer = async (request: FastifyRequest, reply: FastifyReply, status: number, sentence?: string) => {
  const known = troubles[status] ?? (status < 500 ? troubles[400]! : mistake(request.id));
  const trouble = { ...known, sentence: sentence ?? known.sentence };
  reply.code(status);
  if (request.url.split('?')[0]!.endsWith('.json')) return reply.send({ error: trouble.sentence });
  if (wantsPart(reply)) reply.header('hx-retarget', '#notice').header('hx-reswap', 'innerHTML');
  return page(
    reply,
    'errors/show',
    { ...trouble, status, changing: request.method !== 'GET' },
    'errors/_notice',
  );
};
