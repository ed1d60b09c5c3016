import { afterAll, beforeAll, expect, test } from 'vitest';
import words from '../../../shared/label-words.json' with { type: 'json' };
import { notPlain } from '../../../src/core/plain-produce.js';
import { read } from '../../../src/store/documents.js';
import { food } from '../../core/small.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const page = '/ingredients/plain';
const stored = async (key: string) => (await read(agent.db, 'ingredient', key))!;
const fresh = async (name: string): Promise<string> => {
  const form = fieldsOf((await agent.get('/ingredients/new')).text);
  const { headers } = await agent.post('/ingredients/new', { ...form, name });
  return headers.location!.match(/ingredients\/([a-z0-9-]+)/)![1]!;
};

test('many are plain in the cook’s word at once, and one undo takes it back', async () => {
  const keys = [await fresh('Chervil'), await fresh('Swede'), await fresh('Kohlrabi')];
  expect((await agent.get(page)).text).toContain('Kohlrabi');
  const saved = await agent.post(page, { by: 'R.T.', keys: keys.slice(0, 2) });
  expect(saved.status).toBe(303);
  const { doc } = await stored('swede');
  expect(doc.allergens.milk).toEqual({ state: 'free', source: 'cook', date: null, by: 'R.T.' });
  expect(Object.values(doc.allergens).every(({ state }) => state === 'free')).toBe(true);
  expect((await stored('kohlrabi')).doc.allergens).toEqual({});
  const after = (await agent.get(saved.headers.location!)).text;
  expect(after).toContain('Saved 2 ingredients together.');
  const undo = after.match(/action="(\/undo\/together\/\d+)"/)![1]!;
  expect((await agent.post(undo)).status).toBe(303);
  expect((await stored('swede')).doc.allergens).toEqual({});
});

test('a name that says an allergen, or leaves open what it is, is never taken as plain', async () => {
  const key = await fresh('Vegetable stock, tub');
  expect((await agent.get(page)).text).toContain('its name does not say');
  await agent.post(page, { by: 'R.T.', keys: [key] });
  expect((await stored(key)).doc.allergens).toEqual({});
  expect(notPlain(food('butter'))).toContain('milk');
  expect(notPlain(food('wheatflour'))).toContain('Read its label');
  expect(notPlain(food('butter-beans'))).toBe('');
  expect(notPlain(food('coconut-milk'))).toBe('');
});

test('nor is it on the page of its own label', async () => {
  const key = await fresh('Self-raising flour');
  const at = `/ingredients/${key}/label`;
  const refused = await agent.post(at, { ...fieldsOf((await agent.get(at)).text), do: 'plain', by: 'R.T.' });
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('Self-raising flour is not taken as plain. Read its label');
  expect((await stored(key)).doc.allergens).toEqual({});
});

test('no name that leaves open what it is of is taken as plain, whatever stands around it', () => {
  for (const name of words.open.flatMap((one) => one.words))
    for (const typed of [name, `${name} (own)`, `Plain ${name}`, `${name}, best`])
      expect([typed, notPlain({ ...food('x'), name: typed })]).not.toEqual([typed, '']);
});

test('what something is known of is left as it stands', async () => {
  const before = await stored('butter');
  expect((await agent.post(page, { by: 'R.T.', keys: ['butter', 'nowhere'] })).headers.location).toBe(page);
  expect(await stored('butter')).toEqual(before);
});

test('nothing ticked or nobody’s word is refused, with the ticks kept', async () => {
  const key = await fresh('Salsify');
  const none = await agent.post(page, { by: 'R.T.' });
  expect(none.status).toBe(422);
  expect(none.text).toContain('Tick at least one ingredient');
  const nobody = await agent.post(page, { by: ' ', keys: [key] });
  expect(nobody.status).toBe(422);
  expect(nobody.text).toContain(`value="${key}" id="f-keys-${key}" checked`);
});
