import { monitorEventLoopDelay } from 'node:perf_hooks';
import { search } from '../../../src/way-out/search.js';
import { type Figure, meets } from '../figure.js';
import { dietsParty, size } from '../kitchen/diets-party.js';
import { within } from '../timing.js';

const rounds = 7;

/** The smallest way out of a whole party, from asking for it to its answer, and how long pages wait meanwhile. */
export const measureWayOut = async (): Promise<Figure[]> => {
  const times: number[] = [];
  const work: number[] = [];
  const delay = monitorEventLoopDelay({ resolution: 5 });
  for (let round = 0; round < rounds; round += 1) {
    const { event, facts } = dietsParty(`party ${round}`);
    delay.enable();
    const begun = performance.now();
    const used = process.cpuUsage();
    const found = await search({ event, facts, stoodIn: new Map() }).answer;
    times.push(performance.now() - begun);
    const { user, system } = process.cpuUsage(used);
    work.push((user + system) / 1000);
    delay.disable();
    if (found.ways.length === 0) throw new Error(`no way out of party ${round}`);
  }
  const { guests, dishes, courses, variants } = size;
  const of = `${guests} guests, ${dishes} dishes, ${courses} courses, ${variants} variants each`;
  const figure = { part: 'way-out', engine: 'no database', of };
  const slowest = Math.max(...times);
  return [
    { ...figure, what: 'p50', value: within(times, 50), unit: 'ms' },
    {
      ...figure,
      what: 'slowest',
      value: slowest,
      unit: 'ms',
      target: meets(slowest, { rule: 'under', limit: 2000 }),
    },
    { ...figure, what: 'processor time p50', value: within(work, 50), unit: 'ms' },
    { ...figure, what: 'pages wait at most', value: delay.max / 1e6, unit: 'ms' },
  ];
};
