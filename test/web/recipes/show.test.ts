import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const plain = (html: string) =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .replaceAll('&#39;', "'");

test('a recipe says what goes in, what to buy, what it holds and costs', async () => {
  const { text, status } = await agent.get('/recipes/beef-stew');
  expect(status).toBe(200);
  const said = plain(text);
  for (const words of [
    'Base yield 20 portions.',
    '1.20 kg Onion , sliced',
    '1.33 kg at 90%',
    'as bought, 3.60 kg at 60%',
    'gluten',
    'Celery , from Celery in Vegetable stock',
    'Other nine: not listed',
    '2 h 30 to 3 h',
    '160 °C',
    'Oven, 1 tray of 20 portions',
    'to taste',
    'Metric: cup 250 ml, tablespoon 15 ml',
  ])
    expect(said, words).toContain(words);
  expect(text).toContain('href="/recipes/vegetable-stock"');
  expect(said).not.toMatch(/\bsafe\b|suitable for|guaranteed/i);
});

test('portions and their size scale it beside its base, in all four forms', async () => {
  const asked = '?portions=46&each=110+g';
  const said = plain((await agent.get(`/recipes/hummus${asked}`)).text);
  expect(said).toContain('5.06 kg , which is × 2.30 base.');
  expect(said).toContain('46 portions of 110 g');
  expect(said).toContain('base 2.20 kg');
  const { body } = await agent.get(`/recipes/hummus.json${asked}`);
  expect(body).toMatchObject({ sheet: 'recipe', about: { factor: '2.3', makes: '5060', makesUnit: 'g' } });
  const csv = await agent.get(`/recipes/hummus.csv${asked}`);
  expect(csv.headers['content-type']).toContain('text/csv');
  expect(csv.text).toContain('Carrot');
});

test('lines add up to the total to the penny', async () => {
  const { body } = await agent.get('/recipes/beef-stew.json?portions=37');
  const pence = (amount: string) => Math.round(Number(amount || '0') * 100);
  const lines = body.tables[0].rows as { cost: string }[];
  expect(lines.reduce((sum, { cost }) => sum + pence(cost), 0)).toBe(pence(body.about.cost));
});

test('a bare figure is in the recipe’s own measure; what can’t be read keeps its text', async () => {
  expect(plain((await agent.get('/recipes/hummus?each=110')).text)).toContain('× 1.00 base');
  const wrong = await agent.get('/recipes/hummus?portions=0&each=lots');
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('value="lots"');
  expect(wrong.text).toContain('Enter a quantity above zero');
  expect((await agent.get('/recipes/hummus.json?portions=1,500')).body.error).toContain('read two ways');
});

test('htmx gets the lines and what else moves, not the fields', async () => {
  const part = await agent
    .get('/recipes/hummus?portions=46')
    .set({ 'hx-request': 'true', 'hx-request-type': 'partial' });
  expect(part.text).toContain('id="scaled"');
  expect(part.text).toContain('<hx-partial hx-target="#scale-words"');
  expect(part.text).not.toContain('id="f-portions"');
  const wrong = await agent.get('/recipes/hummus?portions=x').set('hx-request', 'true');
  expect(wrong.status).toBe(422);
  expect(wrong.headers['hx-push-url']).toBe('false');
  expect(wrong.text).not.toContain('id="scaled"');
});

test('an event’s dish is scaled as that event needs it, its components too', async () => {
  const { text } = await agent.get('/recipes/lentil-pie?event=choir-supper&dish=lentil-pie');
  expect(plain(text)).toContain('for A Choir supper after the concert 9 1/2 portions');
  const stew = plain((await agent.get('/recipes/beef-stew?event=choir-supper&dish=beef-stew')).text);
  expect(stew).toMatch(/served within 1 h\. start by Fri 18:50/);
  const stock = await agent.get('/recipes/vegetable-stock.json?event=choir-supper&dish=beef-stew');
  expect(stock.body.about.factor).toBe('1.0125');
  expect((await agent.get('/recipes/hummus?event=choir-supper')).status).toBe(404);
  expect((await agent.get('/recipes/hummus?event=nowhere')).status).toBe(404);
});

test('a recipe scales for each event that uses it, and goes back to base', async () => {
  const { text } = await agent.get('/recipes/hummus?event=birthday-tea&dish=hummus');
  expect(text).toContain('href="/recipes/hummus?event=retirement-lunch&amp;dish=hummus"');
  expect(text).toContain('>Back to base</a>');
});

test('a label not read is loud, and leads to the label', async () => {
  const { text } = await agent.get('/recipes/horseradish-cream');
  expect(text).toContain('<b class="loud">14 not known</b>');
  expect(plain(text)).toContain('13 allergens not known, label not read: Horseradish sauce');
  expect(text).toContain('href="/ingredients/horseradish-sauce/label#allergens"');
});

test('a variant says what it does otherwise', async () => {
  const said = plain((await agent.get('/recipes/lentil-pie-oil')).text);
  expect(said).toContain('Differs from Lentil pie with a mashed top');
  expect(said).toContain('Mashed potato');
});

test('a recipe that is not there is not found', async () => {
  expect((await agent.get('/recipes/nothing')).status).toBe(404);
  expect((await agent.get('/recipes/nothing.json')).status).toBe(404);
});
