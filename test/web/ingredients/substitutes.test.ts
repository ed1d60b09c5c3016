import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const at = '/ingredients/onion/substitutes';
const form = async () => fieldsOf((await agent.get(at)).text);
const stored = async () => (await read(agent.db, 'ingredient', 'onion'))!.doc.substitutes;

test('an ingredient and a recipe may stand in, each with its ratio and what to mind', async () => {
  const first = {
    ...(await form()),
    'substitutes[0].item': 'leek',
    'substitutes[0].ratio': '3/4',
  };
  const more = fieldsOf((await agent.post(at, { ...first, do: 'add:substitutes' })).text);
  const saved = await agent.post(at, {
    ...more,
    'substitutes[0].caution': '<b>softer</b>',
    'substitutes[1].item': 'Vegetable stock',
  });
  expect([saved.status, saved.headers.location]).toEqual([
    303,
    expect.stringMatching(/^\/ingredients\/onion\?saved=\d+$/),
  ]);
  expect(await stored()).toEqual([
    { key: 's1', item: { ingredient: 'leek' }, ratio: '0.75', caution: '<b>softer</b>' },
    { key: 's2', item: { component: 'vegetable-stock' }, ratio: '1', caution: '' },
  ]);
  const { text } = await agent.get('/ingredients/onion');
  expect(text).toContain('What may stand in for it');
  expect(text).toContain('href="/ingredients/leek"');
  expect(text).toContain('&lt;b&gt;softer&lt;/b&gt;');
});

test('saved as it was drawn nothing changes; a row taken out is gone', async () => {
  const before = await stored();
  expect((await agent.post(at, await form())).headers.location).toBe('/ingredients/onion');
  expect(await stored()).toEqual(before);
  const less = fieldsOf((await agent.post(at, { ...(await form()), do: 'out:substitutes:1' })).text);
  await agent.post(at, less);
  expect((await stored()).map(({ key }) => key)).toEqual(['s1']);
});

test('what cannot be read is said at its field, and what was typed stays', async () => {
  const now = await form();
  const wrong = await agent.post(at, { ...now, 'substitutes[0].item': 'lek', 'substitutes[0].ratio': '0' });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('There is no ingredient or recipe called lek.');
  expect(wrong.text).toContain('value="lek"');
  const itself = await agent.post(at, { ...now, 'substitutes[0].item': 'Onions' });
  expect([itself.status, /cannot stand in for itself|no ingredient or recipe/.test(itself.text)]).toEqual([
    422,
    true,
  ]);
  const part = await agent.post(at, { ...now, 'substitutes[0].item': 'lek' }).set('hx-request', 'true');
  expect(part.text).not.toContain('<html');
});

test('what stands in for something is not removed, and says what it stands in for', async () => {
  const { text } = await agent.get('/ingredients/leek');
  expect(text).toContain('href="/ingredients/onion"');
  expect((await agent.get('/ingredients/no-such/substitutes')).status).toBe(404);
});
