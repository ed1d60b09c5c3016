import { type Figure, meets } from '../figure.js';
import { engines, type Ground, type Running } from '../ground.js';
import { ingredientAt, wayOf } from '../kitchen/ingredients.js';
import { sizes } from '../kitchen/kitchen.js';

const rows = 50_000;
const units = { weighed: 'g', spooned: 'g', poured: 'ml', counted: 'each' } as const;

/** A list of 50 000 packs of the kitchen's ingredients, every price another one each month. */
const list = (month: number): string => {
  const lines = ['Code,Description,Pack size,Price'];
  for (let i = 0; i < rows; i += 1) {
    const which = i % sizes.ingredients;
    const size = `${100 + Math.floor(i / sizes.ingredients)} ${units[wayOf(which)]}`;
    const price = `${5 + (i % 90)}.${10 + ((i + month) % 80)}`;
    lines.push(`C${i},${ingredientAt(which).name},${size},${price}`);
  }
  return `${lines.join('\r\n')}\r\n`;
};

/** From sending a list to seeing what it changes, and from taking it over to its receipt; each in a real request. */
export const measurePriceList = async (ground: Ground): Promise<Figure[]> => {
  const figures: Figure[] = [];
  for (const engine of engines) {
    const running = await ground.run(engine, sizes.events);
    const note = (of: string, ms: number) => {
      const target = meets(ms, { rule: 'under', limit: of.startsWith('take') ? 10_000 : 5000 });
      figures.push({ part: 'price-list', engine, of, what: 'time', value: ms, unit: 'ms', target });
    };
    for (const [month, which] of ['new packs', 'other prices'].entries()) {
      const address = await send(running, list(month));
      const shown = await timed(() => ask(`${address}`));
      note(`show 50 000 ${which}`, shown.ms);
      const mark = /name="mark" value="(\w+)"/.exec(shown.page)?.[1] ?? '';
      const taken = await timed(() => ask(address, new URLSearchParams({ mark })));
      if (!/\d+ ingredients together/.test(taken.page.replaceAll(',', '')))
        throw new Error('nothing was taken over');
      note(`take over 50 000 ${which}`, taken.ms);
    }
    await running.stop();
  }
  return figures;
};

const timed = async (work: () => Promise<string>): Promise<{ ms: number; page: string }> => {
  const begun = performance.now();
  const page = await work();
  return { ms: performance.now() - begun, page };
};

const headersFor = (address: string) => ({ accept: 'text/html', origin: new URL(address).origin });

const ask = async (address: string, body?: URLSearchParams): Promise<string> => {
  const answer = await fetch(address, body ? { method: 'POST', body, headers: headersFor(address) } : {});
  if (!answer.ok) throw new Error(`${address} answered ${answer.status}`);
  return answer.text();
};

/** Sends a list as a browser sends a file, with its columns as guessed; where its preview stands. */
const send = async (running: Running, text: string): Promise<string> => {
  const address = running.address('/ingredients/prices');
  const body = new FormData();
  body.set('supplier', 'Wholesale');
  body.set('date', 'today');
  body.set('file', new Blob([text]), 'list.csv');
  const answer = await fetch(address, { method: 'POST', body, headers: headersFor(address) });
  if (!answer.url.endsWith('/columns')) return answer.url;
  const columns = new URLSearchParams({ headings: 'on', decimal: 'point', days: 'day-first' });
  for (const [i, is] of ['code', 'name', 'size', 'price'].entries()) columns.set(`columns[${i}].is`, is);
  await ask(answer.url, columns);
  return answer.url.replace(/\/columns$/, '');
};
