import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Agent, agentOn } from '../agent.js';
import { asPart, fieldsOf, stored } from '../events/page.js';
import { kitchenWithTeas } from './held.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(kitchenWithTeas());
});
afterAll(() => agent.close());

const at = '/events/tea-2026-10-03/afterwards';
const formAt = async (address = at) => fieldsOf((await agent.get(address)).text);
const noted = async (key = 'tea-2026-10-03') => (await stored(agent, key))?.afterwards;

test('a party that is over asks what it came to, beside what was planned; one to come does not', async () => {
  const { text } = await agent.get(at);
  expect(text).toContain('12 h, £156.00');
  expect(text).toMatch(/38<\/b><\/span><\/div><div class="line"><input type="hidden" name="left\[1\]/);
  expect((await agent.get('/events/tea-2026-10-03')).text).toContain(`href="${at}"`);
  expect((await agent.get('/events/choir-supper/afterwards')).text).toContain('This party is not over');
  expect((await agent.post('/events/choir-supper/afterwards', {})).status).toBe(303);
  expect((await agent.get('/events/choir-supper')).text).not.toContain('note what it came to');
  expect((await agent.get('/events/gone/afterwards')).status).toBe(404);
});

test('what cannot be read is asked for again and everything typed stays', async () => {
  const form = await formAt();
  for (const [change, sentence] of [
    [{ 'came[0].guests': 'many' }, 'Enter the number who came in figures'],
    [{ 'left[1].portions': 'some' }, 'Enter the quantity in figures'],
    [{ 'left[1].portions': '39' }, 'can be left than the 38 that were made'],
    [{ 'spent[0].hours': 'long' }, 'Enter the hours in figures'],
    [{ 'spent[1].paid': '12.345' }, 'GBP has 2 figures after the point'],
    [{ 'bought[0].amount': '3' }, 'Enter the unit too'],
    [{ 'also[0].name': 'Brown alle', 'also[0].paid': '2' }, 'Did you mean Brown ale'],
    [{ 'also[0].name': '<b>Ghost</b>' }, 'No ingredient is called &lt;b&gt;Ghost'],
    [{ 'also[0].paid': '2' }, 'Say what it was'],
    [{ note: 'x'.repeat(2001) }, 'A note has at most 2000 letters'],
  ] as const) {
    const asked = { ...form, ...change };
    const { status, text } = await agent.post(at, asked);
    expect(status, sentence).toBe(422);
    expect(text).toContain(sentence);
    expect(text).not.toContain('<b>Ghost');
    expect(fieldsOf(text)).toMatchObject(asked);
  }
  expect(await noted()).toBeNull();
});

test('noted, it stands beside the plan in money and per cent; an empty field stays not known', async () => {
  const form = {
    ...(await formAt()),
    'came[0].guests': '29',
    'left[1].portions': '1 1/2',
    'spent[0].hours': '13:30',
    'spent[0].paid': '175.50',
    'bought[0].amount': '2.5 kg',
    'bought[0].paid': '0',
    'also[0].name': ' brown ALE',
    'also[0].paid': '1.20',
    note: 'Bake fewer <i>',
  };
  const saved = await agent.post(at, form);
  expect(saved.status).toBe(303);
  expect(saved.headers.location).toMatch(/^\/events\/tea-2026-10-03\/beside-real\?saved=\d+$/);
  expect(await noted()).toMatchObject({
    came: [{ group: 'adults', guests: 29 }],
    spent: [{ line: 'serving', hours: '13.5', paid: 17_550 }],
    note: 'Bake fewer <i>',
  });
  expect((await noted())?.left).toEqual([{ dish: expect.any(String), portions: '1.5' }]);
  const { text } = await agent.get('/events/tea-2026-10-03/beside-real');
  expect(text).toContain('£19.50 more');
  expect(text).toContain('up 12.5%');
  expect(text).toContain('12 h planned, 13.5 h worked');
  expect(text).toContain('not known yet as it really was');
  expect(text).toContain('Bake fewer &lt;i&gt;');
  const again = await formAt();
  expect(again['left[1].portions']).toBe('1.5');
  expect((await agent.post(at, again)).headers.location).not.toContain('saved=');
});

test('two who note different things are joined; the same one is asked; a save is taken back', async () => {
  const form = await formAt();
  await agent.post(at, { ...form, 'spent[1].paid': '80' });
  expect((await agent.post(at, { ...form, 'came[1].guests': '7' })).status).toBe(303);
  expect((await noted())?.spent).toHaveLength(2);
  expect((await agent.post(at, { ...form, 'spent[1].paid': '90' })).status).toBe(409);
  const undo = (await agent.get('/history/event/tea-2026-10-03')).text.match(/action="(\/undo\/\d+)"/)![1]!;
  await agent.post(undo);
  expect((await noted())?.came).toHaveLength(1);
});

test('a row is added without saving, also for a part of the page; all emptied is nothing noted', async () => {
  const form = await formAt();
  const part = await asPart(agent.post(at, { ...form, do: 'add:also' }));
  expect(part.text).not.toContain('<!doctype');
  expect(part.text).toContain('name="also[1].name"');
  const empty = Object.fromEntries(
    Object.entries(form).map(([name, value]) => [name, /key$|revision/.test(name) ? value : '']),
  );
  await agent.post(at, empty);
  expect(await noted()).toBeNull();
});

test('what was noted of a dish or line that is gone stays', async () => {
  const kept = { dish: 'gone-since', portions: '3' };
  const other = kitchenWithTeas();
  const tea = other.events.find(({ key }) => key === 'tea-2026-09-12')!;
  tea.afterwards!.left.push(kept);
  const second = await agentOn(other);
  const form = fieldsOf((await second.get('/events/tea-2026-09-12/afterwards')).text);
  await second.post('/events/tea-2026-09-12/afterwards', { ...form, note: 'Later' });
  const doc = await stored(second, 'tea-2026-09-12');
  expect(doc?.afterwards).toMatchObject({ note: 'Later', left: expect.arrayContaining([kept]) });
  await second.close();
});

test('beside real as CSV and JSON; nothing noted says so and claims no difference', async () => {
  const { body } = await agent.get('/events/tea-2026-09-12/beside-real.json?view=used');
  expect(body.about).toMatchObject({ guestsPlanned: '38', guestsCame: '36', view: 'used' });
  expect(body.tables[0].rows[1]).toMatchObject({
    line: 'Serving',
    planned: '156.00',
    real: '175.50',
    more: '19.50',
    percent: '12.5',
  });
  const { text } = await agent.get('/events/retirement-lunch/beside-real');
  expect(text).toContain('not over, so only the plan is known');
  expect(text).not.toMatch(/£[\d.]+ (more|less)/);
});
