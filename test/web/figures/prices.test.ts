import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  for (const one of kitchen.ingredients) {
    if (one.key !== 'butter') continue;
    one.name = 'Butter <u>';
    // Invented: 8.20 a kilo in September, 9.84 on 10 October.
    one.packs[0]!.prices = [
      { key: 'p1', date: '2026-09-18', price: 205, guess: true },
      { key: 'p2', date: '2026-10-10', price: 246, guess: false },
    ];
  }
  for (const event of kitchen.events) {
    event.costs = [];
    event.price.by = event.key === 'birthday-tea' ? { aGuest: 1200 } : null;
  }
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

test('an ingredient’s prices stand by day and by the kilo, with what they moved since a day', async () => {
  const { text, status } = await agent.get('/ingredients/butter/prices?since=1+Oct');
  expect(status).toBe(200);
  expect(text).toContain('£9.84 a kg, up 20.0% since Thu 1 Oct 2026, when it was £8.20 a kg.');
  expect(text).toMatch(/£8\.20<\/b>[\s\S]*a guess/);
  expect(text).toContain('class="price-line"');
  expect(text).toContain('Prices of Butter &lt;u&gt;');
  expect(text).not.toContain('<u>');
  expect((await agent.get('/ingredients/butter')).text).toContain('href="/ingredients/butter/prices"');
});

test('a day that is none is asked for again, and what was typed stays; a day before any price says so', async () => {
  const wrong = await agent.get('/ingredients/butter/prices?since=someday');
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('value="someday"');
  expect((await agent.get('/ingredients/butter/prices?since=2020-01-01')).text).toContain(
    'nothing can be said since then',
  );
  expect((await agent.get('/ingredients/gone/prices')).status).toBe(404);
});

test('one price draws no line, none says so, and files carry every price', async () => {
  const { text } = await agent.get('/ingredients/milk/prices');
  expect(text).not.toContain('class="price-line"');
  expect((await agent.get('/ingredients/tap-water/prices')).text).toContain('No price yet');
  const { body } = await agent.get('/ingredients/butter/prices.json');
  expect(body.tables[0].rows.map((row: { each: string; since: string }) => [row.each, row.since])).toEqual([
    ['8.20', ''],
    ['9.84', '20.0'],
    // The other pack of the example, 5 kg at 39.80.
    ['7.96', ''],
  ]);
});

test('what moved in the kitchen, the parties to come that it touches, and what of their margin it takes', async () => {
  const { text, status } = await agent.get('/price-moves?days=10');
  expect(status).toBe(200);
  expect(text).toContain('up 20.0%');
  expect(text).toMatch(/Butter &lt;u&gt; £[\d.]+ more/);
  expect(text).toMatch(/\d\d\.\d% is now \d\d\.\d%/);
  expect(text).toContain('no price set yet');
  const { body } = await agent.get('/price-moves.json?days=10');
  const tea = body.tables[1].rows.find(({ event }: { event: string }) => event.includes('tea'));
  expect(Number(tea.costAfter) - Number(tea.costBefore)).toBeCloseTo(Number(tea.more), 1);
  expect(Number(tea.marginBefore)).toBeGreaterThan(Number(tea.marginAfter));
});

test('an odd number of days is asked for again', async () => {
  const { status, text } = await agent.get('/price-moves?days=many');
  expect(status).toBe(422);
  expect(text).toContain('Enter the number of days in figures');
});
