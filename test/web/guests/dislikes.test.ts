import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Event } from '../../../src/core/facts/event.js';
import { edit } from '../../../src/store/changes.js';
import { read } from '../../../src/store/documents.js';
import { by } from '../../store/world.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeEach(async () => {
  agent = await agentOn(exampleKitchen());
});
afterEach(() => agent.close());
const tea = '/events/birthday-tea';
const at = `${tea}/guests/diets`;
const form = async () => fieldsOf((await agent.get(at)).text, at);
const stored = async (): Promise<Event> => (await read(agent.db, 'event', 'birthday-tea'))!.doc;
const change = async (make: (event: Event) => Event) => {
  const { revision } = (await read(agent.db, 'event', 'birthday-tea'))!;
  await edit(agent.db, 'event', 'birthday-tea', { ...by, revision, change: make });
};

test('a guest’s table, dislikes by name and whether traces matter are kept, and come back as typed', async () => {
  const sent = {
    ...(await form()),
    'guests[1].table': '3',
    'guests[1].avoids': 'carrots, tahini',
    'guests[2].traces': 'no',
  };
  expect((await agent.post(at, sent)).status).toBe(303);
  const { guests } = await stored();
  expect(guests[1]).toMatchObject({ table: '3', avoids: ['carrot', 'tahini'], traces: true });
  expect(guests[2]).toMatchObject({ table: '', avoids: [], traces: false });
  const { text } = await agent.get(at);
  expect(text).toContain('<b>Diets:</b> vegan, no carrot; tahini');
  expect(text).toContain('<b>Diets:</b> no milk, no eggs, traces do not matter');
  expect((await agent.post(at, await form())).status).toBe(303);
  expect((await stored()).guests).toEqual(guests);
  const page = await agent.get(`${tea}/allergens`);
  expect(page.text).toMatch(
    /June Askerby[\s\S]*?<b>Hummus with carrot sticks<\/b>: no, because of Carrot; Tahini</,
  );
});

test('a dislike nobody knows says what is near, with everything typed', async () => {
  const { status, text } = await agent.post(at, { ...(await form()), 'guests[1].avoids': 'carot, tahini' });
  expect(status).toBe(422);
  expect(text).toContain('No ingredient is called carot. Did you mean Carrot?');
  expect(text).toContain('value="carot, tahini"');
  expect((await stored()).guests[1]!.avoids).toEqual([]);
});

test('“no carrots” said in a line is a dislike; what no ingredient is called stays a wish', async () => {
  const added = await agent.post(at, {
    ...(await form()),
    new: 'Ana, vegan, no carrots, no fuss',
    do: 'add:guests',
  });
  expect(fieldsOf(added.text, at)).toMatchObject({
    'guests[4].name': 'Ana',
    'guests[4].avoids': 'carrots',
    'guests[4].other': 'no fuss',
  });
});

test('what is usually minded in pregnancy stands beside the guest and is no verdict', async () => {
  await agent.post(at, { ...(await form()), 'guests[1].diets': ['pregnancy'] });
  expect((await agent.get(at)).text).toContain('<b>Mind:</b> In pregnancy people are usually told');
  const { text } = await agent.get(`${tea}/allergens`);
  expect(text).toMatch(/June Askerby[\s\S]*?<b>Mind<\/b>: In pregnancy/);
});

test('portions kept for a guest who is taken out are nobody else’s', async () => {
  await change((event) => ({
    ...event,
    courses: event.courses.map((course) => ({
      ...course,
      dishes: course.dishes.map((dish) => ({ ...dish, keptFor: ['june', 'milo'] })),
    })),
  }));
  const out = fieldsOf((await agent.post(at, { ...(await form()), do: 'out:guests:1' })).text, at);
  expect((await agent.post(at, out)).status).toBe(303);
  expect((await stored()).courses[0]!.dishes.map(({ keptFor }) => keptFor)).toEqual(
    Array.from({ length: 4 }, () => ['milo']),
  );
});

test('no diet and no dislike is in an address or a link of its pages', async () => {
  await agent.post(at, { ...(await form()), 'guests[1].avoids': 'tahini', 'guests[1].diets': ['coeliac'] });
  for (const page of [at, `${tea}/allergens`, `${tea}/menu`, tea, '/', '/find?q=June']) {
    const { text } = await agent.get(page);
    const addresses = [...text.matchAll(/(?:href|action|hx-get|hx-post)="([^"]*)"/g)].map(([, one]) => one!);
    for (const one of addresses)
      expect(decodeURIComponent(one), page).not.toMatch(/coeliac|vegan|vegetarian|no-milk|june/i);
    const gets = [...text.matchAll(/<form[^>]*method="get"[^>]*>[\s\S]*?<\/form>/gi)].join();
    expect(gets).not.toMatch(/diets|avoids/);
  }
});
