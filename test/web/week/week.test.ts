import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  const tea = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
  const copy = (key: string, name: string, date: string, state: 'enquiry' | 'done' | 'postponed') => ({
    ...structuredClone(tea),
    key,
    name,
    date,
    state,
    courses: [],
  });
  kitchen.events.push(
    copy('ask', '<script>alert(1)</script>', '2027-01-09', 'enquiry'),
    copy('over', 'Autumn tea', '2026-10-12', 'done'),
    copy('put-off', 'Put-off tea', '2026-12-03', 'postponed'),
  );
  agent = await agentOn({ ...kitchen, events: kitchen.events.toSorted((a, b) => (a.key < b.key ? -1 : 1)) });
});
afterAll(() => agent.close());

test('the week says what it holds, day by day, with what to prepare', async () => {
  const { text, status } = await agent.get('/?from=2026-12-02');
  expect(status).toBe(200);
  expect(text).toMatch(/<h1>Three parties in the week of 2 Dec<\/h1>/);
  expect(text).toContain('week 49');
  expect(text).toMatch(/10 jobs to prep, 1 h 35 min</);
  expect(text).toContain('Minutes are as written in the recipes');
  expect(text).toContain('href="/prep?date=2026-12-03"');
  expect(text).toMatch(/60 guests, serve <b>19:30<\/b>/);
  expect(text).toMatch(/href="\/events\/retirement-lunch#clashes">3 stops</);
  expect(text).toMatch(/Put-off tea<\/a><\/h2>\s*<p>38 guests <span class="thin">Postponed/);
});

test('a week without a party says so, and what comes later stands below it', async () => {
  const { text } = await agent.get('/');
  expect(text).toContain('<h1>No party this week</h1>');
  expect(text).toContain('Nothing to prepare');
  expect(text).toMatch(/Fri 4 Dec<\/b> <span><a href="\/events\/choir-supper">/);
  expect(text).toContain('Enquiry only');
  expect(text).toContain('href="/?from=2026-10-07"');
  expect(text).toContain('href="/?from=2026-10-21"');
});

test('names are text, never markup', async () => {
  const { text } = await agent.get('/');
  expect(text).not.toContain('<script>alert');
  expect(text).toContain('&lt;script&gt;alert(1)');
});

test('past weeks show what was held', async () => {
  const { text } = await agent.get('/?from=2026-10-12');
  expect(text).toContain('One party in the week of 12 Oct');
  expect(text).toMatch(/Autumn tea<\/a>/);
  expect(text).toContain('<span class="thin">Done</span>');
  expect(text).toContain('href="/">Back to today');
});

test('what must be settled is listed worst first, each with where it is mended, and goes on by event', async () => {
  const { text } = await agent.get('/?from=2026-12-02');
  const side = text.slice(text.indexOf('id="settle"'));
  const marks = [...side.matchAll(/class="warning (stop|ask|check)"/g)].map(([, weight]) => weight);
  const rank = { stop: 0, ask: 1, check: 2 } as Record<string, number>;
  expect(marks.map((weight) => rank[weight!])).toEqual(marks.map((weight) => rank[weight!]).toSorted());
  // Two guests without a pudding are mended in one place, the clash in the oven in another.
  expect(marks.filter((weight) => weight === 'stop')).toHaveLength(2);
  expect(side).toMatch(/Gwen Abery[^<]*<\/p><p>Tom Lisle/);
  expect(marks).toHaveLength(8);
  const said = side.match(/<p>/g)!.length;
  const open = Number(/(\d+) open/.exec(side)?.[1]);
  const more = [...side.matchAll(/(\d+) more for/g)].reduce((n, [, count]) => n + Number(count), 0);
  expect(said + more).toBe(open);
  expect(side).toContain('href="/ingredients/horseradish-sauce/label');
  expect(side).not.toContain('to taste');
});

test('a day that is none is said so', async () => {
  const { status, text } = await agent.get('/?from=yesterweek');
  expect(status).toBe(404);
  expect(text).toContain('Enter the day, such as 4 Dec');
});

test('a kitchen without an event is told what to do next', async () => {
  const kitchen = { ...exampleKitchen(), events: [] };
  const empty = await agentOn(kitchen);
  const { text } = await empty.get('/');
  expect(text).toContain('An empty week');
  expect(text).toContain('Add an event');
  await empty.close();
});
