import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';
import { clear, draft, list, paperOn, press, priced } from './quoted.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(priced());
});
beforeEach(() => clear(agent));
afterAll(() => agent.close());

const formOf = async (page: string) => fieldsOf((await agent.get(`${page}/edit`)).text, `${page}/edit`);

test('a draft begins with the menu, the price of every guest and the kitchen’s terms, and says it is none yet', async () => {
  expect((await agent.get(list)).text).toContain('No quote yet.');
  const page = await draft(agent);
  const { text, status } = await agent.get(page);
  expect(status).toBe(200);
  const paper = paperOn(text);
  expect(paper).toContain('Quote 1 draft, not issued');
  expect(paper).toContain('£624.00 24 guests at £26.00 each');
  expect(paper).toContain('£156.00 deposit, one quarter, due on acceptance');
  expect(paper).toContain('£468.00 balance, due by Thursday 3 December 2026');
  expect(paper).toContain('From 23 to 24 guests');
  expect(text).toContain('<button class="primary">Issue quote 1</button>');
});

test('it is put into the client’s words; what the form does not show stays as it was', async () => {
  const page = await draft(agent);
  const form = await formOf(page);
  const menu = 'To begin\nMackerel on toast\n\nTo finish\nPosset & shortbread';
  const saved = await agent.post(`${page}/edit`, {
    ...form,
    title: 'Lunch for Gwen',
    'options[0].menu': menu,
    'options[0].lines[0].count': '20',
    'options[0].lines[1].count': '4',
    'options[0].lines[1].words': 'children to 12',
    'options[0].lines[1].each': '13',
    'options[0].discount': '10 %',
    'options[0].discountFor': 'for a good neighbour',
  });
  expect(saved.status).toBe(303);
  expect(saved.headers.location).toBe(page);
  const paper = paperOn((await agent.get(page)).text);
  expect(paper).toContain('Lunch for Gwen');
  expect(paper).toContain('To finish Posset &amp; shortbread');
  expect(paper).toContain('£520.00 20 guests at £26.00 each £52.00 4 children to 12 at £13.00 each');
  expect(paper).toContain('−£57.20 for a good neighbour £514.80 in all for 24 guests');
  expect((await formOf(page))['options[0].menu']).toBe(menu);
});

test('two menus to choose from each have their price; one without a price or name is not issued', async () => {
  const page = await draft(agent);
  const more = await agent.post(`${page}/edit`, { ...(await formOf(page)), do: 'add:options' });
  expect(more.text).toContain('Take menu 2 out');
  const form = fieldsOf(more.text, `${page}/edit`);
  await agent.post(`${page}/edit`, { ...form, 'options[0].name': 'With fish', 'options[1].name': 'Without' });
  const refused = await press(agent, page, 'issue');
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('Without has no price yet');
  await agent.post(`${page}/edit`, {
    ...(await formOf(page)),
    'options[0].lines[0].count': '',
    'options[0].lines[0].words': '',
    'options[0].lines[0].each': '',
  });
  expect((await agent.get(page)).text).toMatch(/Price without tax<\/t[hd]>\s*<td[^>]*>no price yet</);
  await agent.post(`${page}/edit`, {
    ...(await formOf(page)),
    'options[0].lines[0].count': '24',
    'options[0].lines[0].words': 'guests',
    'options[0].lines[0].each': '26',
    'options[1].menu': 'Main\nLentil pie',
    'options[1].lines[0].count': '24',
    'options[1].lines[0].words': 'guests',
    'options[1].lines[0].each': '21.50',
  });
  const paper = paperOn((await agent.get(page)).text);
  expect(paper).toMatch(
    /With fish .*£624\.00 24 guests.* Without Main Lentil pie £516\.00 24 guests at £21\.50 each/,
  );
  expect((await press(agent, page, 'issue')).status).toBe(303);
  expect((await press(agent, page, 'accept')).text).toContain('Choose the menu that was accepted.');
  await press(agent, page, 'accept', { taken: 'o1' });
  expect(paperOn((await agent.get(page)).text)).not.toContain('With fish');
});

