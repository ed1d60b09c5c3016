import type { PrepPeriod, Tick } from './facts/prep-period.js';
import type { Job, PrepDay } from './prep.js';
import { exact } from './quantity/amount.js';
import { sum } from './quantity/rational.js';
import type { Quantity } from './quantity/units.js';

/** What is ticked, by day, recipe and step. */
export type Ticks = ReadonlyMap<string, readonly Tick[]>;

export type Done = {
  /** done: as much as it takes is made; part: less is, or nobody can say whether it is enough; open: nothing is ticked. */
  state: 'open' | 'part' | 'done';
  /** What the ticks say was made, and what is still to make; undefined where either can't be worked out. */
  made: Quantity | undefined;
  left: Quantity | undefined;
  /** The latest tick. */
  last: Tick | undefined;
};

export const noTicks: Ticks = new Map();

/** The ticks of some periods, each found by its job. */
export const ticksOf = (periods: readonly Pick<PrepPeriod, 'ticks'>[]): Ticks => {
  const found = new Map<string, Tick[]>();
  for (const tick of periods.flatMap(({ ticks }) => ticks)) {
    const job = jobOf(tick.date, tick.recipe, tick.step);
    const others = found.get(job);
    if (others) others.push(tick);
    else found.set(job, [tick]);
  }
  return found;
};

const jobOf = (date: string, recipe: string, step: string | null): string =>
  `${date} ${recipe} ${step ?? ''}`;

/**
 * How far a job is done, for the events it is needed for: the amounts ticked against what it takes now, exact. A job
 * whose amount grew since is part done; one whose amount is not known is done only if it was not known either when it
 * was ticked for every event.
 */
export const doneOf = (job: Job, ticks: Ticks): Done => {
  const events = new Set(job.shares.map(({ event }) => event.key));
  const all = ticks.get(jobOf(job.date, job.recipe.key, job.step?.key ?? null)) ?? [];
  const own = all.filter(({ event }) => events.has(event));
  const last = own.reduce<Tick | undefined>((a, b) => (a && a.at > b.at ? a : b), undefined);
  if (!last) return { state: 'open', made: undefined, left: undefined, last };
  const { batches, makes } = job;
  const known = own.flatMap((tick) => tick.batches ?? []);
  if (!batches) {
    const asTicked = known.length === 0 && own.length === events.size;
    return { state: asTicked ? 'done' : 'part', made: undefined, left: undefined, last };
  }
  const done = sum(known.map(exact));
  const enough = known.length > 0 && done.compare(batches) >= 0;
  const quantity = (of: typeof done): Quantity | undefined =>
    makes && { value: makes.value.times(of).over(batches), base: makes.base };
  return {
    state: enough ? 'done' : 'part',
    made: known.length > 0 ? quantity(done) : undefined,
    left: enough ? undefined : quantity(batches.minus(done)),
    last,
  };
};

/** How many jobs of some days are done. */
export const jobsDone = (days: readonly Pick<PrepDay, 'list'>[], ticks: Ticks): number =>
  ticks.size === 0
    ? 0
    : days.reduce((n, { list }) => n + list.filter((job) => doneOf(job, ticks).state === 'done').length, 0);
