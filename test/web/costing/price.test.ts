import { afterAll, beforeAll, expect, test } from 'vitest';
import { sellingPrice } from '../../../src/core/facts/price.js';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

const page = '/events/birthday-tea/costing';
const at = '/events/birthday-tea/price';
let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.kitchen.marginFloor = '30';
  kitchen.kitchen.tax = null;
  for (const event of kitchen.events) {
    event.costs = [
      { key: 'c1', name: 'Hands <b>', kind: 'hands', by: { aGuest: 908 }, note: '' },
      { key: 'c2', name: 'Hall', kind: 'venue', by: { fixed: 4000 }, note: '' },
    ];
    event.price = sellingPrice.parse({});
  }
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

const form = async () => fieldsOf((await agent.get(page)).text, at);
const price = async () => (await read(agent.db, 'event', 'birthday-tea'))!.doc.price;
const set = async (fields: Record<string, string>) => agent.post(at, { ...(await form()), ...fields });
const tableRows = (text: string) =>
  text
    .slice(text.indexOf('How the price builds up'))
    .split('</table>')[0]!
    .replace(/<svg[\s\S]*?<\/svg>/g, '');

// The tea by hand: food 149.05, hands 38 × 9.08 = 345.04, hall 40.00, together 534.09, 14.05 a guest.
test('every cost is a rung, and a guest’s rungs add up to what one guest costs', async () => {
  const { text, status } = await agent.get(page);
  expect(status).toBe(200);
  const rows = tableRows(text);
  for (const figure of ['£149.05', '£345.04', '£40.00', '£534.09', '£14.05']) expect(rows).toContain(figure);
  expect(rows).toContain('Hands &lt;b&gt;');
  expect(rows).toContain('No price is set yet.');
  // 534.09 / 0.7 / 38 = 20.079 goes up to 20.08.
  expect(rows).toContain('red line: £20.08 would give your 30%');
});

test('a price a guest is saved with a receipt, and the margin it leaves is shown', async () => {
  const saved = await set({ by: 'aGuest', aGuest: '£19.00' });
  expect(saved.headers.location).toMatch(/^\/events\/birthday-tea\/costing\?saved=\d+$/);
  expect((await price()).by).toEqual({ aGuest: 1900 });
  const { text } = await agent.get(saved.headers.location!);
  expect(text).toContain('/undo/');
  // 38 × 19 = 722.00, less 534.09 leaves 187.91, 26.03 %; 762.98 would keep 30 %, so 40.98 are short.
  expect(tableRows(text)).toContain('£187.91');
  expect(text).toContain('<b>26.0%</b> of price');
  expect(text).toMatch(/<dt>Short by<\/dt><dd class="loud">£40\.98<\/dd>/);
});

test('food that is nothing of the price is refused, and what was typed stays', async () => {
  const refused = await set({ by: 'foodCost', foodCost: '0 %' });
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('Food is more than 0 % of a price.');
  expect(fieldsOf(refused.text, at)).toMatchObject({ by: 'foodCost', foodCost: '0 %' });
});

test('a price by margin goes up to the half pound and keeps it; children pay half, and it says so on average', async () => {
  await set({
    by: 'margin',
    margin: '35',
    roundTo: '0.50',
    'pays[1].how': 'percent',
    'pays[1].figure': '50',
  });
  expect(await price()).toMatchObject({
    by: { margin: '35' },
    roundTo: 50,
    groups: [{ group: 'children', pays: { percent: '50' } }],
  });
  const { text } = await agent.get(page);
  // 30 adults and 8 children at half are 34 full prices; 534.09 / 0.65 / 34 = 24.17 goes up to 24.50.
  expect(text).toContain('£24.50 in full');
  expect(text).toMatch(/<dt>Children, 8<\/dt><dd>£12\.50 each<\/dd>/);
  const margin = Number(/<b>([\d.]+)%<\/b> of price/.exec(text)![1]);
  expect(margin).toBeGreaterThanOrEqual(35);
});

test('a minimum and a discount are kept with what it is for', async () => {
  await set({
    by: 'total',
    total: '900',
    minimum: '£1000',
    off: 'percent',
    discount: '5',
    discountFor: 'a <friend>',
  });
  expect(await price()).toMatchObject({
    by: { total: 90000 },
    minimum: 100000,
    discount: { percent: '5' },
    discountFor: 'a <friend>',
  });
  expect((await agent.get(page)).text).toContain('value="a &lt;friend&gt;"');
});

