import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { asPart, fieldsOf, stored } from './page.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const formOf = async (key: string) => fieldsOf((await agent.get(`/events/${key}/edit`)).text);
const supper = '/events/choir-supper/edit';

test('the form shows the details, and saving them unchanged changes nothing', async () => {
  const before = await stored(agent, 'choir-supper');
  const form = await formOf('choir-supper');
  expect(form).toMatchObject({
    name: 'Choir supper after the concert',
    date: 'Fri 4 Dec 2026',
    place: 'ferry-meadow-hall',
    state: 'confirmed',
    'groups[1].portion': '1/2',
  });
  const saved = await agent.post(supper, form);
  expect(saved.headers.location).toBe('/events/choir-supper');
  expect(await stored(agent, 'choir-supper')).toEqual(before);
});

test('client, a past day, place, state, over-catering and note are kept', async () => {
  const form = {
    ...(await formOf('birthday-tea')),
    client: 'Lena',
    date: '6 Dec 2025',
    place: 'home',
    state: 'postponed',
    overCatering: '12.5 %',
    note: 'Ring first.\nTwo steps up.',
  };
  expect((await agent.post('/events/birthday-tea/edit', form)).status).toBe(303);
  expect(await stored(agent, 'birthday-tea')).toMatchObject({
    client: 'Lena',
    date: '2025-12-06',
    place: 'home',
    state: 'postponed',
    overCatering: '12.5',
    note: 'Ring first.\nTwo steps up.',
  });
});

test('a group is added and taken out on the form, before anything is saved', async () => {
  const form = await formOf('retirement-lunch');
  const added = await agent.post('/events/retirement-lunch/edit', {
    ...form,
    client: 'Typed',
    do: 'add:groups',
  });
  expect(added.status).toBe(200);
  const more = fieldsOf(added.text);
  expect(more).toMatchObject({ client: 'Typed', 'groups[1].name': '' });
  const crew = { ...more, 'groups[1].name': 'Crew', 'groups[1].guests': '4', 'groups[1].portion': '1 1/2' };
  await agent.post('/events/retirement-lunch/edit', crew);
  expect((await stored(agent, 'retirement-lunch'))?.groups[1]).toEqual({
    key: 'crew',
    name: 'Crew',
    guests: 4,
    portion: '1.5',
  });
  const out = await agent.post('/events/retirement-lunch/edit', {
    ...(await formOf('retirement-lunch')),
    do: 'out:groups:1',
  });
  expect(fieldsOf(out.text)['groups[1].name']).toBeUndefined();
  expect((await stored(agent, 'retirement-lunch'))?.groups).toHaveLength(2);
  const own = { 'pays[1].how': 'own', 'pays[1].figure': '5' };
  const { text } = await agent.get('/events/retirement-lunch/costing');
  const priced = fieldsOf(text);
  await agent.post('/events/retirement-lunch/price', { ...priced, ...own });
  expect((await stored(agent, 'retirement-lunch'))?.price.groups).toHaveLength(1);
  const taken = fieldsOf(out.text);
  const { revision } = fieldsOf((await agent.get('/events/retirement-lunch/edit')).text);
  await agent.post('/events/retirement-lunch/edit', { ...taken, revision: revision! });
  const left = await stored(agent, 'retirement-lunch');
  expect([left?.groups.length, left?.price.groups]).toEqual([1, []]);
});

test('a group that guests or dishes stand on is not taken out under them', async () => {
  const out = await agent.post(supper, { ...(await formOf('choir-supper')), do: 'out:groups:1' });
  const { status, text } = await agent.post(supper, fieldsOf(out.text));
  expect(status).toBe(422);
  expect(text).toContain('Guests with diets stand among Children');
  expect(text).toContain('A dish is set for Children');
});

test('what a change would cost and clash with is shown while one types', async () => {
  const form = { ...(await formOf('choir-supper')), 'groups[0].guests': '60', overCatering: '10' };
  const { text, status } = await asPart(agent.post(`${supper}/preview`, form));
  expect(status).toBe(200);
  expect(text).toMatch(/Food costs £[\d.]+ and would cost £[\d.]+; £[\d.]+ a guest would be £[\d.]+/);
  expect(text).toContain('Clashes, once saved');
  expect((await stored(agent, 'choir-supper'))?.overCatering).toBe('0');
});

test('done keeps what was served and says since when; another state reopens', async () => {
  await agent.post(supper, { ...(await formOf('choir-supper')), state: 'done' });
  const done = await stored(agent, 'choir-supper');
  expect(done?.served?.date).toBe('2026-10-14');
  const { text } = await agent.get('/events/choir-supper');
  expect(text).toContain('These figures are of what was served, as it was kept on Wed 14 Oct');
  expect((await agent.get(supper)).text).toContain('any other state reopens it');
  const preview = { ...(await formOf('choir-supper')), state: 'confirmed' };
  expect((await asPart(agent.post(`${supper}/preview`, preview))).status).toBe(200);
  await agent.post(supper, preview);
  expect((await stored(agent, 'choir-supper'))?.served).toBeNull();
});

test('odd answers are asked about and everything typed stays', async () => {
  const form = await formOf('choir-supper');
  for (const [change, sentence] of [
    [{ name: ' ' }, 'Say what it is'],
    [{ name: 'x'.repeat(121) }, 'At most 120 letters'],
    [{ client: 'x'.repeat(121) }, 'At most 120 letters'],
    [{ date: '31 Feb 2026' }, 'not a day of the calendar'],
    [{ 'groups[0].name': '' }, 'Say who they are'],
    [{ 'groups[0].name': 'x'.repeat(121) }, 'At most 120 letters'],
    [{ 'groups[0].guests': 'forty' }, 'in figures'],
    [{ 'groups[1].portion': '0' }, 'above zero'],
    [{ overCatering: '720' }, 'Did you mean 72?'],
    [{ note: 'x'.repeat(4001) }, 'at most 4000 letters'],
  ] as const) {
    const asked = { ...form, ...change };
    const { status, text } = await agent.post(supper, asked);
    expect(status, JSON.stringify(change).slice(0, 60)).toBe(422);
    expect(text).toContain(sentence);
    expect(fieldsOf(text)).toMatchObject(asked);
  }
});

test('two who change different details are joined, the same one is asked', async () => {
  const form = await formOf('choir-supper');
  await agent.post(supper, { ...form, note: 'Keys at the shop.' });
  expect((await agent.post(supper, { ...form, client: 'The choir' })).status).toBe(303);
  expect(await stored(agent, 'choir-supper')).toMatchObject({
    note: 'Keys at the shop.',
    client: 'The choir',
  });
  const clash = await agent.post(supper, { ...form, note: 'Keys next door.' });
  // The example's row became the kitchen's own with the first save; that is nobody's change to choose between.
  expect([clash.status, clash.text.includes('Origin')]).toEqual([409, false]);
  expect((await agent.get('/history/event/choir-supper')).text).not.toContain('Origin');
  const old = await agent.post(supper, { ...form, revision: '999999', note: 'x' });
  expect(old.status).toBe(422);
  expect(old.text).toContain('open it again');
  expect((await agent.post('/events/gone/edit', form)).status).toBe(404);
});
