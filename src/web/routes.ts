import type { FastifyInstance } from 'fastify';
import { health } from './health.js';
import { takeBack } from './history/undo.js';
import type { Answerer } from './house.js';
import { menu } from './menu.js';
import { saveMerge } from './merge/resolve.js';

type Options = {
  /** Needs neither sign-in nor a kitchen. */
  open?: boolean;
  /** Needs no kitchen. */
  bare?: boolean;
};
type Route = { method: 'GET' | 'POST'; url: string; answer: Answerer } & Options;

const get = (url: string, answer: Answerer, options: Options = {}): Route => ({
  method: 'GET',
  url,
  answer,
  ...options,
});

const post = (url: string, answer: Answerer, options: Options = {}): Route => ({
  method: 'POST',
  url,
  answer,
  ...options,
});

/** A sheet answers at its address as a page and on paper, and with an ending as CSV and JSON. */
export const sheet = (url: string, answer: Answerer): Route[] => [
  get(url, answer),
  get(`${url}.csv`, answer),
  get(`${url}.json`, answer),
];

/** Every address of the workbook. */
export const routes: Route[] = [
  get('/health', health, { open: true }),
  get('/menu', menu),
  post('/merge/:entity/:key', saveMerge),
  post('/undo/:change', takeBack),
];

export const useRoutes = (app: FastifyInstance): void => {
  for (const { method, url, answer, open, bare } of routes)
    app.route({ method, url, handler: answer, config: { open, bare } });
};
