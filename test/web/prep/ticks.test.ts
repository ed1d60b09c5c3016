import { afterEach, beforeEach, expect, test } from 'vitest';
import { edit } from '../../../src/store/changes.js';
import { read } from '../../../src/store/documents.js';
import { periods } from '../../../src/store/prep-periods.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeEach(async () => {
  agent = await agentOn(exampleKitchen());
});
afterEach(() => agent.close());

const day = '/prep?date=2026-12-02';
const ragu = 'job-2026-12-02_lentil-ragu_';
/** The form of a row, found by the beginning of its id, as a browser would send it. */
const rowOf = (page: string, id: string): string => {
  const row = page.split(/(?=<li class="task)/).find((one) => one.includes(`id="${id}`));
  if (!row) throw new Error(`there is no row ${id}`);
  return row;
};
const formOf = async (id: string, at = day) => fieldsOf(rowOf((await agent.get(at)).text, id), '/prep/ticks');
const ticked = async () => (await periods(agent.db)).flatMap(({ ticks }) => ticks);
/** How many adults of the choir eat the pie with the ragù; three children, 9.5 + 4 portions of 16 a batch, come to 13.5. */
const setPies = async (adults: number) => {
  const { revision } = (await read(agent.db, 'event', 'choir-supper'))!;
  const counts = [
    { group: 'adults', guests: adults },
    { group: 'children', guests: 3 },
  ];
  await edit(agent.db, 'event', 'choir-supper', {
    who: 'test',
    at: new Date(),
    revision,
    change: (doc) => ({
      ...doc,
      courses: doc.courses.map((course) => ({
        ...course,
        dishes: course.dishes.map((dish) =>
          dish.recipe === 'lentil-pie' ? { ...dish, eaters: { counts } } : dish,
        ),
      })),
    }),
  });
};

test('a tick without script leads back to its row, which is struck and counted, and is taken back again', async () => {
  const sent = await formOf(ragu);
  const answer = await agent.post('/prep/ticks', { ...sent, done: 'yes' });
  expect(answer.status).toBe(303);
  expect(answer.headers.location).toMatch(new RegExp(`^/prep\\?date=2026-12-02#${ragu}`));
  const { text } = await agent.get(day);
  expect(text).toContain('1 of 10 done');
  const row = rowOf(text, ragu);
  expect(row).toMatch(/^<li class="task done"/);
  expect(row).toContain('aria-checked="true"');
  expect(row).toContain('Done Wed 14 Oct, 10:20 by the owner.');
  expect(text.match(/class="paper tick-box"><\/span>/g)).toHaveLength(9);
  await agent.post('/prep/ticks', { ...(await formOf(ragu)), done: 'no' });
  expect(await ticked()).toEqual([]);
  expect((await agent.get(day)).text).toContain('<span id="tally"></span>');
});

// 13.5 of 16 portions are 0.84375 of 4 kg, 3.375 kg; three more make it 4.125 kg.
test('a job that grew since says what was made and what is still to make, until that is ticked too', async () => {
  await agent.post('/prep/ticks', { ...(await formOf(ragu)), done: 'yes' });
  await setPies(11);
  const row = rowOf((await agent.get(day)).text, ragu);
  expect(row).toMatch(/^<li class="task in-part"/);
  expect(row).toContain('aria-checked="mixed"');
  const plain = row.replace(/<[^>]*>/g, '').replace(/\s+/g, ' ');
  expect(plain).toMatch(/Made 3\.4\s?kg of 4\.1\s?kg: 750\s?g still to make/);
  await agent.post('/prep/ticks', { ...(await formOf(ragu)), done: 'yes' });
  expect(rowOf((await agent.get(day)).text, ragu)).toMatch(/^<li class="task done"/);
});

test('what is ticked is what the page showed, not what it takes by the time of the tick', async () => {
  const shown = await formOf(ragu);
  await setPies(11);
  await agent.post('/prep/ticks', { ...shown, done: 'yes' });
  expect(rowOf((await agent.get(day)).text, ragu)).toMatch(/^<li class="task in-part"/);
});

test('to htmx it answers with the row and the count alone', async () => {
  const sent = { ...(await formOf(ragu)), done: 'yes' };
  const { text, status } = await agent.post('/prep/ticks', sent).set('hx-request', 'true');
  expect(status).toBe(200);
  expect(text.trimStart()).toMatch(/^<li class="task done" id="job-/);
  expect(text.match(/<li class="task/g)).toHaveLength(1);
  expect(text).toMatch(/hx-target="#tally"[^>]*>, <b class="ink">1 of 10 done/);
});

test('one event’s own list ticks for that event alone, and leads back to it', async () => {
  const at = '/events/choir-supper/prep';
  const answer = await agent.post('/prep/ticks', { ...(await formOf(ragu, at)), done: 'yes' });
  expect(answer.headers.location).toMatch(/^\/events\/choir-supper\/prep#job-/);
  expect((await ticked()).map(({ event, batches }) => [event, batches])).toEqual([
    ['choir-supper', expect.stringMatching(/^[\d./]+$/)],
  ]);
  expect((await agent.get(at)).text).toMatch(/1 of \d+ done/);
});

test('the sheet and the week say what is done too', async () => {
  await agent.post('/prep/ticks', { ...(await formOf(ragu)), done: 'yes' });
  const { body } = await agent.get('/prep.json?date=2026-12-02');
  const done = body.tables[0].rows.filter((row: { done: string }) => row.done === 'yes');
  expect(done).toMatchObject([{ recipe: 'Lentil and mushroom ragù', made: '3375', left: '' }]);
  expect((await agent.get('/?from=2026-12-02')).text).toContain(
    '10 jobs to prep, 1 h 35 min</a>, <b>1 of 10 done</b>',
  );
  const leaving = await agent.get('/events/choir-supper/remove');
  expect(leaving.text).toContain('The tick on its prep list; Undo does not bring that back');
});

test('an event that joins after the list was begun is marked as new on it', async () => {
  await agent.db.updateTable('event').set({ state: 'enquiry' }).where('key', '=', 'choir-supper').execute();
  await agent.post('/prep/ticks', { ...(await formOf('job-2026-12-02_shortbread')), done: 'yes' });
  await agent.db.updateTable('event').set({ state: 'confirmed' }).where('key', '=', 'choir-supper').execute();
  const { text } = await agent.get(day);
  expect(text).toMatch(
    /<span class="warning new">New<\/span> <span class="mark[^>]*>\w[^/]*<\/span> <a href="\/events\/choir-supper">/,
  );
  expect(text.match(/class="warning new"/g)).toHaveLength(1);
});

test('a job that is gone from the list is not ticked, and what is no job is refused in words', async () => {
  const sent = await formOf(ragu);
  const gone = await agent.post('/prep/ticks', { ...sent, date: '2026-12-20', done: 'yes' });
  expect(gone.status).toBe(409);
  expect(gone.text).toContain('this job is no longer on the list');
  const odd = await agent.post('/prep/ticks', { ...sent, 'for[0].batches': '-1', done: 'yes' });
  expect(odd.status).toBe(400);
  expect(odd.text).toContain('this is no job of a prep list');
  const elsewhere = await agent.post('/prep/ticks', {
    ...sent,
    page: 'event',
    event: 'no-such',
    done: 'yes',
  });
  expect(elsewhere.status).toBe(404);
  expect(await ticked()).toEqual([]);
});
