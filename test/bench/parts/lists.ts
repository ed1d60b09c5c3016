import { type Figure, meets } from '../figure.js';
import { engines, type Ground } from '../ground.js';
import { sizes } from '../kitchen/kitchen.js';
import { asker, inTurn, within } from '../timing.js';

const lists = ['/events', '/recipes', '/ingredients', '/find?q=leek', '/find?q=guest'];

/** The long lists and the find box, each whole. */
export const measureLists = async (ground: Ground): Promise<Figure[]> => {
  const figures: Figure[] = [];
  for (const engine of engines) {
    const running = await ground.run(engine, sizes.events);
    const asking = asker();
    const times = await inTurn(asking, lists.map(running.address), { warm: 30, rounds: 50 });
    for (const [i, of] of lists.entries()) {
      const [p50, p99] = [within(times[i]!, 50), within(times[i]!, 99)];
      const figure = { part: 'lists', engine, of, unit: 'ms' } as const;
      figures.push({ ...figure, what: 'p50', value: p50, target: meets(p50, { rule: 'under', limit: 100 }) });
      figures.push({ ...figure, what: 'p99', value: p99 });
    }
    asking.close();
    await running.stop();
  }
  return figures;
};
