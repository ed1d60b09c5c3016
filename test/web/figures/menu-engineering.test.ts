import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Agent, agentOn } from '../agent.js';
import { kitchenWithTeas } from './held.js';

// Invented prices: of the tea held on 12 September, and of the one to come in December.
const prices: Record<string, number> = { 'beef-rolls': 450, 'leek-tartlets': 250, shortbread: 100 };

let agent: Agent;
beforeAll(async () => {
  const kitchen = kitchenWithTeas();
  for (const event of kitchen.events)
    if (event.key !== 'tea-2026-10-03')
      for (const dish of event.courses.flatMap(({ dishes }) => dishes)) dish.price = prices[dish.key] ?? null;
  for (const recipe of kitchen.events.find(({ key }) => key === 'tea-2026-09-12')!.served!.recipes)
    if (recipe.key === 'shortbread') recipe.name = 'Shortbread <u>';
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

test('dishes with a price of their own by popularity and margin, in a picture and a table', async () => {
  const { text, status } = await agent.get('/menu-engineering');
  expect(status).toBe(200);
  expect(text).toContain('class="engineering"');
  expect(text).toMatch(/aria-label="Stars: .*Plowhorses: .*Puzzles: .*Dogs: /);
  expect(text).toContain('M. L. Kasavana and D. I. Smith, Menu Engineering, 1982');
  expect(text).not.toContain('<u>');
  expect(text).toMatch(/Hummus[^<]*<\/a>: no price of its own/);
  const { body } = await agent.get('/menu-engineering.json');
  const rows = body.tables[0].rows as { dish: string; portions: string; mix: string; class: string }[];
  expect(rows).toHaveLength(3);
  expect(rows.find(({ dish }) => dish.startsWith('Leek'))?.portions).toBe('27');
  expect(rows.reduce((all, { mix }) => all + Number(mix), 0)).toBeCloseTo(100, 0);
});

test('parties to come count when asked for, as they are planned', async () => {
  const { body } = await agent.get('/menu-engineering.json?coming=on');
  const rows = body.tables[0].rows as { dish: string; portions: string }[];
  expect(rows.find(({ dish }) => dish.startsWith('Leek'))?.portions).toBe('65');
});

test('no dish with a price, and a day that is none, say what to do', async () => {
  const { text } = await agent.get('/menu-engineering?since=1+Oct+2026');
  expect(text).toContain('No dish with a price of its own was sold in that time');
  const wrong = await agent.get('/menu-engineering?since=soon');
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('value="soon"');
});

test('what shrinks when fewer come, or none; an odd number is asked for again', async () => {
  const off = await agent.get('/events/birthday-tea/fewer');
  expect(off.text).toMatch(/Called off: the shopping is £[\d.,]+ less\./);
  expect(off.text).toContain('All their shopping');
  const some = await agent.get('/events/birthday-tea/fewer?guests=20');
  expect(some.text).toMatch(/With 20 guests in place of 38: the shopping is £[\d.]+ less\./);
  expect((await agent.get('/events/birthday-tea/fewer?guests=few')).status).toBe(422);
  expect((await agent.get('/events/gone/fewer')).status).toBe(404);
});
