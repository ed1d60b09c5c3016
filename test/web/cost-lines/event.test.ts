import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

const at = '/events/birthday-tea/costs';
let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.kitchen.costs = [
    { key: 'c1', name: 'Sundries', kind: 'sundries', by: { aGuest: 45 }, note: '' },
    { key: 'c2', name: 'Hall', kind: 'venue', by: { fixed: null }, note: 'ask Wren' },
  ];
  for (const event of kitchen.events) event.costs = [];
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

const form = async () => fieldsOf((await agent.get(at)).text, at);
const costs = async () => (await read(agent.db, 'event', 'birthday-tea'))!.doc.costs;
const row = (i: number, fields: Record<string, string>) =>
  Object.fromEntries(Object.entries(fields).map(([name, value]) => [`costs[${i}].${name}`, value]));

test('each way a cost goes by is read as it is typed', async () => {
  const saved = await agent.post(at, {
    ...(await form()),
    ...row(0, {
      name: 'Serving',
      kind: 'hands',
      by: 'hours',
      hours: '4:30',
      people: '2',
      guestsEach: '25',
      rate: '£12.50',
    }),
    ...row(1, {
      name: 'Cooking',
      kind: 'hands',
      by: 'hours',
      worked: 'cooking',
      people: '1',
      person: '',
      rate: '',
    }),
    ...row(2, { name: 'Glasses', kind: 'hire', by: 'step', sum: '9', holds: '36', each: '2', spare: '10 %' }),
    ...row(3, { name: 'Napkins', kind: 'sundries', by: 'aGuest', sum: '0.20' }),
    ...row(4, { name: 'Hall', kind: 'venue', by: 'fixed', sum: '', note: 'ask <b>Wren</b>' }),
    ...row(5, { name: 'Overhead', kind: 'overhead', by: 'percent', percent: '12.5', of: 'costs' }),
    ...row(6, { name: '', kind: 'hands', by: 'fixed' }),
  });
  expect([saved.status, saved.headers.location]).toEqual([
    303,
    expect.stringMatching(/^\/events\/birthday-tea\/costing\?saved=\d+$/),
  ]);
  expect((await costs()).map(({ by }) => by)).toEqual([
    { rate: 1250, person: null, hours: '4.5', people: 2, guestsEach: 25 },
    { rate: null, person: null, hours: 'cooking', people: 1, guestsEach: null },
    { step: 900, holds: 36, each: '2', spare: '10' },
    { aGuest: 20 },
    { fixed: null },
    { percent: '12.5', of: 'costs' },
  ]);
  expect((await agent.get(at)).text).toContain('value="ask &lt;b&gt;Wren&lt;/b&gt;"');
});

test('a form sent as it was drawn changes nothing, and a row moves and goes with its button', async () => {
  const before = await costs();
  expect((await agent.post(at, await form())).headers.location).toBe('/events/birthday-tea/costing');
  expect(await costs()).toEqual(before);
  const moved = await agent.post(at, { ...(await form()), do: 'up:costs:1' });
  expect(moved.text.indexOf('value="Cooking"')).toBeLessThan(moved.text.indexOf('value="Serving"'));
  const out = await agent.post(at, { ...(await form()), do: 'out:costs:0' });
  expect(out.text).not.toContain('value="Serving"');
  const more = fieldsOf((await agent.post(at, { ...(await form()), do: 'add:costs' })).text, at);
  expect(more['costs[6].name']).toBe('');
  expect(await costs()).toEqual(before);
});

test('the kitchen’s usual lines are added, but for one that stands there by its name', async () => {
  const { text } = await agent.post(at, { ...(await form()), do: 'usual' });
  const sent = fieldsOf(text, at);
  expect(sent['costs[6].name']).toBe('Sundries');
  expect(sent['costs[7].name']).toBeUndefined();
  expect(new Set(Array.from({ length: 7 }, (_, i) => sent[`costs[${i}].key`])).size).toBe(7);
});

test('what can’t be read is named with what to type, and all that was typed stays', async () => {
  const typed = {
    ...(await form()),
    ...row(0, { hours: 'all <day>', rate: 'lots' }),
    ...row(2, { holds: '0' }),
    ...row(3, { name: '' }),
    ...row(5, { percent: 'some' }),
  };
  const { status, text } = await agent.post(at, typed);
  expect(status).toBe(422);
  expect(text).toContain('value="all &lt;day&gt;"');
  for (const sentence of [
    'Enter the hours in figures, such as 4, 4.5 or 4:30. You entered all &lt;day&gt;.',
    'Enter a price in figures, such as 3.40.',
    'How many one is enough for must be between 1 and 100000. You entered 0.',
    'Say what this cost is, such as crockery hire.',
    'Enter the share as a per cent, such as 10. You entered some.',
  ])
    expect(text).toContain(sentence);
});

test('the sentence below says what the lines typed would make of the cost', async () => {
  const typed = { ...(await form()), ...row(3, { sum: '1.20' }) };
  const { text } = await agent.post(`${at}/preview`, typed).set('hx-request', 'true');
  expect(text).toMatch(/^<hx-partial hx-target="#cost-ripple">/);
  expect(text).toMatch(/it costs £[\d.]+ so far, .* and would cost £[\d.]+ so far/);
  expect((await agent.post(`${at}/preview`, typed)).text).toContain('<h1>');
});

test('another line that others changed meanwhile is kept beside one’s own', async () => {
  const old = await form();
  await agent.post(at, { ...old, ...row(2, { holds: '40' }) });
  const saved = await agent.post(at, { ...old, ...row(3, { sum: '0.25' }) });
  expect(saved.headers.location).toMatch(/saved=\d+&merged=1$/);
  expect((await costs()).slice(2, 4).map(({ by }) => by)).toEqual([
    { step: 900, holds: 40, each: '2', spare: '10' },
    { aGuest: 25 },
  ]);
});

test('an older form of lines that others changed meanwhile is merged by hand, and no event is not found', async () => {
  const old = await form();
  await agent.post(at, { ...old, ...row(3, { sum: '0.30' }) });
  const clash = await agent.post(at, { ...old, ...row(3, { sum: '0.40' }) });
  expect(clash.status).toBe(409);
  expect(clash.text).toContain('Cost Napkins');
  expect(clash.text).toMatch(/a guest £0\.30[\s\S]*a guest £0\.40|a guest £0\.40[\s\S]*a guest £0\.30/);
  expect((await costs())[3]!.by).toEqual({ aGuest: 30 });
  expect((await agent.get('/events/no-such/costs')).status).toBe(404);
});
