import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

// The lunch of the example has seven dishes. Steps of the green beans and of the hummus are given one board, so that the
// beans are handled with the sesame of the hummus.
let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  for (const recipe of kitchen.recipes)
    if (/Green beans|Hummus/.test(recipe.name)) recipe.steps[0]!.equipment = ['Board'];
  const lunch = kitchen.events.find(({ key }) => key === 'retirement-lunch')!;
  lunch.name = 'Lunch <b>of</b> sixty';
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());
const at = '/events/retirement-lunch/allergens/table';
const cards = (text: string) => text.slice(text.indexOf('cut-cards')).split('<article').slice(1);
const idOf = (text: string, dish: string) =>
  [...text.matchAll(/name="d" value="([^"]+)"[^>]*><label[^>]*>Cards of ([^<]+)</g)].find(
    ([, , name]) => name === dish,
  )![1]!;

test('a card of each dish, with the party small, the caution and the days labels were read', async () => {
  const { text } = await agent.get(at);
  const all = cards(text);
  expect(all).toHaveLength(7);
  for (const card of all) {
    expect(card).toContain('Lunch &lt;b&gt;of&lt;/b&gt; sixty, Sat 5 Dec 2026');
    expect(card).toContain('it does not test food');
    expect(card).toMatch(/Labels read from \w+ \d+ \w+ 2026 to/);
  }
});

test('what a dish is handled with stands apart from what it contains, in words', async () => {
  const beans = cards((await agent.get(at)).text).find((card) => card.includes('<h3>Green beans'))!;
  expect(beans).toMatch(/<b>Handled with<\/b> [^<]*sesame[^<]*\(shared board\)/);
  expect(beans).toMatch(/<b>Contains:<\/b> nuts \(hazelnut\)/);
});

test('as many of each as are asked for, and none of the others', async () => {
  const { text } = await agent.get(at);
  const [beans, hummus] = [idOf(text, 'Green beans with hazelnuts'), idOf(text, 'Hummus with carrot sticks')];
  const some = await agent.get(`${at}?d=${beans}&n=10&d=${hummus}&n=`);
  expect(some.status).toBe(200);
  expect(cards(some.text)).toHaveLength(10);
  expect(some.text).toContain('10 cards on 2 sheets of eight');
});

test('a number that is none is said, and what was typed stays', async () => {
  const beans = idOf((await agent.get(at)).text, 'Green beans with hazelnuts');
  const wrong = await agent.get(`${at}?d=${beans}&n=ten<i>`);
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('value="ten&lt;i&gt;"');
  expect(wrong.text).toContain('Enter the number of cards in figures');
});

test('the same answer as CSV and JSON', async () => {
  const { body } = await agent.get(`${at}.json`);
  expect(body.sheet).toBe('table-cards');
  expect(
    body.tables[0].rows.find((row: { dish: string }) => row.dish.startsWith('Green beans')),
  ).toMatchObject({
    contains: 'nuts (hazelnut)',
    ground: 'labels and the cook’s word',
  });
  expect((await agent.get(`${at}.csv`)).text).toContain('Not checked: ask us');
  expect((await agent.get('/events/no-such/allergens/table')).status).toBe(404);
});
