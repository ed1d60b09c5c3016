import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { type Agent, agentOn } from './agent.js';

let agent: Agent;
const kitchen = exampleKitchen();
beforeAll(async () => {
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

test('the find box finds events, recipes, ingredients and guests by part of their names', async () => {
  const named = kitchen.events.flatMap(({ guests }) => guests).find(({ name }) => name !== '')!;
  for (const [name, link] of [
    [kitchen.events[0]!.name, `/events/${kitchen.events[0]!.key}`],
    [kitchen.recipes[0]!.name, `/recipes/${kitchen.recipes[0]!.key}`],
    [kitchen.ingredients[0]!.name, `/ingredients/${kitchen.ingredients[0]!.key}`],
    [named.name, '/events/'],
  ] as const) {
    const { text } = await agent.get(`/find?q=${encodeURIComponent(name.slice(0, 6).toUpperCase())}`);
    expect(text).toContain(`href="${link}`);
  }
});

test('to htmx it answers the list alone, and says how many', async () => {
  const { text } = await agent
    .get('/find?q=zzzz')
    .set('hx-request', 'true')
    .set('hx-request-type', 'partial');
  expect(text.trim()).toMatch(/^<div id="found">/);
  expect(text).toContain('Nothing is called that.');
  expect(text).toMatch(/<hx-partial hx-target="#said"[^>]*>0 found</);
  expect((await agent.get('/find?q=zzzz')).text).not.toContain('hx-partial');
});

test('what is looked for is never markup', async () => {
  const { text } = await agent.get(`/find?q=${encodeURIComponent('"><b>x')}`);
  expect(text).toContain('value="&quot;&gt;&lt;b&gt;x"');
});
