import { afterAll, beforeAll, expect, test } from 'vitest';
import { costLines } from '../../../src/core/facts/cost-line.js';
import { sellingPrice } from '../../../src/core/facts/price.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

const page = '/events/birthday-tea/costing';
let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.kitchen.tax = null;
  kitchen.kitchen.marginFloor = '30';
  const tea = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
  tea.costs = costLines.parse([
    { key: 'serve', name: 'Pass <i>', kind: 'hands', by: { rate: 1350, hours: '4', guestsEach: 20 } },
  ]);
  const lunch = kitchen.events.find(({ key }) => key === 'retirement-lunch')!;
  lunch.groups[0]!.guests = 4000;
  tea.price = sellingPrice.parse({ by: { aGuest: 1000 } });
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

const curve = async (query = '') => {
  const { text } = await agent.get(`${page}${query}`);
  return text.slice(text.indexOf('<div class="curve">'), text.indexOf('id="price"'));
};
const row = (text: string, guests: number) =>
  text.split(`<th scope="row" class="number">${guests}</th>`)[1]?.split('</tr>')[0];

test('the page draws the curve about the guests there are, and says it in words and in a list', async () => {
  const text = await curve();
  expect(text).toContain('What one guest costs, 19 to 57 guests');
  expect(text.match(/<svg class="curve"/g)).toHaveLength(2);
  expect(text).toContain('<text class="price"');
  expect(text).toContain('price £10.00');
  expect(text).toContain('keeps 30%');
  expect(row(text, 38)).toContain('£');
  expect(text).toContain('Other head-counts keep the proportion of 30 adults to 8 children.');
});

// Two people serve 38: 108.00 and the food, 149.05. At 41 it is three people.
test('a row is what the costing of so many guests says, and a jump has its name, as text', async () => {
  const text = await curve('?from=30&to=45');
  expect(row(text, 38)).toContain('£257.05');
  expect(row(text, 41)).toContain('third person, Pass &lt;i&gt;');
  expect(text).toContain('41: third person, Pass &lt;i&gt;');
  expect(text).not.toContain('Pass <i>');
  expect(row(text, 29)).toBeUndefined();
});

test('a batch that both hands and hob begin is named once', async () => {
  const { text } = await agent.get('/events/choir-supper/costing?from=58&to=61');
  const [, ...named] = row(text, 60)!.split('third batch, Beef and ale stew with mash');
  expect(named).toHaveLength(1);
});

test('of very many guests it draws those nearest to them, and no more than fit', async () => {
  const { status, text } = await agent.get('/events/retirement-lunch/costing');
  expect(status).toBe(200);
  expect(text).toContain('What one guest costs, 3,750 to 4,250 guests');
  expect(text).not.toContain('A curve shows 500 head-counts at most');
});

test('as bought the list has whole packs', async () => {
  const text = await curve('?view=bought&from=36&to=40');
  expect(text).toContain('name="view" value="bought"');
  expect(text).toMatch(/pack, /);
});

test.each([
  ['?from=20&to=10', 'Enter more guests than 20'],
  ['?from=0&to=10', 'must be between 1 and'],
  ['?from=ten&to=20', 'in figures'],
  ['?from=1&to=900', 'Enter 501 or fewer'],
])('a range that can’t be is named, kept as typed, and the usual one drawn: %s', async (query, sentence) => {
  const text = await curve(query);
  expect(text).toContain(sentence);
  expect(text).toContain('What one guest costs, 19 to 57 guests');
  const [from] = /from=([^&]*)/.exec(query)!.slice(1);
  expect(text).toContain(`value="${from}"`);
});
