import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { tick as aTick } from '../../core/facts/prep-period.js';
import type { Job } from '../../core/prep.js';
import { type JobDone, tick, untick } from '../../store/ticks.js';
import { marksNow } from '../coming.js';
import { addressesOf } from '../events/addresses.js';
import { type Form, rows, text } from '../form.js';
import { formatFor } from '../format.js';
import { Refused } from '../guards.js';
import type { Answerer } from '../house.js';
import { fragment, wantsPart } from '../page.js';
import { goTo, saving } from '../save.js';
import { type JobRow, jobRow } from './jobs.js';
import { dayList, eventList, type Listed, withTicks } from './list.js';
import { type Tally, tallyOf } from './sheet.js';
import { linkTo } from './show.js';
import { rowId } from './tick-row.js';

/** The row that was ticked as it stands now, and the count. */
export type TickedPage = { jobs: JobRow[]; tally: Tally; of: ListOf; said: string };

/** Which list a row stands on: that of a day, of one event on that day, or of all days of an event. */
export type ListOf = { page: 'day' | 'event'; event: string };

const { date, recipe, event, batches } = aTick.shape;
const sent = z.object({
  date,
  recipe,
  step: aTick.shape.step,
  for: z.array(z.object({ event, batches })).min(1).max(2000),
}) satisfies z.ZodType<JobDone>;

/** Ticks a job with the amounts its page showed, or takes the tick back; to htmx it answers with the row. */
export const saveTick: Answerer = async (request, reply) => {
  const form = request.body as Form;
  const job = readJob(form);
  const of: ListOf = { page: text(form, 'page') === 'event' ? 'event' : 'day', event: text(form, 'event') };
  const listed = await listFor(request, of, job.date);
  const there = onList(listed, job);
  if (!there)
    throw new Refused(
      'Not saved: this job is no longer on the list. It was moved or taken out since; open the list again.',
      409,
    );
  const own = new Set(there.shares.map((share) => share.event.key));
  const done = { ...job, for: job.for.filter((one) => own.has(one.event)) };
  const { db } = request.server.house;
  if (done.for.length > 0)
    await (text(form, 'done') === 'no' ? untick(db, done) : tick(db, done, saving(reply)));
  if (wantsPart(reply)) return answerRow(reply, there, await withTicks(db, listed.answer), of);
  const address = of.page === 'event' ? addressesOf(of.event).prep : linkTo(job.date, of.event);
  return goTo(reply, `${address}#${rowId(there)}`);
};

const readJob = (form: Form): JobDone => {
  const read = sent.safeParse({
    date: text(form, 'date'),
    recipe: text(form, 'recipe'),
    step: text(form, 'step') || null,
    for: rows(form, 'for').map((one) => ({
      event: text(one, 'event'),
      batches: text(one, 'batches') || null,
    })),
  });
  if (!read.success) throw new Refused('Not saved: this is no job of a prep list. Open the list again.', 400);
  return read.data;
};

const listFor = (request: FastifyRequest, { page, event }: ListOf, date: string): Promise<Listed> =>
  page === 'event' ? eventList(request, event) : dayList(request, date, event);

const onList = ({ answer }: Listed, { date, recipe, step }: JobDone): Job | undefined =>
  answer.value.days
    .find((day) => day.date === date)
    ?.list.find((job) => job.recipe.key === recipe && (job.step?.key ?? null) === step);

const answerRow = async (reply: FastifyReply, job: Job, { answer }: Listed, of: ListOf) => {
  const { days, facts, ticks } = answer.value;
  const row = jobRow(job, facts, await marksNow(reply.request), ticks);
  const tally = tallyOf(days, ticks, formatFor(facts.kitchen));
  const said = `${row.recipe}: ${words[row.tick.state]}. ${tally.words}.`;
  return fragment(reply, 'prep/ticked', { jobs: [row], tally, of, said });
};

const words = { open: 'open', part: 'done in part', done: 'done' };