test('what can’t be read keeps all that was typed, whole and as a part', async () => {
  const typed = { ...(await form()), by: 'aGuest', aGuest: 'two <score>', minimum: 'lots' };
  const { status, text } = await agent.post(at, typed);
  expect(status).toBe(422);
  expect(text).toContain('value="two &lt;score&gt;"');
  expect(text).toContain('<h1>');
  expect(text).toContain('Enter a price in figures, such as 3.40.');
  const part = await agent.post(at, typed).set('hx-request', 'true');
  expect(part.status).toBe(422);
  expect(part.text.trim()).toMatch(/^<form id="price"/);
});

test('a preview says what the price typed would leave, and nothing is saved', async () => {
  const before = await price();
  const typed = {
    ...(await form()),
    by: 'aGuest',
    aGuest: '30',
    minimum: '',
    off: 'none',
    'pays[1].how': 'full',
  };
  const { text } = await agent.post(`${at}/preview`, typed).set('hx-request', 'true');
  // 1,140.00 less 534.09 is 53.15 % of it.
  expect(text).toContain('<dt>Margin with this price</dt><dd>53.2%</dd>');
  expect((await agent.post(`${at}/preview`, typed)).text).toContain('Margin with this price');
  expect(await price()).toEqual(before);
});

test('a price that others changed meanwhile is merged by hand, and no event is not found', async () => {
  const old = await form();
  await agent.post(at, { ...old, by: 'aGuest', aGuest: '21' });
  expect((await agent.post(at, { ...old, by: 'aGuest', aGuest: '22' })).status).toBe(409);
  expect((await agent.post('/events/no-such/price', old)).status).toBe(404);
});

test('food as bought is named on the page, in JSON and CSV, and the save comes back to it', async () => {
  const bought = await agent.get(`${page}?view=bought`);
  expect(bought.text).toContain('Food as bought, 4 dishes');
  expect(bought.text).toContain('<h2>Packs bought</h2>');
  const json = (await agent.get(`${page}.json?view=bought`)).body;
  expect(json.about.view).toBe('bought');
  const { rows } = json.tables.find(({ name }: { name: string }) => name === 'packs');
  const pennies = (text: string) => Number(text.replace('.', ''));
  expect(rows.reduce((all: number, { share }: { share: string }) => all + pennies(share), 0)).toBe(
    pennies(json.about.food),
  );
  expect((await agent.get(`${page}.csv?view=bought`)).text).toContain('Food as bought');
  const sent = fieldsOf(bought.text, at);
  const saved = await agent.post(at, { ...sent, by: 'aGuest', aGuest: '25' });
  expect(saved.headers.location).toMatch(/costing\?view=bought&saved=\d+$/);
});

test('shares of packs bought for the week add up to what is paid for them', async () => {
  const paid = new Map<string, { paid: number; share: number }>();
  const money = (text: string) => Number(text.replace('.', ''));
  for (const key of ['choir-supper', 'birthday-tea', 'retirement-lunch']) {
    const { tables } = (await agent.get(`/events/${key}/costing.json?view=bought`)).body;
    for (const row of tables.find(({ name }: { name: string }) => name === 'packs').rows) {
      const share = (paid.get(row.ingredient)?.share ?? 0) + money(row.share);
      paid.set(row.ingredient, { paid: money(row.paid), share });
    }
  }
  expect(paid.size).toBeGreaterThan(20);
  for (const [name, { paid: receipt, share }] of paid) expect(share, name).toBe(receipt);
});

test('a sum that is not known is no nothing: the cost is incomplete, the margin is not known, and it says where', async () => {
  const costs = '/events/choir-supper/costs';
  const lines = fieldsOf((await agent.get(costs)).text, costs);
  await agent.post(costs, { ...lines, 'costs[1].sum': '' });
  const supper = '/events/choir-supper/price';
  const sent = fieldsOf((await agent.get('/events/choir-supper/costing')).text, supper);
  await agent.post(supper, { ...sent, by: 'aGuest', aGuest: '30' });
  const { text } = await agent.get('/events/choir-supper/costing');
  expect(text).toContain(
    'Hall: what it costs is not known. <a class="screen" href="/events/choir-supper/costs#costs-c2"',
  );
  expect(tableRows(text)).toContain('Margin <span class="loud">not known</span>');
  expect(tableRows(text)).not.toContain('red line');
});
