import { afterAll, beforeAll, expect, test } from 'vitest';
import { sellingPrice } from '../../../src/core/facts/price.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
let gaps: Agent;
/** The example with its food alone, so that its figures by hand hold. */
const foodOnly = () => {
  const kitchen = exampleKitchen();
  for (const event of kitchen.events) Object.assign(event, { costs: [], price: sellingPrice.parse({}) });
  return kitchen;
};

beforeAll(async () => {
  agent = await agentOn(foodOnly());
  const kitchen = foodOnly();
  for (const ingredient of kitchen.ingredients) {
    if (ingredient.name.startsWith('Shin of beef'))
      Object.assign(ingredient, { packs: [], name: 'Shin <u>' });
    if (ingredient.name.startsWith('Cooking apple')) ingredient.packs[0]!.prices.at(-1)!.guess = true;
  }
  gaps = await agentOn(kitchen);
});
afterAll(() => Promise.all([agent.close(), gaps.close()]));

const pence = (text: string) => Number(text.replace(/[£,.]/g, ''));
const table = (text: string, heading: string) =>
  text.slice(text.indexOf(`<h2>${heading}`)).split('</table>')[0]!;

// Worked by hand in the example: the tea is 149.05 pounds, 3.92 a guest.
test('the cost of the food, a guest and in all, and every list adds up to the penny', async () => {
  const { text, status } = await agent.get('/events/birthday-tea/costing');
  expect(status).toBe(200);
  expect(text).toContain('<b class="figure">£3.92</b></td><th scope="row">Food as used, 4 dishes');
  expect(table(text, 'How the price')).toContain('<td class="number">£149.05</td>');
  for (const heading of ['By dish', 'By ingredient']) {
    const body = table(text, heading).split('<tfoot>')[0]!;
    const lines = body.split('<tr>').slice(1);
    const costs = lines.map((line) => [...line.matchAll(/<td class="number"[^>]*>(£[\d.,]+)</g)].at(-1)![1]!);
    expect(costs.reduce((sum, cost) => sum + pence(cost), 0)).toBe(14_905);
  }
  expect(text).not.toContain('so far');
});

test('what is not bought costs a true nothing, and a price carries its day', async () => {
  const { text } = await agent.get('/events/birthday-tea/costing');
  const water = table(text, 'By ingredient')
    .split('<tr>')
    .find((row) => row.includes('Tap water'))!;
  expect(water).toContain('not bought');
  expect(water).toContain('£0.00');
  expect(table(text, 'By ingredient')).toMatch(/£12\.90, \w+ \d+ \w+ 2026/);
});

test('a missing price makes the cost incomplete, loudly, and never nothing', async () => {
  const { text } = await gaps.get('/events/choir-supper/costing');
  expect(text).toContain('The cost is incomplete: it lacks what is named here.');
  expect(text).toMatch(/No price for Shin &lt;u&gt;\. <a class="screen" href="\/ingredients\/[a-z-]+\/packs/);
  expect(text).toMatch(/£[\d.]+ so far/);
  const shin = table(text, 'By ingredient')
    .split('<tr>')
    .find((row) => row.includes('Shin'))!;
  expect(shin).toContain('not known');
  expect(shin).not.toContain('£0');
  expect(text).toContain('a guess');
});

test('costing without an event shows the next, and another when it is chosen', async () => {
  const { text } = await agent.get('/costing');
  expect(text).toContain('<option value="choir-supper" selected>Fri 4 Dec, Choir supper after the concert');
  const other = await agent.get('/costing?event=birthday-tea');
  expect(other.text).toContain('£149.05');
  expect((await agent.get('/costing?event=no-such')).status).toBe(404);
  const none = await agentOn({ ...exampleKitchen(), events: [] });
  expect((await none.get('/costing')).text).toContain('No event is to come');
  await none.close();
});

test('the same answer as CSV and JSON', async () => {
  const { body } = await agent.get('/events/birthday-tea/costing.json');
  expect(body.about).toMatchObject({
    view: 'used',
    food: '149.05',
    cost: '149.05',
    costAGuest: '3.92',
    complete: 'true',
    currency: 'GBP',
  });
  const { text } = await gaps.get('/events/choir-supper/costing.csv');
  expect(text).toContain('to settle');
  expect(text).toContain('No price for Shin');
});
