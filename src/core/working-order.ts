import type { Step } from './facts/recipe.js';
import type { Job } from './prep.js';

export const stations = ['Bench', 'Stove', 'Oven', 'Fridge'] as const;
export type Station = (typeof stations)[number];

/** Where a step is done: in the oven, on the stove, in the fridge by itself, else at the bench. */
export const stationOf = (step: Step | undefined): Station => {
  if (step?.oven) return 'Oven';
  if (step && step.rings > 0) return 'Stove';
  return step && step.fridgeShelves > 0 && !step.attended ? 'Fridge' : 'Bench';
};

/** Jobs done one after the other at one station; `again` when the day has been there before. */
export type Stay = { station: Station; again: boolean; jobs: Job[] };

/**
 * A day's jobs station by station, so that a list can be worked from its top to its end: no step before those above it
 * in its recipe, no recipe before the components it takes. It goes first where what must still be carried to most other
 * stations begins, then where most can be done, so that few stations come twice. Jobs come components first, each
 * recipe's steps in order.
 */
export const stays = (jobs: readonly Job[]): Stay[] => {
  const before = waitsFor(jobs);
  const ways = waysToGo(jobs, before);
  const left = new Set(jobs);
  const found: Stay[] = [];
  const been = new Set<Station>();
  while (left.size > 0) {
    const free = stations.map((station) => {
      const jobs = stayAt(station, left, before);
      return { station, jobs, way: Math.max(-1, ...jobs.map((job) => ways.get(job)!)) };
    });
    const next = free.reduce((best, one) =>
      one.way > best.way || (one.way === best.way && one.jobs.length > best.jobs.length) ? one : best,
    );
    // Two recipes of one key, as served and as today, may seem to wait for each other: the list's own order decides.
    const [first] = left;
    const { station, jobs: done } = next.jobs.length > 0 ? next : { station: first!.station, jobs: [first!] };
    found.push({ station, again: been.has(station), jobs: done });
    been.add(station);
    for (const job of done) left.delete(job);
  }
  return found;
};

const stayAt = (station: Station, left: ReadonlySet<Job>, before: ReadonlyMap<Job, Job[]>): Job[] => {
  const done = new Set<Job>();
  for (const job of left)
    if (job.station === station && before.get(job)!.every((one) => done.has(one) || !left.has(one)))
      done.add(job);
  return [...done];
};

/** How often what comes of each job is still carried from one station to another. */
const waysToGo = (jobs: readonly Job[], before: ReadonlyMap<Job, Job[]>): Map<Job, number> => {
  const ways = new Map(jobs.map((job) => [job, 0]));
  for (const job of jobs.toReversed())
    for (const one of before.get(job)!) {
      const way = ways.get(job)! + (one.station === job.station ? 0 : 1);
      ways.set(one, Math.max(way, ways.get(one)!));
    }
  return ways;
};

/** For each job those of the day that must be done before it. */
const waitsFor = (jobs: readonly Job[]): Map<Job, Job[]> => {
  const ofRecipe = new Map<string, Job[]>();
  for (const job of jobs) {
    const mine = ofRecipe.get(job.recipe.key);
    if (mine) mine.push(job);
    else ofRecipe.set(job.recipe.key, [job]);
  }
  return new Map(
    jobs.map((job) => {
      const { recipe, number } = job;
      const earlier = ofRecipe.get(recipe.key)!.filter((one) => one.recipe === recipe && one.number < number);
      const components = recipe.lines.flatMap(({ item }) =>
        'component' in item ? (ofRecipe.get(item.component) ?? []) : [],
      );
      return [job, [...earlier, ...components]];
    }),
  );
};
