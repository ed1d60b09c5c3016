import { type Figure, meets } from '../figure.js';
import { type Engine, engines, type Ground, type Running } from '../ground.js';
import { sizes } from '../kitchen/kitchen.js';
import { factsAt, type Measured, pages } from '../measured.js';
import { type Asker, asker, inTurn, within } from '../timing.js';

/** The pages one works with, beside the same facts as bare JSON; and the memory the workbook takes by then. */
export const measurePages = async (ground: Ground): Promise<Figure[]> => {
  const figures: Figure[] = [];
  for (const engine of engines) {
    const running = await ground.run(engine, sizes.events);
    const asking = asker();
    for (const page of pages) figures.push(...(await onePage(page, engine, running, asking)));
    const { now, most } = await running.memory();
    const of = 'memory of the process';
    figures.push({ part: 'pages', engine, of, what: 'now', value: now, unit: 'MB' });
    figures.push({ part: 'pages', engine, of, what: 'at most', value: most, unit: 'MB' });
    asking.close();
    await running.stop();
  }
  return figures;
};

const onePage = async (one: Measured, engine: Engine, running: Running, asking: Asker): Promise<Figure[]> => {
  const facts = factsAt(one.name);
  const figure = (what: string, value: number, unit: Figure['unit'] = 'ms', of = one.name): Figure => ({
    part: 'pages',
    engine,
    of,
    what,
    value,
    unit,
  });
  // Asked for the first time, nothing of it is in memory yet.
  const { ms: first } = await asking.ask(running.address(one.page));
  await sameQueries(one.page, facts, running);
  const both = [one.page, facts].map(running.address);
  const compared = async (of: string, before?: () => Promise<void>): Promise<Figure[]> => {
    const [page = [], json = []] = await inTurn(asking, both, { before });
    const ratio = within(page, 50) / within(json, 50);
    return [
      figure('p50', within(page, 50), 'ms', of),
      figure('p99', within(page, 99), 'ms', of),
      figure('least', Math.min(...page), 'ms', of),
      figure('as JSON p50', within(json, 50), 'ms', of),
      figure('as JSON p99', within(json, 99), 'ms', of),
      { ...figure('ratio', ratio, 'times', of), target: meets(ratio, { rule: 'at most', limit: 1.5 }) },
    ];
  };
  const warm = await compared(one.name);
  if (engine === 'PostgreSQL') warm[0]!.target = meets(warm[0]!.value, { rule: 'under', limit: 25 });
  const size = async (path: string) => (await asking.ask(running.address(path))).bytes / 1000;
  return [
    ...warm,
    figure('first', first),
    figure('page', await size(one.page), 'kB'),
    figure('JSON', await size(facts), 'kB'),
    // Nothing kept of the database holds any longer, and all of it is asked again.
    ...(await compared(`${one.name}, after a save`, running.save)),
  ];
};

/** The comparison is worth something only while both ask the same of the database. */
const sameQueries = async (page: string, facts: string, { queries }: Running): Promise<void> => {
  const [asked, beside] = [(await queries(page)).sort(), (await queries(facts)).sort()];
  const lacks = asked.filter((one) => !beside.includes(one));
  const more = beside.filter((one) => !asked.includes(one));
  if (lacks.length + more.length === 0 && asked.length === beside.length) return;
  const said = (all: readonly string[]) => all.map((one) => `  ${one.slice(0, 300)}`).join('\n');
  throw new Error(
    `${page} and ${facts} don't ask the same.\nThe page alone asks:\n${said(lacks)}\nthe facts alone:\n${said(more)}`,
  );
};
