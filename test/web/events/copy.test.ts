import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { asPart, fieldsOf, stored } from './page.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const copy = '/events/choir-supper/copy';

test('the page asks to which event, and shows the portions of each dish in both', async () => {
  const { text, status } = await agent.get(copy);
  expect(status).toBe(200);
  expect(text).toContain('A new event');
  expect(text).not.toContain('there, for');
  const shown = await agent.get(`${copy}?to=retirement-lunch`);
  expect(shown.text).toContain('here, for 60');
  expect(shown.text).toContain('there, for 24');
  // 8 of 48 adults and 3 children at a half are 9 1/2 portions; 4 of 24 adults are 4.
  expect(shown.text).toMatch(
    /Lentil pie with a mashed top<\/th><td class="number">9 <span class="fr">1\/2<\/span><\/td><td class="number proposed"><b>4<\/b>/,
  );
  expect(shown.text).toContain('The 7 dishes on the menu of Retirement lunch now give way to these.');
  const part = await asPart(agent.post(`${copy}/preview`, { to: 'retirement-lunch' }));
  expect(part.text).toContain('there, for 24');
  expect(part.text).not.toContain('data-focus');
});

test('nothing is copied before it was shown; then it is, and Undo takes it back', async () => {
  const first = await agent.post(copy, { to: 'birthday-tea' });
  expect(first.status).toBe(200);
  expect(first.text).toContain('there, for 38');
  const before = await stored(agent, 'birthday-tea');
  const saved = await agent.post(copy, fieldsOf(first.text));
  expect(saved.headers.location).toMatch(/^\/events\/birthday-tea\?saved=\d+$/);
  const after = await stored(agent, 'birthday-tea');
  expect(after?.courses.map(({ name }) => name)).toEqual(['Supper', 'Pudding']);
  expect(after?.groups).toEqual(before?.groups);
  const change = /saved=(\d+)/.exec(saved.headers.location ?? '')?.[1];
  await agent.post(`/undo/${change}`);
  expect((await stored(agent, 'birthday-tea'))?.courses).toEqual(before?.courses);
});

test('a new event is made by its day and guests, at the same place, quantities following', async () => {
  const asked = {
    to: 'new',
    name: 'Advent supper',
    date: 'Sat 12 Dec',
    adults: '24',
    children: '6',
    time: '',
  };
  const first = await agent.post(copy, asked);
  expect(first.text).toContain('there, for 30');
  const saved = await agent.post(copy, fieldsOf(first.text));
  expect(saved.headers.location).toMatch(/^\/events\/advent-supper\?saved=\d+$/);
  const made = await stored(agent, 'advent-supper');
  expect(made).toMatchObject({ date: '2026-12-12', place: 'ferry-meadow-hall', state: 'enquiry' });
  expect(made?.courses[0]?.dishes[1]?.eaters).toEqual({
    counts: [
      { group: 'adults', guests: 4 },
      { group: 'children', guests: 2 },
    ],
  });
});

test('other numbers than those shown are shown first', async () => {
  const first = await agent.post(copy, { to: 'new', name: 'Twelfth night', date: '5 Jan', adults: '10' });
  const changed = await agent.post(copy, { ...fieldsOf(first.text), adults: '20' });
  expect(changed.status).toBe(200);
  expect(changed.text).toContain('there, for 20');
  expect(await stored(agent, 'twelfth-night')).toBeUndefined();
});

test('what is missing is asked for and what was typed stays', async () => {
  const none = await agent.post(copy, { to: '' });
  expect(none.status).toBe(422);
  expect(none.text).toContain('Choose an event, or a new one.');
  const form = { to: 'new', name: '<b>x</b>', date: 'soon', adults: 'many', children: '', time: 'late' };
  const { status, text } = await agent.post(copy, form);
  expect(status).toBe(422);
  expect(fieldsOf(text)).toMatchObject(form);
  expect(text).not.toContain('<b>x</b>');
  expect((await agent.post(copy, { to: 'choir-supper' })).status).toBe(422);
  expect((await agent.post(copy, { to: 'gone' })).status).toBe(422);
  expect((await agent.post('/events/gone/copy', form)).status).toBe(404);
});

test('a menu changed since it was shown is not written over', async () => {
  const shown = fieldsOf((await agent.get(`${copy}?to=retirement-lunch`)).text);
  const menu = '/events/retirement-lunch/menu';
  await agent.post(menu, { ...fieldsOf((await agent.get(menu)).text), 'courses[1].dishes[0].part0': '21' });
  const { status } = await agent.post(copy, shown);
  expect(status).toBe(409);
});
