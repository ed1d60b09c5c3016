import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { asPart, fieldsOf, stored } from './page.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const formOf = async (key: string) => fieldsOf((await agent.get(`/events/${key}/menu`)).text);
const press = async (key: string, form: Record<string, string | string[]>, what: string) =>
  fieldsOf((await agent.post(`/events/${key}/menu`, { ...form, do: what })).text);
const menuOf = async (key: string) =>
  (await stored(agent, key))?.courses.map(({ name, dishes }) => [name, dishes.map(({ key }) => key)]);

test('the form shows the menu, and saving it unchanged changes nothing', async () => {
  for (const key of ['choir-supper', 'retirement-lunch', 'birthday-tea']) {
    const before = await stored(agent, key);
    const saved = await agent.post(`/events/${key}/menu`, await formOf(key));
    expect(saved.headers.location).toBe(`/events/${key}`);
    expect(await stored(agent, key)).toEqual(before);
  }
});

test('a course and dishes are added, with a size and who eats them, by groups', async () => {
  let form = await press('birthday-tea', await formOf('birthday-tea'), 'add-course');
  form = { ...form, 'courses[1].name': 'Sweet', 'courses[1].time': '4.30pm', 'courses[1].dayAfter': 'on' };
  form = {
    ...form,
    'courses[1].dishes[0].recipe': ' poached  PEARS ',
    'courses[1].dishes[0].portion': '120 g',
  };
  form = { ...form, 'courses[1].dishes[0].who': 'shares', 'courses[1].dishes[0].part0': '50' };
  form = await press('birthday-tea', form, 'add-dish:1');
  form = { ...form, 'courses[1].dishes[1].recipe': 'Apple and oat crumble with cream' };
  form = { ...form, 'courses[1].dishes[1].who': 'counts', 'courses[1].dishes[1].part1': '6' };
  const saved = await agent.post('/events/birthday-tea/menu', form);
  expect(saved.status).toBe(303);
  expect((await stored(agent, 'birthday-tea'))?.courses[1]).toMatchObject({
    key: 'sweet',
    name: 'Sweet',
    time: '16:30',
    dayAfter: true,
    dishes: [
      {
        key: 'poached-pears',
        recipe: 'poached-pears',
        portion: { amount: '120', unit: 'g' },
        eaters: { shares: [{ group: 'adults', percent: '50' }] },
      },
      {
        key: 'apple-crumble',
        recipe: 'apple-crumble',
        portion: null,
        eaters: { counts: [{ group: 'children', guests: 6 }] },
      },
    ],
  });
});

test('dishes and courses move by buttons, also from one course into the next, and are taken out', async () => {
  const form = await formOf('retirement-lunch');
  const down = await press('retirement-lunch', form, 'down-dish:0:1');
  expect(down['courses[1].dishes[0].key']).toBe('hummus');
  const up = await press('retirement-lunch', down, 'up-course:1');
  expect([up['courses[0].name'], up['courses[1].name']]).toEqual(['Main', 'Starter']);
  const out = await press('retirement-lunch', up, 'out-dish:0:0');
  expect(await menuOf('retirement-lunch')).toEqual([
    ['Starter', ['mackerel-pate', 'hummus']],
    ['Main', ['roast-chicken', 'lentil-pie-oil', 'celeriac-gratin', 'green-beans']],
    ['Pudding', ['lemon-posset']],
  ]);
  await agent.post('/events/retirement-lunch/menu', await press('retirement-lunch', out, 'out-course:2'));
  expect(await menuOf('retirement-lunch')).toEqual([
    ['Main', ['roast-chicken', 'lentil-pie-oil', 'celeriac-gratin', 'green-beans']],
    ['Starter', ['mackerel-pate']],
  ]);
});

test('a button redraws the form alone for htmx, in the row that moved', async () => {
  const form = await formOf('choir-supper');
  const { text, headers } = await asPart(
    agent.post('/events/choir-supper/menu', { ...form, do: 'down-dish:0:0' }),
  );
  expect(text).not.toContain('<!doctype');
  expect(headers['hx-retarget']).toBe('#menu-form');
  expect(text).toMatch(/id="f-courses-0-dishes-1-recipe"[^>]*data-focus/);
});

