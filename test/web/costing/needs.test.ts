import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

// The three parties of the example cost what each costs alone, added up (shared/example/README.md).
test('what the coming parties need together, on a page, as CSV and as JSON', async () => {
  const page = await agent.get('/needs');
  expect(page.status).toBe(200);
  const { body } = await agent.get('/needs.json');
  const [dishes, components, ingredients] = body.tables;
  const costs: string[] = [];
  for (const key of body.about.events.split('; ')) {
    const alone = await agent.get(`/events/${key}/costing.json`);
    costs.push(alone.body.about.foodKnown);
  }
  const pennies = (text: string) => Number(text.replace('.', ''));
  const sum = (rows: { cost: string }[]) =>
    rows.reduce((all, { cost }) => all + (cost ? pennies(cost) : 0), 0);
  expect(costs.length).toBeGreaterThan(1);
  expect(pennies(body.about.costKnown)).toBe(costs.reduce((all, cost) => all + pennies(cost), 0));
  expect(sum(ingredients.rows)).toBe(pennies(body.about.costKnown));
  expect(sum(dishes.rows)).toBe(pennies(body.about.costKnown));
  expect(components.rows.length).toBeGreaterThan(3);
  expect((await agent.get('/needs.csv')).text).toContain('Vegetable stock');
});

test('a set of one is that one, and an event that is gone is not found', async () => {
  const one = await agent.get('/needs.json?event=retirement-lunch');
  expect(one.body.about.events).toBe('retirement-lunch');
  expect((await agent.get('/needs?event=retirement-lunch&event=never-was')).status).toBe(404);
});
