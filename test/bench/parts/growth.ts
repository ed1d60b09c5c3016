import { type Figure, meets } from '../figure.js';
import { type Engine, engines, type Ground } from '../ground.js';
import { sizes } from '../kitchen/kitchen.js';
import { pages } from '../measured.js';
import { asker, inTurn, type Times, within } from '../timing.js';

const [few, many] = [sizes.events, sizes.events * 10];

/** The same pages with ten times the events, both kitchens open at once and asked in turn. */
export const measureGrowth = async (ground: Ground): Promise<Figure[]> => {
  const figures: Figure[] = [];
  for (const engine of engines) {
    const kitchens = [await ground.run(engine, few), await ground.run(engine, many)];
    const asking = asker();
    const bothSave = async () => {
      for (const kitchen of kitchens) await kitchen.save();
    };
    for (const { name, page } of pages) {
      const addresses = kitchens.map((kitchen) => kitchen.address(page));
      figures.push(...compared(engine, name, await inTurn(asking, addresses)));
      const saved = await inTurn(asking, addresses, { before: bothSave });
      figures.push(...compared(engine, `${name}, after a save`, saved));
    }
    const { now } = await kitchens[1]!.memory();
    figures.push({
      part: 'growth',
      engine,
      of: 'memory of the process',
      what: `with ${many} events`,
      value: now,
      unit: 'MB',
    });
    asking.close();
    for (const kitchen of kitchens) await kitchen.stop();
  }
  return figures;
};

const compared = (engine: Engine, of: string, [before = [], after = []]: Times[]): Figure[] => {
  const ratio = within(after, 50) / within(before, 50);
  const figure = { part: 'growth', engine, of };
  const target = of.startsWith('event page') ? { target: meets(ratio, { rule: 'at most', limit: 1.2 }) } : {};
  return [
    { ...figure, what: `p50 with ${few} events`, value: within(before, 50), unit: 'ms' },
    { ...figure, what: `with ${many}`, value: within(after, 50), unit: 'ms' },
    { ...figure, what: 'ratio', value: ratio, unit: 'times', ...target },
  ];
};
