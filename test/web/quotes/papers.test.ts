import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { numberedPapers } from '../../../src/store/payments.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';
import { accepted, clear, draft, issued, list, lunch, paperOn, pay, press, priced } from './quoted.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(priced());
});
beforeEach(() => clear(agent));
afterAll(() => agent.close());

const payment = '/payments/retirement-lunch-payment';
const words = async (address: string) =>
  (await agent.get(address)).text.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

test('the deposit recorded, the list says what is paid and owed, and the quote thanks for it', async () => {
  const page = await accepted(agent);
  expect(await words(list)).toMatch(/Comes to £624\.00 Paid £0\.00 Owed £624\.00/);
  expect((await pay(agent, '£156.00')).headers.location).toBe(`${list}#payments`);
  const said = await words(list);
  expect(said).toMatch(/Comes to £624\.00 Paid £156\.00 Owed £468\.00/);
  expect(said).toContain('deposit, one quarter of £156.00, paid');
  expect(said).toContain('Wed 14 Oct 2026, deposit, by bank');
  expect(paperOn((await agent.get(page)).text)).toContain(
    '£156.00 deposit, one quarter. Received 14 October, thank you',
  );
});

// The lunch is on Saturday 5 December, its balance due two days before; put off by a week, both move by seven days.
test('a party put off to another day takes what is due by a day with it', async () => {
  await accepted(agent);
  expect(await words(list)).toContain('due Thu 3 Dec 2026');
  const move = (date: string) =>
    agent.db.updateTable('event').set({ date }).where('key', '=', 'retirement-lunch').execute();
  await move('2026-12-12');
  const said = await words(list);
  expect(said).toContain('due Thu 10 Dec 2026');
  expect(said).toContain('The party moved from Sat 5 Dec 2026 to Sat 12 Dec 2026');
  await move('2026-12-05');
});

test('a payment that cannot be read keeps what was typed; one pressed twice is recorded once', async () => {
  await accepted(agent);
  const wrong = await pay(agent, '0', '<i>cash');
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('Enter an amount above zero.');
  expect(fieldsOf(wrong.text, `${lunch}/payments`)).toMatchObject({ amount: '0', words: '<i>cash' });
  expect(wrong.text).not.toContain('<i>cash');
  const form = { known: '0', amount: '156', words: 'deposit', date: '13 Oct' };
  expect((await agent.post(`${lunch}/payments`, form)).status).toBe(303);
  const again = await agent.post(`${lunch}/payments`, form);
  expect(again.status).toBe(409);
  expect(again.text).toContain('Another payment was recorded since');
  expect(fieldsOf(again.text, `${lunch}/payments`)).toMatchObject({
    amount: '156',
    date: '13 Oct',
    known: '1',
  });
  const late = await agent.post(`${lunch}/payments`, { ...form, known: '1', date: '3 Nov 2027' });
  expect(late.text).toContain('is still to come');
});

test('one entered by mistake is struck out and seen, its receipt is void; money back counts against', async () => {
  await accepted(agent);
  await pay(agent, '156');
  const receipt = String((await agent.post(`${payment}/receipt`)).headers.location);
  await agent.post(`${payment}/strike`);
  expect(await words(list)).toMatch(/Paid £0\.00 .*struck out Wed 14 Oct 2026: entered by mistake/);
  expect(paperOn((await agent.get(receipt)).text)).toContain('Void: its payment was entered by mistake.');
  await agent.post(`${payment}/strike`, { counts: 'yes' });
  const { text } = await agent.get(list);
  const form = fieldsOf(text, `${lunch}/payments`);
  await agent.post(`${lunch}/payments`, { ...form, amount: '56', back: 'back', words: '' });
  expect(await words(list)).toMatch(/Paid £100\.00 .*−£56\.00 Wed 14 Oct 2026, given back/);
});

test('invoice and receipt come from the accepted quote, each once, and say what was paid by then', async () => {
  expect((await agent.post(`${lunch}/invoices`)).status).toBe(409);
  const page = await accepted(agent);
  await pay(agent, '156');
  const invoice = String((await agent.post(`${lunch}/invoices`)).headers.location);
  expect(invoice).toBe('/papers/invoice/1');
  expect((await agent.post(`${lunch}/invoices`)).headers.location).toBe(invoice);
  const paper = paperOn((await agent.get(invoice)).text);
  expect(paper).toContain('£624.00 24 guests at £26.00 each £624.00 in all');
  expect(paper).toContain('£156.00 paid by then, thank you £468.00 still to be paid');
  expect(paper).toContain('for Colleagues of Gwen Abery');
  const receipt = String((await agent.post(`${payment}/receipt`)).headers.location);
  expect(receipt).toBe('/papers/receipt/1');
  expect((await agent.post(`${payment}/receipt`)).headers.location).toBe(receipt);
  expect(paperOn((await agent.get(receipt)).text)).toContain('£156.00 received, thank you');
  await press(agent, page, 'open');
  await pay(agent, '10', 'more');
  const none = await agent.post('/payments/retirement-lunch-payment-2/receipt');
  expect(none.status).toBe(409);
  expect(none.text).toContain('No quote of this event is accepted');
});

test('an invoice is taken back by one credit, and the next has the next number', async () => {
  await accepted(agent);
  await agent.post(`${lunch}/invoices`);
  const credit = String((await agent.post('/papers/invoice/1/credit')).headers.location);
  expect(credit).toBe('/papers/credit/1');
  expect((await agent.post('/papers/invoice/1/credit')).headers.location).toBe(credit);
  expect(paperOn((await agent.get(credit)).text)).toMatch(/−£624\.00 taken back.*Takes back invoice 1/);
  expect(paperOn((await agent.get('/papers/invoice/1')).text)).toContain('Taken back by credit 1.');
  expect((await agent.post(`${lunch}/invoices`)).headers.location).toBe('/papers/invoice/2');
});

test('an invoice of a quote that was replaced by a dearer one is named, until a credit takes it back', async () => {
  await accepted(agent);
  await agent.post(`${lunch}/invoices`);
  const second = await draft(agent);
  const form = fieldsOf((await agent.get(`${second}/edit`)).text, `${second}/edit`);
  await agent.post(`${second}/edit`, { ...form, 'options[0].lines[0].each': '30' });
  for (const step of ['issue', 'accept']) await press(agent, second, step);
  const said = 'Invoice 1 is for £624.00, quote 2 comes to £720.00';
  expect(await words(list)).toContain(said);
  await agent.post('/papers/invoice/1/credit');
  expect(await words(list)).not.toContain(said);
});

test('pressed by several at once, papers are numbered without a gap', async () => {
  await accepted(agent);
  for (let known = 0; known < 6; known++) await pay(agent, String(known + 1));
  const keys = [1, 2, 3, 4, 5, 6].map((n) => `${payment}${n > 1 ? `-${n}` : ''}/receipt`);
  await Promise.all([...keys, ...keys].map((address) => agent.post(address)));
  expect((await numberedPapers(agent.db)).map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
});

test('an invoice stays as it was issued when the quote is replaced and the kitchen renamed', async () => {
  await accepted(agent);
  await agent.post(`${lunch}/invoices`);
  const before = paperOn((await agent.get('/papers/invoice/1')).text);
  await agent.db.updateTable('kitchen').set({ name: 'Another Yard', currency: 'JPY' }).execute();
  await issued(agent);
  expect(paperOn((await agent.get('/papers/invoice/1')).text)).toBe(before);
  await agent.db.updateTable('kitchen').set({ name: 'Tansy Yard Kitchen', currency: 'GBP' }).execute();
});
