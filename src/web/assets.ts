import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, extname, join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { root } from './root.js';

const packageFolder = (name: string): string =>
  dirname(createRequire(import.meta.url).resolve(`${name}/package.json`));

const fonts = (name: string, axis: string): [string, string][] =>
  ['latin', 'latin-ext'].map((part) => [
    `${name}-${part}.woff2`,
    join(packageFolder(`@fontsource-variable/${name}`), 'files', `${name}-${part}-${axis}-normal.woff2`),
  ]);

const own = (name: string): [string, string] => [name, join(root, 'views/assets', name)];

/** In the order the pages link them: what is narrower or printed overrides what stands before. */
export const styles = [
  'fonts.css',
  'ground.css',
  'marks.css',
  'charts.css',
  'buttons.css',
  'fields.css',
  'tables.css',
  'top.css',
  'page.css',
  'side.css',
  'lists.css',
  'eaters.css',
  'papers.css',
  'cards.css',
  'questions.css',
  'quotes.css',
  'costs.css',
  'curve.css',
  'cost-lines.css',
  'price.css',
  'guests.css',
  'week.css',
  'days.css',
  'ticks.css',
  'events.css',
  'recipes.css',
  'scale.css',
  'drafts.css',
  'ingredients.css',
  'prices.css',
  'figures.css',
  'narrow.css',
  'phone.css',
  'phone-lists.css',
];

const files: [string, string][] = [
  ...styles.map(own),
  own('sheet.css'),
  own('app.js'),
  own('mark.svg'),
  ['htmx.js', join(packageFolder('htmx.org'), 'dist/htmx.min.js')],
  ...fonts('encode-sans', 'wdth'),
  ...fonts('literata', 'opsz'),
];

const types: Record<string, string> = {
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

/** Reads every asset once and serves them under one hash of all, to be kept for ever; gives that address. */
export const serveAssets = (app: FastifyInstance): string => {
  const contents = new Map(files.map(([name, path]) => [name, readFileSync(path)]));
  const hash = createHash('sha256');
  for (const [name, bytes] of contents) hash.update(name).update(bytes);
  const address = `/assets/${hash.digest('hex').slice(0, 16)}`;
  app.get<{ Params: { name: string } }>(`${address}/:name`, { config: { open: true } }, (request, reply) => {
    const { name } = request.params;
    const bytes = contents.get(name);
    if (!bytes) return reply.callNotFound();
    return reply
      .type(types[extname(name)]!)
      .header('cache-control', 'public, max-age=31536000, immutable')
      .send(bytes);
  });
  return address;
};
