import { afterAll, beforeAll, expect, test } from 'vitest';
import { recipe } from '../../../src/core/facts/recipe.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

const script = '<script>alert(1)</script>';
let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  const many = Array.from({ length: 250 }, (_, i) =>
    recipe.parse({ key: `pie-${i}`, name: `Pie ${i}`, yield: { portions: '4' } }),
  );
  kitchen.recipes.push(
    ...many,
    recipe.parse({ key: 'script', name: script, yield: { weight: { amount: '1', unit: 'kg' } } }),
    recipe.parse({ key: 'zabaglione', name: 'Zabaglione', yield: { portions: '4' }, archived: true }),
  );
  kitchen.recipes.sort((a, b) => (a.key < b.key ? -1 : 1));
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

test('the recipes stand by name, two hundred at a time', async () => {
  const { text, status } = await agent.get('/recipes');
  expect(status).toBe(200);
  expect(text.match(/class="dish bare"/g)).toHaveLength(200);
  expect(text).toContain('/recipes?from=200');
  expect(text.indexOf('>Pie 2<')).toBeLessThan(text.indexOf('>Pie 10<'));
  expect(text).toContain('href="/ingredients"');
  const next = await agent.get('/recipes?from=200');
  expect(next.text).toContain('Vegetable stock');
  expect(next.text).not.toContain('Show the next');
});

test('a part of a name narrows them, with htmx and without', async () => {
  const { text } = await agent.get('/recipes?q=LENTIL');
  expect(text).toContain('<!doctype html>');
  expect(text.match(/class="dish bare"/g)).toHaveLength(3);
  const part = await agent.get('/recipes?q=lentil').set('hx-request', 'true');
  expect(part.text).not.toContain('<!doctype');
  expect(part.text.match(/class="dish bare"/g)).toHaveLength(3);
  const none = await agent.get('/recipes?q=nothing%20of%20the%20kind');
  expect(none.text).toContain('/recipes/new?name=nothing%20of%20the%20kind');
});

test('archived ones stand behind a link, and names are words, never markup', async () => {
  const { text } = await agent.get('/recipes?q=s');
  expect(text).not.toContain('Zabaglione');
  expect(text).toContain('1 archived recipe');
  expect((await agent.get('/recipes?archived=yes')).text).toContain('Zabaglione');
  const found = await agent.get(`/recipes?q=${encodeURIComponent('<script')}`);
  expect(found.text).toContain('&lt;script&gt;alert(1)');
  expect(found.text).not.toContain('<script>alert');
});

test('an empty kitchen says what to do next', async () => {
  const all = exampleKitchen();
  const empty = await agentOn({ ...all, ingredients: [], recipes: [], events: [], prepPeriods: [] });
  expect((await empty.get('/recipes')).text).toContain('No recipe yet.');
  expect((await empty.get('/ingredients')).text).toContain('No ingredient yet.');
  await empty.close();
});
