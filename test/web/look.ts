/**
 * Shows every part of the look on pages of its own and takes their pictures into the folder named on the command
 * line: `node dist/test/web/look.js FOLDER`. With no folder it serves them at the address it prints.
 */
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Eta } from 'eta';
import fastify from 'fastify';
import { serveAssets, styles } from '../../src/web/assets.js';
import { Fields, fieldId } from '../../src/web/fields.js';
import { newKitchen } from '../../src/web/first-run/new-kitchen.js';
import type { Form } from '../../src/web/form.js';
import { formatFor } from '../../src/web/format.js';
import { html, print } from '../../src/web/html.js';
import { menuOfPages, whereMended } from '../../src/web/links.js';
import * as m from '../../src/web/marks.js';
import { root } from '../../src/web/root.js';
import { openBrowser } from '../browser/chromium.js';
import { problems } from './look/problems.js';

const line = (amount: string, unit: string, item: string, preparation: string, trim: string) => ({
  amount,
  unit,
  item,
  preparation,
  trim,
});
const form: Form = {
  name: 'Harvest tea',
  date: 'Sat 10 Oct',
  guests: 'forty or so',
  time: '4.30pm',
  state: 'b',
  place: 'hall',
  piece: 'on',
  note: 'Ring the bell.\nThe dog is friendly.',
  lines: [
    line('700', 'g', 'Crown squash', 'peeled, 3 cm dice', '720'),
    line('240', 'g', 'Pearl barley', 'rinsed', '100'),
    line('', 'ml', 'Rapeseed oil', '', '100'),
    line('1/4', 'tsp', 'Nutmeg', 'fresh grated', '100'),
  ],
};
const faults = {
  error: [
    {
      field: 'date',
      label: 'Day',
      sentence: 'Saturday 10 October is in the past. Did you mean next Saturday?',
    },
    { field: 'guests', label: 'Guests', sentence: 'Enter the number of guests in figures, such as 40.' },
  ],
  edit: [
    {
      field: 'lines[0].trim',
      label: 'Line 1, squash: trim yield',
      sentence: 'Trim yield must be between 1 and 100. You entered 720. Did you mean 72?',
    },
    {
      field: 'lines[2].amount',
      label: 'Line 3, oil: quantity',
      sentence: 'Enter a quantity, such as 700 or 3/4.',
    },
  ],
};
const titles: Record<string, [string, string]> = {
  week: ['Three parties by Sunday', 'Week'],
  event: ['Silver wedding buffet', 'Events'],
  change: ['Silver wedding buffet', 'Events'],
  recipe: ['Squash, sage & barley', 'Recipes'],
  edit: ['Squash, sage & barley', 'Recipes'],
  matrix: ['Diets & allergens', 'Events'],
  costing: ['Costing', 'Costing'],
  prep: ['Prep for Thursday', 'Prep'],
  error: ['Who, when, how many', 'Events'],
  first: ['An empty week', 'Week'],
};

const app = fastify();
const assets = serveAssets(app);
const eta = new Eta({ views: join(root, 'views'), escapeFunction: print, autoTrim: [false, false] });
const kitchen = { ...newKitchen, name: 'Hob Lane Kitchen' };

app.get<{ Params: { name: string } }>('/:name', (request, reply) => {
  const { name } = request.params;
  const [title, nav] = titles[name] ?? ['', ''];
  const wrong = name === 'error' || name === 'edit' ? faults[name] : [];
  const it = {
    title,
    nav,
    form,
    html,
    mark: (letter: string, fill: 'solid' | 'outline' | 'hatch' | 'dotted') => m.mark({ letter, fill }),
    qty: (figure: string, unit: string, fraction?: string) =>
      formatFor(kitchen).measure({ figure, unit, fraction }),
    m,
    fieldId,
    whereMended,
    problems,
    f: formatFor(kitchen),
    fields: new Fields(form, wrong),
    today: '2026-10-14',
    shell: {
      kitchen: kitchen.name,
      lang: 'en',
      paper: 'a4',
      letterKeys: true,
      words: menuOfPages,
      now: 'Wed 14 Oct, 10:20',
      assets,
      styles,
    },
  };
  const body = eta.renderString(readFileSync(join(root, 'test/web/look', `${name}.eta`), 'utf8'), it);
  return reply.type('text/html').send(eta.render('layouts/page', { ...it, body }));
});

const address = await app.listen({ port: 0 });
const [folder, ...only] = process.argv.slice(2);
if (!folder) console.log(`${address}/week and ${Object.keys(titles).join(', ')}`);
else {
  mkdirSync(folder, { recursive: true });
  const browser = await openBrowser();
  for (const name of only.length ? only : Object.keys(titles))
    for (const [width, height] of [
      [1366, 768],
      [390, 844],
      [800, 900],
    ] as const) {
      const page = await browser.newPage({ viewport: { width, height } });
      await page.goto(`${address}/${name}`, { waitUntil: 'networkidle' });
      await page.screenshot({ path: join(folder, `${name}-${width}.png`), fullPage: true });
      const wide = await page.evaluate('document.documentElement.scrollWidth');
      if (Number(wide) > width) console.log(`${name} at ${width} is ${wide} wide`);
      await page.close();
    }
  await browser.close();
  await app.close();
}
