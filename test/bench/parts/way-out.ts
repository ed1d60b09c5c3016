import { monitorEventLoopDelay } from 'node:perf_hooks';
import { search } from '../../../src/way-out/search.js';
import { type Figure, meets } from '../figure.js';
import { dietsParty, type PartyKind, size } from '../kitchen/diets-party.js';
import { within } from '../timing.js';

const rounds = 5;
const kinds = [
  { kind: 'plain', name: 'a dish or two do' },
  { kind: 'mixed', name: 'no dish does for all' },
  { kind: 'few', name: 'portions of each for some alone' },
  { kind: 'many', name: 'four dishes for each course, in part by the solver' },
] as const;

/** The smallest way out of a whole party, from asking for it to its answer, and how long pages wait meanwhile. */
export const measureWayOut = async (): Promise<Figure[]> => {
  const figures: Figure[] = [];
  for (const { kind, name } of kinds) figures.push(...(await measured(kind, name)));
  return figures;
};

const measured = async (kind: PartyKind, name: string): Promise<Figure[]> => {
  const times: number[] = [];
  const work: number[] = [];
  const delay = monitorEventLoopDelay({ resolution: 5 });
  for (let round = 0; round < rounds; round += 1) {
    const { event, facts } = dietsParty(`party ${round}`, kind);
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
  const of = `${guests} guests × ${dishes} dishes × ${courses} courses × ${variants} variants, ${name}`;
  const figure = { part: 'way-out', engine: 'no database', of, unit: 'ms' } as const;
  const p50 = within(times, 50);
  return [
    { ...figure, what: 'p50', value: p50, target: meets(p50, { rule: 'under', limit: 2000 }) },
    { ...figure, what: 'slowest', value: Math.max(...times) },
    { ...figure, what: 'processor time p50', value: within(work, 50) },
    { ...figure, what: 'pages wait at most', value: delay.max / 1e6 },
  ];
};
