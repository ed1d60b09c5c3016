import { type Figure, meets } from '../figure.js';
import { engines, type Ground } from '../ground.js';
import { sizes } from '../kitchen/kitchen.js';
import { pages } from '../measured.js';
import { asker, inTurn, within } from '../timing.js';

/** The same pages with ten times the events, both kitchens open at once and asked in turn. */
export const measureGrowth = async (ground: Ground): Promise<Figure[]> => {
  const figures: Figure[] = [];
  for (const engine of engines) {
    const few = await ground.run(engine, sizes.events);
    const many = await ground.run(engine, sizes.events * 10);
    const askers = [asker(), asker()];
    for (const { name: of, page } of pages) {
      const [before = [], after = []] = await inTurn(askers[0]!, [few.address(page), many.address(page)]);
      const ratio = within(after, 50) / within(before, 50);
      const figure = { part: 'growth', engine, of };
      figures.push(
        { ...figure, what: `p50 with ${sizes.events} events`, value: within(before, 50), unit: 'ms' },
        { ...figure, what: `with ${sizes.events * 10}`, value: within(after, 50), unit: 'ms' },
        { ...figure, what: 'ratio', value: ratio, unit: 'times' },
      );
      if (of === 'event page') figures.at(-1)!.target = meets(ratio, { rule: 'at most', limit: 1.2 });
    }
    const { now } = await many.memory();
    figures.push({
      part: 'growth',
      engine,
      of: 'memory of the process',
      what: `with ${sizes.events * 10} events`,
      value: now,
      unit: 'MB',
    });
    for (const one of askers) one.close();
    await few.stop();
    await many.stop();
  }
  return figures;
};
