import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
let empty: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  const [tea] = kitchen.events;
  kitchen.events.push(
    { ...tea!, key: 'old', name: 'Last spring', date: '2026-04-11', state: 'cancelled' },
    { ...tea!, key: 'older', name: 'Long ago', date: '2024-04-11', state: 'cancelled' },
    { ...tea!, key: 'put-away', name: 'Put away', archived: true },
  );
  kitchen.events.sort((a, b) => (a.key < b.key ? -1 : 1));
  agent = await agentOn(kitchen);
  empty = await agentOn({ ...exampleKitchen(), events: [] });
});
afterAll(async () => {
  await agent.close();
  await empty.close();
});

test('what comes stands first by date, then the past; archived ones behind a link', async () => {
  const { text, status } = await agent.get('/events');
  expect(status).toBe(200);
  expect(text).toContain('Three parties to come');
  const places = ['Choir supper', 'Retirement lunch', 'Eightieth birthday', 'Last spring'].map((name) =>
    text.indexOf(name),
  );
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(Math.min(...places)).toBeGreaterThan(0);
  expect(text).not.toContain('Put away');
  expect(text).not.toContain('Long ago');
  expect(text).toContain('<span class="mark solid">A</span>');
  expect(text).toContain('60 guests');
  expect(text).toContain('5 dishes');
  expect((await agent.get('/events?show=archived')).text).toContain('Put away');
  expect((await agent.get('/events?show=all')).text).toContain('Long ago');
});

test('without events the page says what one needs', async () => {
  const { text } = await empty.get('/events');
  expect(text).toContain('No party yet.');
  expect(text).toContain('href="/events/new"');
});
