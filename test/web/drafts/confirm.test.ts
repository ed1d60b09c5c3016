import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { readDraft } from '../../../src/store/drafts.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';
import { plain, traybake } from './texts.js';

let agent: Agent;
let address: string;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
beforeEach(async () => {
  address = String((await agent.post('/recipes/read', { text: traybake })).headers.location);
});
afterAll(() => agent.close());

type Sent = Record<string, string | string[]>;
const formAt = async (): Promise<Sent> => fieldsOf((await agent.get(address)).text, address);
const press = async (what: string, typed: Sent = {}) =>
  agent.post(address, { ...(await formAt()), ...typed, do: what });
const draft = () => readDraft(agent.db, Number(address.split('/').at(-1)));
const pageNow = async () => (await agent.get(address)).text;

test('a line the kitchen knows needs nothing; others say why they are unsure', async () => {
  const form = await formAt();
  expect([form['lines[0].item'], form['lines[3].amount'], form['lines[3].unit']]).toEqual([
    'Olive oil',
    '2–3',
    'clove',
  ]);
  const page = await pageNow();
  expect(page).toContain('only the order of the words says so');
  expect(page).toContain('This kitchen has no “chickpeas”; it has “Chickpeas, tinned”.');
  expect(page).not.toContain('value="confirm:lines:0" data-focus');
});

test('saving while something is unsure is refused, leads to it, and loses nothing', async () => {
  const form = { ...(await formAt()), note: 'From the blue notebook' };
  const sent = await agent.post(address, form);
  expect(sent.status).toBe(422);
  expect(sent.text).toContain('Everything you typed is kept.');
  expect(sent.text).toContain('href="#f-lines-2-item"');
  expect(sent.text).toContain('There is no ingredient or recipe called squash yet');
  expect(sent.text).toContain('From the blue notebook');
  expect((await draft())?.form).toMatchObject({ note: 'From the blue notebook' });
  expect(await read(agent.db, 'recipe', 'chicken-traybake')).toBeUndefined();
});

test('a button settles its line, keeps the draft, and goes on to the next unsure one', async () => {
  const sent = await press('new:2');
  expect([sent.status, sent.headers.location]).toEqual([303, `${address}?after=lines:2`]);
  const page = await agent.get(`${address}?after=lines:2`);
  expect(page.text).toMatch(/value="new:4" data-focus/);
  expect(page.text).toContain('New ingredient “squash”, made when you save.');
  expect((await draft())?.revision).toBe(2);
});

test('to htmx the same answers with the form alone', async () => {
  const answer = await agent.post(address, { ...(await formAt()), do: 'new:2' }).set('hx-request', 'true');
  expect(answer.status).toBe(200);
  expect(answer.text).toMatch(/^\s*<form id="draft"/);
});

test('confirming a food that the kitchen has not is refused at the line', async () => {
  const sent = await press('confirm:lines:2', { 'lines[2].item': 'sqaush' });
  expect(sent.status).toBe(422);
  expect(sent.text).toContain('There is no ingredient or recipe called sqaush yet');
  expect(sent.text).toContain('value="sqaush"');
});

test('two foods in one line become two lines', async () => {
  await press('split:5');
  const form = await formAt();
  expect([form['lines[5].item'], form['lines[6].item']]).toEqual(
    ['salt', 'pepper'].map((name) => expect.stringMatching(new RegExp(name, 'i'))),
  );
  expect(await pageNow()).not.toContain('may name more than one food');
});

test('tins may be written as what they hold in all', async () => {
  const asked = await press('use:1:Chickpeas, tinned');
  expect(asked.headers.location).toBe(`${address}?after=lines:0`);
  expect(await pageNow()).toContain('this kitchen knows 240 g and goes by that');
  await press('total:1');
  const form = await formAt();
  expect([form['lines[1].amount'], form['lines[1].unit'], form['lines[1].holds']]).toEqual(['800', 'g', '']);
});

test('a line is left out and put back; one is added by hand', async () => {
  await press('out:lines:4');
  expect(await pageNow()).toContain('Left out');
  await press('reopen:lines:4');
  expect(await pageNow()).not.toContain('Left out');
  await press('add:lines');
  expect(await pageNow()).toContain('added by hand');
});

test('a step without minutes asks how long, and may be left open', async () => {
  const refused = await press('confirm:steps:1');
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('Say how long it takes, such as 35 or 1 h 20, or leave the time open.');
  await press('untimed:1');
  expect(await pageNow()).toContain('How long it takes is left open.');
});

test('a draft that somebody else saved is not overwritten unsaid, and what was typed stays', async () => {
  const mine = await formAt();
  await press('new:2');
  const sent = await agent.post(address, { ...mine, name: 'My traybake', do: 'new:4' });
  expect(sent.status).toBe(409);
  expect(sent.text).toContain('changed this draft at Wed 14 Oct, 10:20, after you opened it.');
  expect(sent.text).toContain('value="My traybake"');
  expect((await draft())?.name).toBe('Chicken traybake');
  const again = fieldsOf(sent.text, address);
  expect((await agent.post(address, { ...again, do: 'new:4' })).status).toBe(303);
  expect((await draft())?.name).toBe('My traybake');
});

test('a plain recipe whose every line is known is saved at once', async () => {
  address = String((await agent.post('/recipes/read', { text: plain })).headers.location);
  const sent = await agent.post(address, await formAt());
  expect(sent.headers.location).toMatch(/^\/recipes\/garlic-oil\?saved=\d+$/);
  const made = (await read(agent.db, 'recipe', 'garlic-oil'))?.doc;
  expect(made?.lines.map(({ amount, unit }) => `${amount} ${unit}`)).toEqual(['500 ml', '3 clove']);
  expect(made?.steps[0]).toMatchObject({ minutes: 20, rings: 1 });
});
