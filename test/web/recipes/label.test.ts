import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Recipe } from '../../../src/core/facts/recipe.js';
import { edit } from '../../../src/store/changes.js';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn, now } from '../agent.js';

const kitchen = exampleKitchen();
const tart = kitchen.recipes.find(({ lines }) => lines.some(({ item }) => 'component' in item))!;
const odd = { ...tart, key: 'odd-tart', name: '<script>alert(1)</script>', keepingDays: 2 };
let agent: Agent;
beforeAll(async () => {
  agent = await agentOn({ ...kitchen, recipes: [...kitchen.recipes, odd] });
});
afterAll(() => agent.close());

const at = '/recipes/odd-tart/label';

test('the label stands on the page, and as many times on paper as asked', async () => {
  const page = await agent.get(`${at}?made=12+Oct+2026&copies=3`);
  expect(page.status).toBe(200);
  expect(page.text).toContain('<b>Ingredients:</b>');
  expect(page.text).toMatch(/<b class="strong">[A-Z ]+<\/b>/);
  expect(page.text).toContain('Use by: Wed 14 Oct 2026');
  expect(page.text.match(/class="cut-card/g)).toHaveLength(3);
  expect(page.text).not.toContain('<script>alert');
  expect((await agent.get(`/recipes/${tart.key}`)).text).toContain(`href="/recipes/${tart.key}/label"`);
});

test('it is a sheet like any other', async () => {
  const json = await agent.get(`${at}.json`);
  const sheet = JSON.parse(json.text);
  expect(sheet.sheet).toBe('full-label');
  expect(sheet.about.ingredients).toMatch(/[A-Z]{3}/);
  expect(sheet.tables[0].rows).toHaveLength(new Set(odd.lines.map(({ item }) => JSON.stringify(item))).size);
  const csv = await agent.get(`${at}.csv`);
  expect(csv.headers['content-type']).toContain('text/csv');
  expect(csv.text).toContain('As it stands on the label');
});

test('a day or a number that can’t be read is said, and what was typed stays', async () => {
  const wrong = await agent.get(`${at}?made=someday&copies=900`);
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('value="someday"');
  expect(wrong.text).toContain('value="900"');
  expect((await agent.get('/recipes/nowhere/label')).status).toBe(404);
});

const printed = async () => {
  const sent = await agent.post(`${at}/printed`, { made: '2 Dec 2026', copies: '3' });
  expect(sent.status).toBe(303);
  return agent.get(String(sent.headers.location));
};

// The tart of the example is served at no party here, so its label is said to be old on its own page alone.
test('labels are noted as printed, and said to hold no more once what is in it changed', async () => {
  const page = await printed();
  expect(page.text).toContain('data-print-now');
  expect((await agent.get(at)).text).toContain('it still holds.');
  const stored = (await read(agent.db, 'recipe', 'odd-tart'))!;
  const lines = stored.doc.lines.slice(1);
  const change = (doc: Recipe) => ({ ...doc, lines });
  await edit(agent.db, 'recipe', 'odd-tart', { revision: stored.revision, change, who: 'Ana', at: now });
  expect((await agent.get(at)).text).toContain('no longer hold: what they say changed.');
  expect((await printed()).text).not.toContain('no longer hold');
});

test('labels of a dish to be served are said to be old in the week and at the event, until their food is', async () => {
  const event = kitchen.events.find(({ courses }) => courses.some(({ dishes }) => dishes.length > 0))!;
  const { recipe } = event.courses.flatMap(({ dishes }) => dishes)[0]!;
  const own = kitchen.recipes.find(({ key }) => key === recipe)!;
  await agent.post(`/recipes/${recipe}/label/printed`, { made: '2 Dec 2026', copies: '1' });
  const pages = async () => [
    (await agent.get('/?from=2026-12-02')).text,
    (await agent.get(`/events/${event.key}`)).text,
  ];
  const said = `The labels of ${own.name} printed`;
  for (const page of await pages()) expect(page).not.toContain(said);
  const stored = (await read(agent.db, 'recipe', recipe))!;
  const change = (doc: Recipe) => ({ ...doc, name: `${doc.name} two` });
  await edit(agent.db, 'recipe', recipe, { revision: stored.revision, change, who: 'Ana', at: now });
  for (const page of await pages()) expect(page).toContain(`The labels of ${own.name} two printed`);
});

test('a day that can’t be read notes nothing, and a recipe that is gone is not found', async () => {
  const sent = await agent.post('/recipes/odd-tart/label/printed', { made: 'someday', copies: '3' });
  expect((await agent.get(String(sent.headers.location))).status).toBe(422);
  expect((await agent.post('/recipes/nowhere/label/printed', { made: '', copies: '' })).status).toBe(404);
});