test('what a menu would cost and clash with is shown while one types', async () => {
  const form = {
    ...(await formOf('choir-supper')),
    'courses[1].dishes[1].recipe': 'Lemon posset with shortbread',
  };
  const { text, status } = await asPart(agent.post('/events/choir-supper/menu/preview', form));
  expect(status).toBe(200);
  expect(text).toMatch(/Food costs £[\d.]+ and would cost £[\d.]+/);
  expect((await stored(agent, 'choir-supper'))?.courses[1]?.dishes[1]?.recipe).toBe('poached-pears');
});

test('odd answers are asked about, with a guess or a way on, and everything typed stays', async () => {
  const form = await formOf('choir-supper');
  for (const [change, sentence] of [
    [
      { 'courses[0].dishes[1].recipe': 'Lentil pie with a mashd top' },
      'Did you mean Lentil pie with a mashed top?',
    ],
    [{ 'courses[0].dishes[1].recipe': '<i>Ghost</i>' }, '/recipes/new?name=%3Ci%3EGhost%3C%2Fi%3E'],
    [{ 'courses[0].dishes[1].recipe': '' }, 'Say which recipe this dish is'],
    [{ 'courses[0].dishes[1].portion': 'big' }, 'Enter an amount with its unit'],
    [{ 'courses[0].dishes[0].part0': '750' }, 'Did you mean 75?'],
    [{ 'courses[0].dishes[1].part0': 'some' }, 'Enter the number of guests in figures'],
    [{ 'courses[0].dishes[1].part0': '', 'courses[0].dishes[1].part1': '' }, 'Say how many guests eat it'],
    [{ 'courses[0].name': '' }, 'Name the course'],
    [{ 'courses[0].name': 'x'.repeat(121) }, 'At most 120 letters'],
    [{ 'courses[0].time': '25:00' }, 'is not a time'],
  ] as const) {
    const asked = { ...form, ...change };
    const { status, text } = await agent.post('/events/choir-supper/menu', asked);
    expect(status, JSON.stringify(change).slice(0, 60)).toBe(422);
    expect(text).toContain(sentence);
    expect(text).not.toContain('<i>Ghost');
    expect(fieldsOf(text)).toMatchObject(asked);
  }
});

test('two who change different dishes are joined, the same one is asked', async () => {
  const form = await formOf('choir-supper');
  const menu = '/events/choir-supper/menu';
  await agent.post(menu, { ...form, 'courses[0].dishes[1].part0': '9' });
  expect((await agent.post(menu, { ...form, 'courses[0].dishes[2].part0': '5' })).status).toBe(303);
  const [supper] = (await stored(agent, 'choir-supper'))?.courses ?? [];
  expect(supper?.dishes.map(({ eaters }) => eaters)).toMatchObject([
    {},
    { counts: [{ guests: 9 }, { guests: 3 }] },
    { counts: [{ guests: 5 }] },
  ]);
  const clash = await agent.post(menu, { ...form, 'courses[0].dishes[1].part0': '10' });
  expect(clash.status).toBe(409);
  expect((await agent.post('/events/gone/menu', form)).status).toBe(404);
});

test('a done event knows only what was served', async () => {
  const details = fieldsOf((await agent.get('/events/choir-supper/edit')).text);
  await agent.post('/events/choir-supper/edit', { ...details, state: 'done' });
  const form = {
    ...(await formOf('choir-supper')),
    'courses[0].dishes[1].recipe': 'Lemon posset with shortbread',
  };
  const { status, text } = await agent.post('/events/choir-supper/menu', form);
  expect(status).toBe(422);
  expect(text).toContain('This event is done and keeps what was served.');
  expect(text).toContain('No recipe kept with what was served is called Lemon posset with shortbread.');
  const { text: history } = await agent.get('/history/event/choir-supper');
  expect(history).toMatch(/kept as it stood on \w+ \d+ \w+ \d{4}/);
  expect(history).not.toContain('Shin of beef');
  expect(text).not.toContain('<option value="Lemon posset');
});