test('what cannot be read is said at its field, and all that was typed stays', async () => {
  const page = await draft(agent);
  const typed = {
    title: '<script>alert(1)</script>',
    guests: 'many',
    'options[0].lines[0].each': 'a lot',
    allergies: '',
    when: 'the day before',
    'dues[0].percent': '125',
  };
  const wrong = await agent.post(`${page}/edit`, { ...(await formOf(page)), ...typed });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('Five answers need you.');
  for (const said of ['Enter the number of guests', 'Enter a price in figures', 'Did you mean 12.5?'])
    expect(wrong.text).toContain(said);
  expect(wrong.text).not.toContain('<script>alert');
  expect(fieldsOf(wrong.text, `${page}/edit`)).toMatchObject({ ...typed, guests: 'many' });
  const dues = await agent.post(`${page}/edit`, { ...(await formOf(page)), 'dues[1].percent': '50' });
  expect(dues.text).toContain('The shares leave something over');
  const tiers = { 'options[0].tiers[0].from': '30', 'options[0].tiers[0].each': '24' };
  const twice = { ...tiers, 'options[0].tiers[1].from': '30', 'options[0].tiers[1].each': '22' };
  const both = await agent.post(`${page}/edit`, { ...(await formOf(page)), ...twice });
  expect(both.status).toBe(422);
  expect(both.text).toContain('There are two prices from 30 guests: keep one.');
  expect(fieldsOf(both.text, `${page}/edit`)).toMatchObject(twice);
});

test('a script in the party’s words is text on the quote', async () => {
  const page = await draft(agent);
  const form = { ...(await formOf(page)), title: '<script>alert(1)</script>', client: '<b>Gwen' };
  expect((await agent.post(`${page}/edit`, form)).status).toBe(303);
  const { text } = await agent.get(page);
  expect(text).toContain('&lt;script&gt;alert(1)');
  expect(text).not.toMatch(/<script>alert|<b>Gwen/);
});

test('a draft that two have open loses nothing: both are named, what only one changed is taken over', async () => {
  const page = await draft(agent);
  const [mine, theirs] = [await formOf(page), await formOf(page)];
  const told = { ...theirs, title: 'Gwen’s lunch', place: 'in the orchard' };
  expect((await agent.post(`${page}/edit`, told)).status).toBe(303);
  const late = await agent.post(`${page}/edit`, { ...mine, title: 'Farewell lunch', client: 'The team' });
  expect(late.status).toBe(409);
  expect(late.text).toMatch(
    /the party<\/th><td>Retirement lunch<\/td><td>Farewell lunch<\/td><td>Gwen’s lunch</,
  );
  expect(late.text).toMatch(/where<\/th><td>nothing<\/td><td>as it was<\/td><td>in the orchard</);
  const both = fieldsOf(late.text, `${page}/edit`);
  expect(both).toMatchObject({ title: 'Farewell lunch', client: 'The team', place: 'in the orchard' });
  expect(paperOn((await agent.get(page)).text)).toContain('Gwen’s lunch');
  expect((await agent.post(`${page}/edit`, both)).status).toBe(303);
  expect(paperOn((await agent.get(page)).text)).toMatch(/Farewell lunch for The team.* in the orchard/);
});

test('a draft is withdrawn in a press, and brought back in another', async () => {
  const page = await draft(agent);
  const gone = await press(agent, page, 'withdraw');
  expect((await agent.get(page)).status).toBe(404);
  const { text } = await agent.get(String(gone.headers.location));
  expect(text).toContain('The draft is off the list.');
  expect((await agent.post(`${page}/back`)).headers.location).toBe(page);
  expect((await agent.get(page)).status).toBe(200);
});

test('what is not there is not found', async () => {
  for (const address of [
    '/quotes/none',
    '/quotes/none/edit',
    '/events/none/quotes',
    '/papers/invoice/9',
    '/papers/bill/1',
  ])
    expect((await agent.get(address)).status, address).toBe(404);
  for (const address of [
    '/quotes/none/edit',
    '/quotes/none/issue',
    '/quotes/none/accept',
    '/quotes/none/decline',
  ])
    expect((await agent.post(address, { revision: '1' })).status, address).toBe(404);
  for (const address of [
    '/quotes/none/open',
    '/quotes/none/withdraw',
    '/quotes/none/back',
    '/events/none/quotes',
  ])
    expect((await agent.post(address, { revision: '1' })).status, address).toBe(404);
  for (const address of ['/events/none/payments', '/events/none/invoices', '/payments/none/strike'])
    expect((await agent.post(address)).status, address).toBe(404);
  for (const address of ['/payments/none/receipt', '/papers/invoice/9/credit', '/papers/receipt/9/credit'])
    expect((await agent.post(address)).status, address).toBe(404);
});
