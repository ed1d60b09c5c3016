import { doneOf, type Ticks } from '../../core/done.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Job } from '../../core/prep.js';
import { type Shown, showQuantity } from '../../core/quantity/show.js';
import { inZone } from '../clock.js';
import type { Format } from '../format.js';

/** How far a job is, and what its box sends: the amounts the reader sees, so that a later head-count is not ticked too. */
export type TickRow = {
  state: 'open' | 'part' | 'done';
  date: string;
  recipe: string;
  step: string;
  for: { event: string; batches: string }[];
  /** "Wed 2 Dec, 10:20 by Ines". */
  said: string;
  /** What was made where that is not just what it takes, and what is still to make. */
  made: Shown | undefined;
  left: Shown | undefined;
};

/** The box of a job on the prep list. */
export const tickRow = (job: Job, ticks: Ticks, kitchen: Kitchen, f: Format): TickRow => {
  const { state, made, left, last } = doneOf(job, ticks);
  const at = last && inZone(new Date(last.at), kitchen.timeZone);
  const asNeeded = made && job.makes && made.value.equals(job.makes.value);
  return {
    state,
    date: job.date,
    recipe: job.recipe.key,
    step: job.step?.key ?? '',
    for: job.shares.map(({ event, batches }) => ({ event: event.key, batches: batches?.toString() ?? '' })),
    said: at ? `${f.date(at.date)}, ${at.time} by ${last.who}` : '',
    made: made && !asNeeded ? showQuantity(made, kitchen, 'prep') : undefined,
    left: left && showQuantity(left, kitchen, 'prep'),
  };
};

/** The id of a job's row. */
export const rowId = ({ key }: Pick<Job, 'key'>): string => `job-${key.trim().replaceAll(' ', '_')}`;
