import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { asPart, fieldsOf, stored } from './page.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const formOf = async (key: string) => fieldsOf((await agent.get(`/events/${key}/guests/change`)).text);
const lunch = '/events/retirement-lunch/guests';

test('the form comes whole, and in the place of the facts for htmx', async () => {
  const whole = await agent.get(`${lunch}/change`);
  expect(whole.text).toContain('<!doctype html>');
  expect(fieldsOf(whole.text)['groups[0].guests']).toBe('24');
  const part = await asPart(agent.get(`${lunch}/change`));
  expect(part.text).not.toContain('<!doctype');
  expect(part.text).toContain('id="head-count"');
  expect(part.headers['hx-retarget']).toBe('#head-count');
});

test('a preview tells each dish before and after, what costs more and what is new to settle; nothing is saved', async () => {
  const form = { ...(await formOf('retirement-lunch')), 'groups[0].guests': '30' };
  const { text, status } = await asPart(agent.post(`${lunch}/preview`, form));
  expect(status).toBe(200);
  expect(text).toContain('24 now');
  expect(text).toContain('Save 30 guests');
  expect(text).toContain('Keep 24');
  // 20 of 24 are set by number; 24 portions of gratin become 30.
  expect(text).toContain('Set by number, stays at 20');
  expect(text).toMatch(/£[\d.]+ more; £[\d.]+ a guest is now £[\d.]+/);
  expect(text).toContain('Clashes at 30');
  expect(text).toContain('8 guests have not answered about diet.');
  expect(text).toContain('warning new-ask');
  expect(text).toContain('hx-target="#said"');
  expect(text).not.toContain('data-focus');
  expect((await stored(agent, 'retirement-lunch'))?.groups[0]?.guests).toBe(24);
  const whole = await agent.post(`${lunch}/preview`, form);
  expect(whole.text).toContain('<!doctype html>');
  expect(whole.text).toContain('Save 30 guests');
});

test('each group has a field of its own, and the total is said', async () => {
  const form = { ...(await formOf('choir-supper')), 'groups[0].guests': '40' };
  const { text } = await asPart(agent.post('/events/choir-supper/guests/preview', form));
  expect(text).toContain('52 guests together.');
  expect(text).toContain('Set for 43 adults; there would be 40');
  expect(text).toMatch(/more answers about diet than guests/);
});

test('saving goes on to the event with a receipt, and for htmx swaps the event in its place', async () => {
  const form = { ...(await formOf('birthday-tea')), 'groups[0].guests': '36' };
  const plain = await agent.post('/events/birthday-tea/guests', form);
  expect(plain.status).toBe(303);
  expect(plain.headers.location).toMatch(/^\/events\/birthday-tea\?saved=\d+$/);
  const { text } = await agent.get(plain.headers.location!);
  expect(text).toContain('Saved 44 guests.');
  const again = { ...(await formOf('birthday-tea')), 'groups[1].guests': '9' };
  const part = await asPart(agent.post('/events/birthday-tea/guests', again));
  expect(part.status).toBe(200);
  expect(part.headers['hx-push-url']).toMatch(/^\/events\/birthday-tea\?saved=\d+$/);
  expect(part.text).toContain('Saved 45 guests.');
  expect(part.text).toContain('id="event"');
  const undo = /action="(\/undo\/\d+)"/.exec(part.text)?.[1] ?? '';
  await agent.post(undo);
  expect((await stored(agent, 'birthday-tea'))?.groups.map(({ guests }) => guests)).toEqual([36, 8]);
});

test('what can’t be a number of guests is asked again, with all that was typed', async () => {
  const form = await formOf('choir-supper');
  for (const [typed, sentence] of [
    ['forty', 'Enter the number of guests in figures, such as 40.'],
    ['-4', 'below zero'],
    ['4.5', 'whole number'],
    ['100001', 'between 0 and 100000'],
    ['', 'Enter the number of guests in figures'],
    ['<b>9</b>', 'Enter the number of guests in figures'],
  ] as const) {
    const asked = { ...form, 'groups[0].guests': '50', 'groups[1].guests': typed };
    const { status, text } = await agent.post('/events/choir-supper/guests', asked);
    expect(status, typed).toBe(422);
    expect(text).toContain(sentence);
    expect(fieldsOf(text)).toMatchObject({ 'groups[0].guests': '50', 'groups[1].guests': typed });
    expect(text).not.toContain('<b>9</b>');
    const part = await asPart(agent.post('/events/choir-supper/guests', asked));
    expect(part.status).toBe(422);
    expect(part.headers['hx-retarget']).toBe('#head-count');
    expect((await asPart(agent.post('/events/choir-supper/guests/preview', asked))).text).toContain(sentence);
  }
  const nobody = { ...form, 'groups[0].guests': '0', 'groups[1].guests': '0' };
  expect((await agent.post('/events/choir-supper/guests', nobody)).text).toContain('at least one guest');
  expect((await stored(agent, 'choir-supper'))?.groups.map(({ guests }) => guests)).toEqual([48, 12]);
});

test('a hundred thousand guests are worked out like any other number', async () => {
  const form = { ...(await formOf('retirement-lunch')), 'groups[0].guests': '100000' };
  const { text, status } = await asPart(agent.post(`${lunch}/preview`, form));
  expect(status).toBe(200);
  expect(text).toContain('Save 100,000 guests');
});

test('two who change one group are shown both; other groups are joined', async () => {
  const form = await formOf('choir-supper');
  await agent.post('/events/choir-supper/guests', { ...form, 'groups[0].guests': '50' });
  const clash = await agent.post('/events/choir-supper/guests', { ...form, 'groups[0].guests': '52' });
  expect(clash.status).toBe(409);
  expect(clash.text).toContain('choose one');
  const joined = await agent.post('/events/choir-supper/guests', { ...form, 'groups[1].guests': '14' });
  expect(joined.status).toBe(303);
  expect((await stored(agent, 'choir-supper'))?.groups.map(({ guests }) => guests)).toEqual([50, 14]);
});

test('an event that is gone is not found', async () => {
  expect((await agent.post('/events/gone/guests', { revision: '1' })).status).toBe(404);
  expect((await asPart(agent.post('/events/gone/guests/preview'))).headers['hx-retarget']).toBe('#notice');
});
