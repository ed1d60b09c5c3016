import { afterAll, beforeAll, expect, test } from 'vitest';
import { terms } from '../../../src/core/facts/price.js';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeAll(async () => {
  const book = exampleKitchen();
  Object.assign(book.kitchen, { costs: [], terms: terms.parse({}) });
  agent = await agentOn(book);
});
afterAll(() => agent.close());

const form = async (url: string) => fieldsOf((await agent.get(url)).text, url);
const kitchen = async () => (await read(agent.db, 'kitchen', 'kitchen'))!.doc;

test('usual costs, the margin to live on, roundings and how tax is named are kept together', async () => {
  const saved = await agent.post('/kitchen/costs', {
    ...(await form('/kitchen/costs')),
    'costs[0].key': '',
    'costs[0].name': 'Washing <up>',
    'costs[0].by': 'hours',
    'costs[0].hours': '2',
    'costs[0].rate': '11.44',
    marginFloor: '32.5 %',
    roundTo: '0.50',
    included: 'yes',
    rounding: 'line-down',
  });
  expect(saved.headers.location).toMatch(/^\/kitchen\/costs\?saved=\d+$/);
  expect(await kitchen()).toMatchObject({
    costs: [{ name: 'Washing <up>', by: { rate: 1144, hours: '2' } }],
    marginFloor: '32.5',
    roundTo: 50,
    tax: { name: 'VAT', rate: '20', included: true, rounding: 'line-down' },
  });
  const page = await agent.get(saved.headers.location!);
  expect(page.text).toContain('value="Washing &lt;up&gt;"');
  expect(page.text).toContain('/undo/');
});

test('a margin of everything is no margin, and what was typed stays', async () => {
  const typed = { ...(await form('/kitchen/costs')), marginFloor: '100', roundTo: 'half' };
  const { status, text } = await agent.post('/kitchen/costs', typed).set('hx-request', 'true');
  expect(status).toBe(422);
  expect(text.trim()).toMatch(/^<form id="usual-costs"/);
  expect(text).toContain('The margin must be between 0 and 99. You entered 100. Did you mean 10?');
  expect(text).toContain('value="half"');
});

test('the terms: words, days, instalments and what is owed when it is called off', async () => {
  const saved = await agent.post('/kitchen/terms', {
    ...(await form('/kitchen/terms')),
    included: 'Crockery, <service> and clearing away',
    validDays: '21 days',
    finalCountDays: '7',
    fewerPercent: '10',
    'instalments[0].words': 'Deposit, one quarter',
    'instalments[0].percent': '25',
    'instalments[0].days': '',
    'instalments[1].words': '',
    balanceDays: '14',
    balance: 'after',
    'cancellation[0].days': '3',
    'cancellation[0].percent': '100',
    'cancellation[1].days': '14',
    'cancellation[1].percent': '50',
  });
  expect(saved.headers.location).toMatch(/^\/kitchen\/terms\?saved=\d+$/);
  expect((await kitchen()).terms).toEqual({
    included: 'Crockery, <service> and clearing away',
    guestNumbers: '',
    allergies: '',
    more: '',
    validDays: 21,
    finalCountDays: 7,
    fewerPercent: '10',
    instalments: [{ words: 'Deposit, one quarter', percent: '25', days: null }],
    balanceDays: -14,
    cancellation: [
      { days: 14, percent: '50' },
      { days: 3, percent: '100' },
    ],
  });
  const sent = await form('/kitchen/terms');
  expect([sent.balance, sent.balanceDays, sent.validDays]).toEqual(['after', '14', '21']);
});

test('terms that can’t be read are asked about, rows are added, and an older form meets what is kept', async () => {
  const old = await form('/kitchen/terms');
  const { status, text } = await agent.post('/kitchen/terms', {
    ...old,
    validDays: 'soon',
    'instalments[0].percent': '250',
    'instalments[0].words': '',
  });
  expect(status).toBe(422);
  expect(text).toContain('Enter the days in figures, such as 40.');
  expect(text).toContain('Say what the client calls it, such as deposit.');
  expect(text).toContain('It must be between 0 and 100. You entered 250. Did you mean 25?');
  const more = await agent.post('/kitchen/terms', { ...old, do: 'add:cancellation' });
  expect(fieldsOf(more.text, '/kitchen/terms')['cancellation[2].days']).toBe('');
  await agent.post('/kitchen/terms', { ...old, validDays: '30' });
  expect((await agent.post('/kitchen/terms', { ...old, validDays: '31' })).status).toBe(409);
});
