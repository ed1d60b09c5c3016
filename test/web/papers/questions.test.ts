import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.kitchen.diets = [
    {
      key: 'no-onion',
      name: 'no <u>onion</u>',
      kind: 'choice',
      avoidsTraits: [],
      avoidsAllergens: [],
      avoidsIngredients: [],
    },
  ];
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());
const at = '/events/retirement-lunch/questions';
const sheetOf = (text: string) => text.slice(text.indexOf('<article class="question-sheet">'));

test('the sheet asks in plain words, with the usual choices and the list in force, and tells nothing of anybody', async () => {
  const { text, status } = await agent.get(at);
  expect(status).toBe(200);
  const sheet = sheetOf(text);
  for (const asked of [
    'Vegetarian',
    'Halal',
    'No &lt;u&gt;onion',
    'Cereals containing gluten',
    'Molluscs',
    'Pregnant',
  ])
    expect(sheet).toContain(asked);
  expect(sheet).not.toMatch(/Gwen|Tom Lisle|£|class="mark|portion|recipe|Annex/);
});

test('the day it is wanted back stands on it', async () => {
  expect(sheetOf((await agent.get(`${at}?by=20+Nov`)).text)).toContain(
    'Send this back by <b>Fri 20 Nov 2026</b>',
  );
  expect(sheetOf((await agent.get(at)).text)).toContain('Send this back by <span class="line');
});

test('a day that is none, or after the party, is said', async () => {
  const wrong = await agent.get(`${at}?by=soon`);
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('value="soon"');
  expect(wrong.text).toContain('Enter the day, such as 4 Dec');
  const late = await agent.get(`${at}?by=2026-12-06`);
  expect(late.status).toBe(422);
  expect(late.text).toContain('is after the party on Sat 5 Dec');
  expect((await agent.get('/events/no-such/questions')).status).toBe(404);
});
