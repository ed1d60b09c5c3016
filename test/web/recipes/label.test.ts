import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

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
