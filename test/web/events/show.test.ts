import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

const script = '<script>alert(1)</script>';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  const tea = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
  tea.name = script;
  tea.client = script;
  tea.note = script;
  tea.courses[0]!.name = script;
  kitchen.recipes.find(({ key }) => key === 'hummus')!.name = `Hummus ${script}`;
  kitchen.events.push({ ...tea, key: 'empty', name: 'Nothing yet', courses: [] });
  kitchen.events.sort((a, b) => (a.key < b.key ? -1 : 1));
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

test('an event says who, when, where, what it makes and what it costs a guest', async () => {
  const { text, status } = await agent.get('/events/choir-supper');
  expect(status).toBe(200);
  for (const words of [
    'Choir supper after the concert',
    'Fri 4 Dec',
    'The Saltway choir, Ferry Meadow Hall',
    '48 adults, 12 children',
    'Leave kitchen</dt><dd>19:10',
    'Cost a guest',
    'Price a guest</dt><dd>£22.00 <span class="second">35.2% margin</span>',
    '/recipes/beef-stew?event=choir-supper&amp;dish=beef-stew',
    'href="/events/choir-supper/allergens"',
    'href="/events/choir-supper/costing"',
    'href="/events/choir-supper/prep"',
    'href="/events/choir-supper/edit"',
    'href="/events/choir-supper/menu"',
    'href="/events/choir-supper/copy"',
    'made ahead',
  ])
    expect(text, words).toContain(words);
});

test('what is not known is said in words, and what must be settled leads to where it is mended', async () => {
  const { text } = await agent.get('/events/retirement-lunch');
  expect(text).toMatch(/<b class="loud">[^<]*not known<\/b>/);
  expect(text).toContain('Gwen Abery (vegan) has nothing to eat in pudding.');
  expect(text).toContain('href="/events/retirement-lunch/allergens#guests"');
  expect(text).toContain('Read the label');
  expect(text).not.toMatch(/\bsafe\b|suitable for|guaranteed/i);
});

test('names are words, never markup', async () => {
  const { text } = await agent.get('/events/birthday-tea');
  expect(text).not.toContain('<script>alert');
  expect(text).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
});

test('an event without a menu says what to do next', async () => {
  const { text } = await agent.get('/events/empty');
  expect(text).toContain('Nothing is on the menu yet.');
  expect(text).not.toContain('Cost a guest');
});

test('the summary is one sheet as page, CSV and JSON', async () => {
  const json = await agent.get('/events/choir-supper.json');
  expect(json.headers['content-type']).toContain('application/json');
  expect(json.body.sheet).toBe('event-summary');
  expect(json.body.tables[0].rows[0]).toMatchObject({
    dish: 'Beef and ale stew with mash',
    portions: '40.5',
  });
  const csv = await agent.get('/events/choir-supper.csv');
  expect(csv.headers['content-type']).toContain('text/csv');
  expect(csv.text).toContain('Beef and ale stew with mash,40.5');
  const asked = await agent.get('/events/choir-supper').set('accept', 'application/json');
  expect(asked.body).toEqual(json.body);
  const { text } = await agent.get('/events/choir-supper');
  expect(text).toContain('running-head');
  expect(text).toContain('Printed Wed 14 Oct 2026, 10:20.');
});

test('an event that is gone is not found on any of its pages', async () => {
  for (const end of ['', '.csv', '.json', '/guests/change', '/edit', '/menu', '/copy', '/remove']) {
    const { status, text } = await agent.get(`/events/gone${end}`);
    expect(status, end).toBe(404);
    if (end !== '.json') expect(text).toContain('There is no event at this address');
  }
});
