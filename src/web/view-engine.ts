import { join } from 'node:path';
import { Eta } from 'eta';
import { print } from './html.js';
import { root } from './root.js';

const templates = join(root, 'views');

/** How views are filled: values are escaped unless they are markup (`Html`); each is compiled once. */
export const views = {
  engine: {
    eta: new Eta({ views: templates, cache: true, escapeFunction: print, autoTrim: [false, false] }),
  },
  templates,
  production: true,
};
