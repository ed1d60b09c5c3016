import { afterEach, beforeEach, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeEach(async () => {
  agent = await agentOn(exampleKitchen());
});
afterEach(() => agent.close());
const tea = '/events/birthday-tea';
const at = `${tea}/menu`;
const form = async () => fieldsOf((await agent.get(at)).text, at);
const courses = async () => (await read(agent.db, 'event', 'birthday-tea'))!.doc.courses;

// Milo has no milk and no eggs: at a buffet the hummus does not count for him until somebody says how it is kept apart.
test('a buffet asks how portions are kept apart, and is content once it is said or one is kept', async () => {
  expect((await agent.post(at, { ...(await form()), 'courses[0].service': 'shared' })).status).toBe(303);
  expect((await courses())[0]!.service).toBe('shared');
  const asked =
    'Hummus with carrot sticks is served for guests to help themselves: say how Milo Varley’s is kept apart.';
  const page = await agent.get(tea);
  expect(page.text).toContain(asked);
  expect(page.text).toContain('Change menu');
  expect(page.text).not.toMatch(/leave it/i);
  const cell = await agent.get(`${tea}/allergens`);
  expect(cell.text).toMatch(/Milo Varley[\s\S]*?Tea not kept apart/);
  await agent.post(at, { ...(await form()), 'courses[0].dishes[2].keptApart': 'own bowl under <b>foil</b>' });
  expect((await courses())[0]!.dishes[2]).toMatchObject({
    keptApart: 'own bowl under <b>foil</b>',
    service: null,
  });
  expect((await agent.get(tea)).text).not.toContain(asked);
  const shown = (await agent.get(at)).text;
  expect(shown).not.toContain('<b>foil');
  const kept = {
    ...(await form()),
    'courses[0].dishes[2].keptApart': '',
    'courses[0].dishes[2].keptFor': ['milo'],
  };
  await agent.post(at, kept);
  expect((await courses())[0]!.dishes[2]).toMatchObject({ keptApart: '', keptFor: ['milo'] });
  expect((await agent.get(tea)).text).not.toContain(asked);
  expect((await agent.get(at)).text).toContain('as the course, kept for Milo Varley');
});

test('a dish has a way of its own; a form sent back as it was drawn changes nothing', async () => {
  await agent.post(at, { ...(await form()), 'courses[0].dishes[1].service': 'shared' });
  const before = await courses();
  expect(before[0]!.dishes.map(({ service }) => service)).toEqual([null, 'shared', null, null]);
  await agent.post(at, await form());
  expect(await courses()).toEqual(before);
});

test('words that do not say how portions are kept apart are refused, and count for nobody', async () => {
  const drawn = await form();
  const send = (typed: string) => agent.post(at, { ...drawn, 'courses[0].dishes[2].keptApart': typed });
  for (const typed of ['no', 'Not yet.', '?', '-', 'n/a', 'yes', 'to be decided', "don't know"]) {
    const { status, text } = await send(typed);
    expect([typed, status, text.includes('Leave it empty while they are not.')]).toEqual([typed, 422, true]);
  }
  expect((await courses())[0]!.dishes[2]!.keptApart).toBe('');
  expect((await send('not shared: a bowl of their own')).status).toBe(303);
});

test('what is too long is refused with what was typed, and moving a dish keeps its ways', async () => {
  const long = { ...(await form()), 'courses[0].dishes[0].keptApart': 'x'.repeat(201) };
  const { status, text } = await agent.post(at, long);
  expect([status, text.includes('in 200 letters or fewer')]).toEqual([422, true]);
  const sent = { ...(await form()), 'courses[0].dishes[0].keptFor': ['june', 'milo'], do: 'down-dish:0:0' };
  const moved = fieldsOf((await agent.post(at, sent)).text, at);
  expect(moved['courses[0].dishes[1].keptFor']).toEqual(['june', 'milo']);
});
