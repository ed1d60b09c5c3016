import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeAll(async () => {
  const book = exampleKitchen();
  book.kitchen.marginFloor = '30';
  book.kitchen.tax = null;
  const lost = book.ingredients.find(({ key }) => key === 'leek')!;
  Object.assign(lost, { name: 'Leek <i>', packs: [] });
  book.ingredients.find(({ key }) => key === 'cooking-apple')!.packs[0]!.prices.at(-1)!.guess = true;
  agent = await agentOn(book);
});
afterAll(() => agent.close());

test('asks for a menu and guests, and then says a price at the kitchen’s floor', async () => {
  const asked = await agent.get('/price');
  expect(asked.status).toBe(200);
  expect(asked.text).toContain('<option value="choir-supper"');
  expect(fieldsOf(asked.text, '/price').margin).toBe('30');
  expect(asked.text).not.toContain('a guest costs');
  const { text } = await agent.get('/price?menu=choir-supper&guests=45&margin=');
  expect(text).toMatch(/<p class="minute-price"><b>£[\d.]+<\/b> a guest/);
  expect(text).toMatch(/A guest costs you <b>£[\d.]+<\/b>/);
});

test('a guess is marked as one, with each price that is guessed', async () => {
  const { text } = await agent.get('/price?menu=choir-supper&guests=45');
  expect(text).toContain('A guess, until real prices stand: 1 price is guessed.');
  expect(text).toContain('<b class="guess">a guess</b>');
  expect(text).toMatch(
    /The price of Cooking apple is a guess of .*<a href="\/ingredients\/cooking-apple\/packs/,
  );
});

test('a missing price is named and escaped, and the price is the least it can be', async () => {
  const { text } = await agent.get('/price?menu=birthday-tea&guests=20');
  expect(text).toContain('A guess, and more will come to it: what is named below has no price yet.');
  expect(text).toMatch(/<span class="second">at least<\/span> <b>£/);
  expect(text).toContain('No price for Leek &lt;i&gt;.');
  expect(text).toMatch(/A guest costs you <b>£[\d.]+ so far<\/b>/);
});

test('what can’t be read is asked about, whole or as a part; no menu is not found', async () => {
  const { status, text } = await agent.get('/price?menu=birthday-tea&guests=a+few&margin=120');
  expect(status).toBe(422);
  expect(text).toContain('Enter the number of guests in figures, such as 40.');
  expect(text).toContain('The margin must be between 0 and 99. You entered 120. Did you mean 12?');
  expect(text).toContain('value="a few"');
  const part = await agent.get('/price?menu=birthday-tea&guests=a+few').set('hx-request', 'true');
  expect(part.text.trim()).toMatch(/^<form id="minute"/);
  expect((await agent.get('/price?menu=no-such&guests=4')).status).toBe(404);
});

test('it becomes an enquiry with its guests, its costs and the margin asked for', async () => {
  const { text } = await agent.get('/price?menu=choir-supper&guests=45&margin=40');
  const [, link = ''] = /href="(\/events\/choir-supper\/copy\?[^"]+)">Make it an enquiry/.exec(text) ?? [];
  const form = await agent.get(link.replaceAll('&amp;', '&'));
  const at = '/events/choir-supper/copy';
  const asked = { ...fieldsOf(form.text, at), name: 'Minute party', date: 'Sat 12 Dec', time: '' };
  const seen = await agent.post(at, asked);
  const saved = await agent.post(at, fieldsOf(seen.text, at));
  expect(saved.headers.location).toMatch(/^\/events\/minute-party\?saved=/);
  const made = (await read(agent.db, 'event', 'minute-party'))!.doc;
  const from = (await read(agent.db, 'event', 'choir-supper'))!.doc;
  expect(made.groups.reduce((all, { guests }) => all + guests, 0)).toBe(45);
  expect([made.state, made.price.by, made.costs]).toEqual(['enquiry', { margin: '40' }, from.costs]);
});

test('without any menu it says what to do', async () => {
  const none = await agentOn({ ...exampleKitchen(), events: [] });
  expect((await none.get('/price')).text).toContain('There is no menu to go by yet.');
  await none.close();
});
