import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf, stored } from './page.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const revisionOf = async (key: string) => {
  const { revision } = fieldsOf((await agent.get(`/events/${key}/remove`)).text);
  return [revision].flat()[0] ?? '';
};

test('the page lists what goes and offers to archive instead', async () => {
  const { text, status } = await agent.get('/events/choir-supper/remove');
  expect(status).toBe(200);
  expect(text).toContain('60 guests on Friday 4 December');
  expect(text).toContain('5 dishes in 2 courses');
  expect(text).toContain('Archive it instead');
  expect(text).not.toMatch(/are you sure/i);
});

test('an archived event leaves the lists and comes back', async () => {
  const form = { revision: await revisionOf('birthday-tea') };
  const archived = await agent.post('/events/birthday-tea/archive', form);
  expect(archived.status).toBe(303);
  expect((await agent.get(archived.headers.location!)).text).toContain('Archived Eightieth birthday tea.');
  expect((await agent.get('/events')).text).not.toContain('Eightieth birthday tea');
  const back = { revision: await revisionOf('birthday-tea'), archived: 'no' };
  await agent.post('/events/birthday-tea/archive', back);
  expect((await stored(agent, 'birthday-tea'))?.archived).toBe(false);
});

test('a removed event is gone, and its receipt brings it back', async () => {
  const before = await stored(agent, 'choir-supper');
  const removed = await agent.post('/events/choir-supper/remove', {
    revision: await revisionOf('choir-supper'),
  });
  expect(removed.status).toBe(303);
  expect(removed.headers.location).toMatch(/^\/events\?saved=\d+$/);
  expect((await agent.get('/events/choir-supper')).status).toBe(404);
  const page = await agent.get(removed.headers.location!);
  expect(page.text).toContain('Removed Choir supper after the concert.');
  await agent.post(/action="(\/undo\/\d+)"/.exec(page.text)?.[1] ?? '');
  expect(await stored(agent, 'choir-supper')).toEqual(before);
});

test('an event that was changed meanwhile is not removed unseen', async () => {
  const old = await revisionOf('retirement-lunch');
  await agent.post('/events/retirement-lunch/archive', { revision: old });
  const { status, text } = await agent.post('/events/retirement-lunch/remove', { revision: old });
  expect(status).toBe(409);
  expect(text).toContain('open it again');
  expect(await stored(agent, 'retirement-lunch')).toBeDefined();
  expect((await agent.post('/events/gone/remove', { revision: '1' })).status).toBe(404);
  expect((await agent.post('/events/gone/archive', { revision: '1' })).status).toBe(404);
});
