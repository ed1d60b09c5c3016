import { sql } from 'kysely';
import type { PrepPeriod, Tick } from '../core/facts/prep-period.js';
import type { Db, Trx } from './schema.js';

/** Days that are asked about, both included; all of them when absent. */
type Days = { from?: string; to?: string };

/** The prep periods that have any of these days, by key, with the ticks of those days; whole ones for all days. */
export const periods = async (db: Db, { from, to }: Days = {}): Promise<PrepPeriod[]> => {
  const [first, last] = [from ?? '-infinity', to ?? 'infinity'];
  const { rows } = await sql<PrepPeriod & { ticks: Row[] | null }>`
    select p.key, p.from_day as from, p.to_day as to,
      array(select event from prep_period_event where period_id = p.id order by event collate "C") as events,
      (select json_agg(t order by date, recipe collate "C", step collate "C", event collate "C") from tick t
        where period_id = p.id and date between ${first}::date and ${last}::date) as ticks
    from prep_period p where p.from_day <= ${last}::date and p.to_day >= ${first}::date
    order by p.key collate "C"`.execute(db);
  return rows.map(({ ticks, ...period }) => ({ ...period, ticks: (ticks ?? []).map(tickOf) }));
};

type Row = Omit<Tick, 'step'> & { step: string };

const tickOf = ({ date, recipe, step, event, batches, who, at }: Row): Tick => ({
  date,
  recipe,
  step: step === '' ? null : step,
  event,
  batches,
  who,
  at: toTheSecond(new Date(at)),
});

/** An instant as the workbook file has it. */
export const toTheSecond = (at: Date): string => at.toISOString().replace(/\.\d+Z$/, 'Z');

// One statement takes 65 535 values.
const mostRows = 5000;

/** Adds whole periods, as a workbook file holds them. */
export const insertPeriods = async (trx: Trx, all: readonly PrepPeriod[]): Promise<void> => {
  for (const period of all) {
    const id = await begin(trx, period);
    await addEvents(trx, id, period.events);
    const rows = period.ticks.map((tick) => ({ ...tick, period_id: id, step: tick.step ?? '' }));
    for (let done = 0; done < rows.length; done += mostRows)
      await trx
        .insertInto('tick')
        .values(rows.slice(done, done + mostRows))
        .execute();
  }
};

/** Begins a period and gives the id of its row. */
export const begin = async (
  trx: Trx,
  { key, from, to }: Pick<PrepPeriod, 'key' | 'from' | 'to'>,
): Promise<number> => {
  const row = await trx
    .insertInto('prep_period')
    .values({ key, from_day: from, to_day: to })
    .returning('id')
    .executeTakeFirstOrThrow();
  return row.id;
};

/** Adds events to a period, each once; one that is gone is left out. */
export const addEvents = async (trx: Trx, id: number, events: readonly string[]): Promise<void> => {
  await sql`insert into prep_period_event (period_id, event) select ${id}, key from event where key = any(${events})
    on conflict do nothing`.execute(trx);
};
