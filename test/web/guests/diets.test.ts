import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Event } from '../../../src/core/facts/event.js';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeEach(async () => {
  agent = await agentOn(exampleKitchen());
});
afterEach(() => agent.close());
const at = '/events/birthday-tea/guests/diets';
type Sent = Record<string, string | string[]>;
const form = async (): Promise<Sent> => fieldsOf((await agent.get(at)).text, at);
const stored = async (): Promise<Event> => (await read(agent.db, 'event', 'birthday-tea'))!.doc;

test('the page shows who is listed and works out who has not answered', async () => {
  const { text, status } = await agent.get(at);
  expect(status).toBe(200);
  expect(text).toMatch(/Not answered<\/dt><dd class="loud">6</);
  expect(text).toContain('<b>Diets:</b> no milk, no eggs');
  expect((await agent.get('/events/no-such/guests/diets')).status).toBe(404);
});

test('saving sends back a receipt that can be undone, with no diet in the address', async () => {
  const sent = { ...(await form()), eatsAll: '31', 'guests[1].diets': ['vegan', 'no-nuts'] };
  const answer = await agent.post(at, sent);
  expect(answer.status).toBe(303);
  expect(answer.headers.location).toMatch(/^\/events\/birthday-tea\/guests\/diets\?saved=\d+$/);
  expect((await stored()).guests[1]).toMatchObject({ name: 'June Askerby', diets: ['vegan', 'no-nuts'] });
  expect((await stored()).eatsAll).toBe(31);
  const { text } = await agent.get(answer.headers.location!);
  expect(text).toMatch(/Not answered<\/dt><dd>0</);
  const change = /action="(\/undo\/\d+)"/.exec(text)![1]!;
  expect((await agent.post(change)).status).toBe(303);
  expect(await stored()).toMatchObject({ eatsAll: 25 });
  expect((await stored()).guests[1]!.diets).toEqual(['vegan']);
});

test('a diet that is not kept any more is never dropped unsaid: its guest would eat everything', async () => {
  const before = await stored();
  const refused = await agent.post(at, { ...(await form()), 'guests[1].diets': ['taken-out'] });
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('A diet ticked here is not kept in the kitchen any more.');
  expect(refused.text).toContain('href="#f-guests-1-diets"');
  expect(refused.text).toContain('id="f-guests-1-diets"');
  expect(await stored()).toEqual(before);
});

test('a guest said to be a child is one of the children', async () => {
  const added = await agent.post(at, { ...(await form()), new: 'Bea, child, gluten free', do: 'add:guests' });
  const rows = fieldsOf(added.text, at);
  expect(rows).toMatchObject({
    'guests[4].name': 'Bea',
    'guests[4].group': 'children',
    'guests[4].other': '',
  });
  expect(added.text).toContain('<b>Diets:</b> coeliac, no gluten');
});

test('a guest is added in a line of words, by name or by number, and taken out, without a script', async () => {
  const added = await agent.post(at, { ...(await form()), new: '3 vegetarians, no nuts', do: 'add:guests' });
  expect(added.status).toBe(200);
  expect(added.text).toContain('<b>Diets:</b> vegetarian, no nuts');
  const next = { ...fieldsOf(added.text, at), do: 'out:guests:0' };
  const out = await agent.post(at, next);
  expect(out.text).not.toContain('name="guests[4].name"');
  const saved = await agent.post(at, { ...fieldsOf(out.text, at), new: 'Bo <b>Reed</b>, vegan' });
  expect(saved.status).toBe(303);
  const { guests } = await stored();
  expect(guests.map(({ name, count, diets }) => [name, count, diets])).toEqual([
    ['June Askerby', 1, ['vegan']],
    ['Milo Varley', 1, ['no-milk', 'no-eggs']],
    ['Dot Varley', 1, []],
    ['', 3, ['vegetarian', 'no-nuts']],
    ['Bo <b>Reed</b>', 1, ['vegan']],
  ]);
  const { text } = await agent.get(at);
  expect(text).not.toContain('<b>Reed');
  expect(text).toContain('Bo &lt;b&gt;Reed');
});

test('what can’t be read keeps all that was typed and says what to type', async () => {
  const sent = {
    ...(await form()),
    eatsAll: 'most of them',
    'guests[1].count': '1.5',
    'guests[1].diets': ['coeliac'],
    'guests[3].other': 'very soft',
  };
  const { status, text } = await agent.post(at, sent);
  expect(status).toBe(422);
  expect(text).toContain('Everything you typed is kept.');
  expect(text).toContain('How many guests must be a whole number. You entered 1.5.');
  expect(text).toContain('value="most of them"');
  expect(text).toContain('value="1.5"');
  expect(text).toContain('value="very soft"');
  expect(text).toContain('<b>Diets:</b> coeliac, no gluten');
  expect((await stored()).eatsAll).toBe(25);
});

test('a row with a number alone is asked who it is; an empty one is left out', async () => {
  const added = await agent.post(at, { ...(await form()), do: 'add:guests' });
  const empty = fieldsOf(added.text, at);
  const { status, text } = await agent.post(at, { ...empty, 'guests[4].count': '4' });
  expect(status).toBe(422);
  expect(text).toContain('Enter a name or tick a diet.');
  expect((await agent.post(at, empty)).status).toBe(303);
  expect((await stored()).guests).toHaveLength(4);
});

test('not heard from counts, and so do more answers than guests', async () => {
  await agent.post(at, { ...(await form()), 'guests[1].answered': 'no', eatsAll: '40' });
  expect((await stored()).guests[1]!.answered).toBe(false);
  expect((await agent.get(at)).text).toContain('9 more answers than guests: one of these figures is wrong.');
});

test('two at once: other lines are joined, the same line is shown to choose', async () => {
  const mine = await form();
  const theirs = await form();
  expect((await agent.post(at, { ...theirs, eatsAll: '20' })).status).toBe(303);
  const joined = await agent.post(at, { ...mine, 'guests[1].name': 'June Ash' });
  expect(joined.headers.location).toContain('&merged=');
  expect(await stored()).toMatchObject({ eatsAll: 20 });
  const clash = await agent.post(at, { ...mine, eatsAll: '22' });
  expect(clash.status).toBe(409);
  expect(clash.text).toContain('while you had it open');
});

test('to htmx it answers with the form alone, and leads on when it is saved', async () => {
  const part = (sent: Sent) => agent.post(at, sent).set('hx-request', 'true');
  const wrong = await part({ ...(await form()), eatsAll: 'x' });
  expect(wrong.status).toBe(422);
  expect(wrong.text).not.toContain('<!doctype');
  expect(wrong.text.trimStart()).toMatch(/^<form id="diets"/);
  const saved = await part({ ...(await form()), eatsAll: '26' });
  expect(saved.headers['hx-redirect']).toMatch(/\?saved=\d+$/);
});

test('who goes without is said as soon as it is saved, with the way to a menu that does', async () => {
  const wayOut = '/events/birthday-tea/way-out';
  expect((await agent.get(at)).text).not.toContain(wayOut);
  const { headers } = await agent.post(at, { ...(await form()), new: 'Bo <b>Reed</b>, coeliac, no sesame' });
  const { text } = await agent.get(headers.location!);
  expect(text).toMatch(/Bo &lt;b&gt;Reed&lt;\/b&gt; \(coeliac, no gluten, .*nothing to eat in tea/);
  expect(text).toContain(`href="${wayOut}"`);
});
