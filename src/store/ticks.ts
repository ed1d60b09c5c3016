import { sql } from 'kysely';
import type { Tick } from '../core/facts/prep-period.js';
import { moreOf, newPeriod, periodOn } from '../core/prep-period.js';
import { preparedOn } from './coming.js';
import { addEvents, begin, toTheSecond } from './prep-periods.js';
import type { Saving } from './rows.js';
import { saving } from './saves.js';
import type { Db, Trx } from './schema.js';

/** One job of the list, and how many batches of it were made for each of its events. */
export type JobDone = Pick<Tick, 'date' | 'recipe' | 'step'> & { for: Pick<Tick, 'event' | 'batches'>[] };

/**
 * Ticks a job for its events with the amounts made, in the period of its day, which begins with its first tick. The
 * same again changes nothing, less than is ticked already takes nothing back, an event that is gone is left out.
 */
export const tick = (db: Db, job: JobDone, { who, at }: Saving): Promise<void> =>
  saving(db, async (trx) => {
    const id = await periodFor(trx, job.date);
    await addEvents(
      trx,
      id,
      job.for.map(({ event }) => event),
    );
    const rows = await trx
      .selectFrom('prep_period_event')
      .select('event')
      .where('period_id', '=', id)
      .execute();
    const there = new Set(rows.map(({ event }) => event));
    for (const part of job.for)
      if (there.has(part.event)) await put(trx, id, { ...job, ...part, who, at: toTheSecond(at) });
  });

const periodFor = async (trx: Trx, date: string): Promise<number> => {
  const rows = await trx.selectFrom('prep_period').selectAll().execute();
  const all = rows.map(({ id, key, from_day, to_day }) => ({ id, key, from: from_day, to: to_day }));
  const there = periodOn(date, all);
  if (there) return there.id;
  const period = newPeriod(date, all);
  const events = await preparedOn(trx, period);
  const id = await begin(trx, period);
  await addEvents(trx, id, events);
  return id;
};

const ofJob = ({ date, recipe, step }: Pick<Tick, 'date' | 'recipe' | 'step'>) =>
  sql<boolean>`date = ${date} and recipe = ${recipe} and step = ${step ?? ''}`;

const put = async (trx: Trx, period: number, made: Tick): Promise<void> => {
  const { event, date, recipe, step, batches, who, at } = made;
  const there = await trx
    .selectFrom('tick')
    .select('batches')
    .where(ofJob(made))
    .where('event', '=', event)
    .executeTakeFirst();
  const most = there ? moreOf(there.batches, batches) : batches;
  if (there && most === there.batches) return;
  await trx
    .insertInto('tick')
    .values({ period_id: period, event, date, recipe, step: step ?? '', batches: most, who, at })
    .onConflict((same) =>
      same.columns(['period_id', 'event', 'date', 'recipe', 'step']).doUpdateSet({ batches: most, who, at }),
    )
    .execute();
};

/** Takes a job's ticks back for these events. */
export const untick = (db: Db, job: JobDone): Promise<void> =>
  saving(db, async (trx) => {
    const events = job.for.map(({ event }) => event);
    await trx.deleteFrom('tick').where(ofJob(job)).where('event', 'in', events).execute();
  });

/** How many jobs are ticked for an event: they go with it. */
export const ticksFor = async (db: Db, event: string): Promise<number> => {
  const { n } = await db
    .selectFrom('tick')
    .select((eb) => eb.fn.countAll<number>().as('n'))
    .where('event', '=', event)
    .executeTakeFirstOrThrow();
  return n;
};
