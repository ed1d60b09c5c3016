import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { asPart, fieldsOf, stored } from './page.js';

// Today is Wednesday 14 October 2026.
let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const tea = {
  name: 'Harvest tea',
  client: 'Ruth',
  date: 'Sat 17 Oct',
  adults: '40',
  children: '',
  time: '4.30pm',
  place: 'home',
  state: 'confirmed',
  menu: '',
};

test('the form asks who, when and how many, at home unless another place is chosen', async () => {
  const { text, status } = await agent.get('/events/new');
  expect(status).toBe(200);
  expect(text).toContain('Who, when, how many');
  expect(fieldsOf(text)).toMatchObject({
    name: '',
    date: '',
    adults: '',
    place: 'home',
    state: 'enquiry',
    menu: '',
  });
});

test('an event is added with one empty course at its service time, under a key of its name', async () => {
  const saved = await agent.post('/events/new', tea);
  expect(saved.status).toBe(303);
  expect(saved.headers.location).toMatch(/^\/events\/harvest-tea\?saved=\d+$/);
  expect(await stored(agent, 'harvest-tea')).toMatchObject({
    name: 'Harvest tea',
    client: 'Ruth',
    date: '2026-10-17',
    place: 'home',
    state: 'confirmed',
    origin: 'own',
    groups: [{ key: 'adults', name: 'Adults', guests: 40, portion: '1' }],
    courses: [{ name: 'Menu', time: '16:30', dayAfter: false, dishes: [] }],
  });
  const second = await agent.post('/events/new', { ...tea, children: '6' });
  expect(second.headers.location).toMatch(/^\/events\/harvest-tea-2\?/);
  expect((await stored(agent, 'harvest-tea-2'))?.groups[1]).toEqual({
    key: 'children',
    name: 'Children',
    guests: 6,
    portion: '1/2',
  });
  const named = await agent.post('/events/new', { ...tea, name: 'New' });
  expect(named.headers.location).toMatch(/^\/events\/new-2\?/);
});

test('a menu is copied with its quantities following the guests and its courses the time', async () => {
  await agent.post('/events/new', { ...tea, name: 'Carols', menu: 'choir-supper', adults: '24' });
  const made = await stored(agent, 'carols');
  expect(made?.courses.map(({ name, time }) => [name, time])).toEqual([
    ['Supper', '16:30'],
    ['Pudding', '17:30'],
  ]);
  // 8 of 48 adults eat the pie; of 24 that is 4, and there are no children.
  expect(made?.courses[0]?.dishes[1]?.eaters).toEqual({ counts: [{ group: 'adults', guests: 4 }] });
  const kept = await agent.post('/events/new', {
    ...tea,
    name: 'Carols again',
    menu: 'choir-supper',
    time: '',
  });
  expect(kept.status).toBe(303);
  expect((await stored(agent, 'carols-again'))?.courses[0]?.time).toBe('19:30');
});

test('a day just past is refused with days it may mean, and what is held on them', async () => {
  const form = { ...tea, date: 'Sat 10 Oct', adults: 'forty or so' };
  const { status, text } = await agent.post('/events/new', form);
  expect(status).toBe(422);
  expect(text).toContain('Two answers need you.');
  expect(text).toContain('Saturday 10 October is in the past. Did you mean Saturday 17 October?');
  expect(text).toContain('Use Sat 17 Oct');
  expect(text).toContain('Use Sat 24 Oct');
  expect(text).toContain('On 17 Oct you already hold');
  expect(text).toContain('Enter the number of guests in figures, such as 40.');
  expect(fieldsOf(text)).toMatchObject({ ...form });
  const guessed = await agent.post('/events/new', { ...form, do: 'day:2026-10-17' });
  expect(fieldsOf(guessed.text)).toMatchObject({
    date: 'Sat 17 Oct 2026',
    adults: 'forty or so',
    name: 'Harvest tea',
  });
  const wrongDay = await agent.post('/events/new', { ...tea, date: 'Fri 17 Oct' });
  expect(wrongDay.text).toContain('17 Oct is a Saturday, not a Friday.');
});

test('while one types the day, the time and the menu are read back, and nothing is saved', async () => {
  const { text, status } = await asPart(
    agent.post('/events/new/read', { ...tea, name: 'Nobody', menu: 'choir-supper' }),
  );
  expect(status).toBe(200);
  expect(text).toContain('Read as <b class="ink">16:30</b>');
  expect(text).toContain('Sat 17 Oct 2026');
  expect(text).toContain('5 dishes for 60 guests there');
  expect(text).not.toContain('<!doctype');
  expect(await stored(agent, 'nobody')).toBeUndefined();
});

test('odd answers are each asked about, and what was typed stays', async () => {
  for (const [change, sentence] of [
    [{ name: '' }, 'Say what it is'],
    [{ name: 'x'.repeat(200) }, 'At most 120 letters'],
    [{ client: 'x'.repeat(200) }, 'At most 120 letters'],
    [{ date: 'soon' }, 'Enter the day'],
    [{ adults: '0' }, 'at least one guest'],
    [{ adults: '-5' }, 'below zero'],
    [{ adults: '100001' }, 'between 0 and 100000'],
    [{ children: 'a few' }, 'Enter the number of guests in figures'],
    [{ time: '' }, 'Enter a time, such as 18:30.'],
    [{ time: 'teatime' }, 'Enter a time, such as 18:30'],
    [{ place: 'nowhere' }, 'There is no place'],
  ] as const) {
    const { status, text } = await agent.post('/events/new', { ...tea, ...change });
    expect(status, JSON.stringify(change)).toBe(422);
    expect(text).toContain(sentence);
    const { place: _, ...kept } = { ...tea, ...change };
    expect(fieldsOf(text)).toMatchObject(kept);
  }
});

test('a name is words, whatever it holds', async () => {
  const name = '<script>alert(1)</script> & Söhne';
  const saved = await agent.post('/events/new', { ...tea, name });
  const { text } = await agent.get(saved.headers.location!);
  expect(text).not.toContain('<script>alert');
  expect(text).toContain('&lt;script&gt;alert(1)&lt;/script&gt; &amp; Söhne');
  const again = await asPart(agent.post('/events/new', { ...tea, name, date: 'never' }));
  expect(again.status).toBe(422);
  expect(again.text).not.toContain('<!doctype');
  expect(again.text).not.toContain('<script>alert');
});
