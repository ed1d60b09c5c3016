import { join } from 'node:path';
import { Eta } from 'eta';
import { print } from './html.js';
import { root } from './root.js';

const eta = new Eta({
  views: join(root, 'views'),
  cache: true,
  escapeFunction: print,
  autoTrim: [false, false],
});

/** A view filled with its model. Values are escaped unless they are markup (`Html`). */
export const render = (view: string, it: object): string => eta.render(view, it);
