import { type Figure, meets } from '../figure.js';
import { engines, type Ground } from '../ground.js';
import { sizes } from '../kitchen/kitchen.js';
import { asker, within } from '../timing.js';

const rounds = 7;

/** From starting the program on a kitchen that is there to its first page. */
export const measureStart = async (ground: Ground): Promise<Figure[]> => {
  const figures: Figure[] = [];
  for (const engine of engines) {
    await (await ground.run(engine, sizes.events)).stop();
    const times: number[] = [];
    for (let round = 0; round < rounds; round += 1) {
      const begun = performance.now();
      const running = await ground.run(engine, sizes.events);
      const asking = asker();
      await asking.ask(running.address('/'));
      times.push(performance.now() - begun);
      asking.close();
      await running.stop();
    }
    const p50 = within(times, 50);
    const target = meets(p50, { rule: 'under', limit: 2000 });
    figures.push({ part: 'start', engine, of: 'first page', what: 'p50', value: p50, unit: 'ms', target });
  }
  return figures;
};
