import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.recipes.find(({ key }) => key === 'vegetable-stock')!.name = '<b>Stock</b>';
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

// Worked by hand in the example: stock for the supper on Tuesday the 1st, ragù and sauce on Wednesday.
test('a day’s jobs say what to make, from what, for whom and until when', async () => {
  const { text, status } = await agent.get('/prep?date=2026-12-02');
  expect(status).toBe(200);
  expect(text).toContain('10 jobs, 1 h 35 min as written');
  expect(text).toMatch(/<b>3\.4<\/b><span class="unit">kg<\/span>/);
  expect(text).toContain('Lentil and mushroom ragù');
  expect(text).toMatch(/Onion, finely diced <span class="from">from <span class="qty"><b>200<\/b>/);
  expect(text).toContain('Salt, to taste');
  expect(text).toMatch(/use by <\/span>Sat 5 Dec/);
  expect(text).toContain('href="/prep?date=2026-12-01">Day before');
  expect(text).toContain('href="/prep?date=2026-12-03">Day after');
  expect(text).toContain('&lt;b&gt;Stock&lt;/b&gt;');
  expect(text).not.toContain('<b>Stock</b>');
});

test('paper has boxes to tick, lines to write on, and says what makes it void', async () => {
  const { text } = await agent.get('/prep?date=2026-12-02');
  expect(text.match(/class="paper tick-box"/g)).toHaveLength(10);
  expect(text).toContain('Added by hand');
  expect(text).toContain('Fridge at');
  expect(text).toContain('Void when guests, a menu or a recipe change.');
  expect(text).toContain('Printed Wed 14 Oct 2026, 10:20.');
});

test('without a day it is the next one with jobs, and a day without says where they go on', async () => {
  const far = await agent.get('/prep');
  expect(far.text).toContain('Nothing to prepare on Wednesday 14 October');
  const near = await agent.get('/prep?date=2026-11-20');
  expect(near.text).toMatch(/The next jobs are on <a href="\/prep\?date=2026-12-01">Tuesday 1 December: /);
});

test('one event’s jobs alone, and all of an event’s days', async () => {
  const { text } = await agent.get('/prep?date=2026-12-02&event=retirement-lunch');
  expect(text).toContain('Only the jobs for <b>Retirement lunch</b>');
  expect(text).not.toContain('ragù');
  const all = await agent.get('/events/birthday-tea/prep');
  expect(all.text).toContain('10 jobs, 2 h 55 min as written, over 3 days');
  expect(all.text).toContain('Saturday 5 December');
  expect((await agent.get('/events/no-such/prep')).status).toBe(404);
});

test('the same answer as CSV and JSON, in exact figures', async () => {
  const { body } = await agent.get('/prep.json?date=2026-12-02');
  expect(body.tables[0].rows).toHaveLength(10);
  expect(body.tables[0].rows).toContainEqual(
    expect.objectContaining({ recipe: 'Lentil and mushroom ragù', quantity: '3375', unit: 'g' }),
  );
  const csv = await agent.get('/prep.csv?date=2026-12-02');
  expect(csv.headers['content-type']).toContain('text/csv');
  expect(csv.text.split('\r\n').filter((line) => line.startsWith('jobs,'))).toHaveLength(10);
});

test('a day that is none is said so', async () => {
  expect((await agent.get('/prep?date=31 Feb')).status).toBe(404);
});
