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

type Sent = Record<string, string | string[]>;
const at = (key: string) => `/ingredients/${key}/label`;
const stored = async (key: string) => (await read(agent.db, 'ingredient', key))!.doc;
const fresh = async (name: string): Promise<string> => {
  const { headers } = await agent.post('/ingredients/new', {
    ...fieldsOf((await agent.get('/ingredients/new')).text),
    name,
  });
  return headers.location!.match(/ingredients\/([a-z0-9-]+)/)![1]!;
};
const send = async (key: string, change: Sent) =>
  agent.post(at(key), { ...fieldsOf((await agent.get(at(key))).text), ...change });

test('reading a label is one act: words, marks, day and reader in one press', async () => {
  const key = await fresh('Bought custard');
  const words = 'Skimmed **milk**, sugar, **wheat** flour. May contain traces of nuts.';
  const saved = await send(key, { words, do: 'whole', date: '12 Oct', by: 'N.O.' });
  expect(saved.status).toBe(303);
  const { allergens, labelText, labelDate } = await stored(key);
  expect([labelText, labelDate]).toEqual([words, '2026-10-12']);
  const stamp = { source: 'label', date: '2026-10-12', by: 'N.O.' };
  expect(allergens.milk).toEqual({ state: 'contains', ...stamp });
  expect(allergens.wheat).toEqual({ state: 'contains', ...stamp });
  expect(allergens.nuts).toEqual({ state: 'may', ...stamp });
  expect(allergens.eggs).toEqual({ state: 'free', ...stamp });
  expect(allergens.almond).toBeUndefined();
  const page = (await agent.get(at(key))).text;
  expect(page).toContain('Skimmed **milk**, sugar');
  const shown = (await agent.get(`/ingredients/${key}`)).text;
  expect(shown).toContain('The label said on Mon 12 Oct 2026:');
  expect(page).toContain('“nuts” after “May contain traces of”');
});

test('the words alone set nothing to not listed', async () => {
  const key = await fresh('Bought sauce');
  expect((await send(key, { words: 'Water, whey, salt' })).status).toBe(303);
  const { allergens } = await stored(key);
  expect(Object.entries(allergens).map(([id, { state }]) => [id, state])).toEqual([['milk', 'contains']]);
});

test('marks are set from the words as they are typed, without a save, with script and without', async () => {
  const key = await fresh('Bought paste');
  const form = fieldsOf((await agent.get(at(key))).text);
  const sent = { ...form, words: 'Peanuts, **tahini**, coconut milk' };
  for (const reply of [
    await agent.post(at(key), { ...sent, do: 'read' }),
    await agent.post(`${at(key)}/read`, sent),
  ]) {
    expect(reply.status).toBe(200);
    const now = fieldsOf(reply.text);
    expect([now['entries.peanuts'], now['entries.sesame'], now['entries.milk']]).toEqual([
      'contains',
      'contains',
      'unknown',
    ]);
    expect(reply.text).toContain('pressed from coconut: no milk');
  }
  const part = await agent.post(`${at(key)}/read`, sent).set('hx-request', 'true');
  expect(part.text).toMatch(/^<form id="part"/);
  expect(part.text).toContain('id="label-marks"');
  expect((await stored(key)).allergens).toEqual({});
  const first = fieldsOf((await agent.post(`${at(key)}/read`, sent)).text);
  const second = fieldsOf((await agent.post(`${at(key)}/read`, { ...first, words: 'Sesame, milk' })).text);
  expect([second['entries.peanuts'], second['entries.sesame'], second['entries.milk']]).toEqual([
    'unknown',
    'contains',
    'contains',
  ]);
});

test('what is not understood must be settled; nothing is saved before', async () => {
  const key = await fresh('Bought filling');
  const words = 'Sugar, **chestnut**, **XANTHO**';
  const asked = await send(key, { words, do: 'whole' });
  expect(asked.status).toBe(422);
  expect(asked.text).toContain('Not understood: <b>“chestnut”');
  expect(asked.text).toContain('Sugar, **chestnut**');
  expect((await stored(key)).labelText).toBe('');
  const form = fieldsOf(asked.text);
  const settled = { ...form, 'settle[0].as': 'nuts', 'settle[1].as': 'none', do: 'whole' };
  expect((await agent.post(at(key), settled)).status).toBe(303);
  const { allergens } = await stored(key);
  expect([allergens.nuts?.state, allergens.milk?.state]).toEqual(['contains', 'free']);
  expect((await agent.get(at(key))).text).not.toContain('Not understood');
});

test('flour of no named grain is not free of wheat by being read to the end', async () => {
  const key = await fresh('Bought flatbread');
  const words = 'Flour, water, yeast, salt';
  const asked = await send(key, { words, do: 'whole' });
  expect(asked.status).toBe(422);
  expect(asked.text).toContain('of which grain: the name alone does not say');
  const told = { ...fieldsOf(asked.text), 'settle[0].as': 'wheat', do: 'whole' };
  expect((await agent.post(at(key), told)).status).toBe(303);
  const { wheat, rye } = (await stored(key)).allergens;
  expect([wheat?.state, rye?.state]).toEqual(['contains', 'free']);
});

test('words that name something outdo “plain produce” and an unmarked line', async () => {
  const key = await fresh('Bought leaves');
  const plain = await send(key, { words: 'Spinach, celery', do: 'plain' });
  expect(plain.status).toBe(422);
  expect(plain.text).toContain('no plain produce');
});

test('a mark against the words is the cook’s own, and stays', async () => {
  const key = await fresh('Bought drink');
  const form = fieldsOf((await agent.get(at(key))).text);
  const shown = fieldsOf((await agent.post(at(key), { ...form, words: 'Nut brown ale', do: 'read' })).text);
  expect(shown['entries.nuts']).toBe('contains');
  expect(shown['settle[0].words']).toBe('ale');
  const said = { 'states.nuts': 'unknown', 'entries.nuts': 'free', 'settle[0].as': 'barley' };
  await agent.post(at(key), { ...shown, ...said, do: 'whole' });
  expect((await stored(key)).allergens.almond?.state).toBe('free');
  expect((await send(key, {})).status).toBe(303);
  expect((await stored(key)).allergens.almond?.state).toBe('free');
});

test('another brand makes the words those of the pack before, and amounts stay', async () => {
  const key = await fresh('Bought butter');
  const packs = `/ingredients/${key}/packs`;
  const pack = { 'packs[0].size': '250 g', 'packs[0].brand': 'Low Barn', preferred: '0' };
  await agent.post(packs, { ...fieldsOf((await agent.get(packs)).text), ...pack });
  await send(key, { words: '**Milk**, salt', do: 'whole' });
  const before = await stored(key);
  const asked = await agent.post(packs, {
    ...fieldsOf((await agent.get(packs)).text),
    'packs[0].brand': 'Hay Loft',
  });
  await agent.post(packs, { ...fieldsOf(asked.text), relabel: 'forget' });
  const after = await stored(key);
  expect([after.allergens, after.labelText, after.labelDate]).toEqual([{}, '**Milk**, salt', null]);
  expect(after.packs[0]!.size).toEqual(before.packs[0]!.size);
  expect((await agent.get(at(key))).text).toContain('of the pack before');
  expect((await send(key, {})).status).toBe(303);
  expect((await stored(key)).allergens).toEqual({});
  expect((await send(key, { do: 'whole' })).status).toBe(303);
  expect((await stored(key)).allergens.milk?.state).toBe('contains');
  expect((await stored(key)).labelDate).toBe('2026-10-14');
});

test('script in a label is words, and a text beyond all labels is refused with what was typed', async () => {
  const key = await fresh('Odd one');
  const odd = '<script>alert(1)</script>, **MILK<b>**';
  const shown = await agent.post(at(key), {
    ...fieldsOf((await agent.get(at(key))).text),
    words: odd,
    do: 'read',
  });
  expect(shown.text).not.toContain('<script>alert');
  const long = await send(key, { words: 'salt, '.repeat(1500), do: 'whole' });
  expect(long.status).toBe(422);
  expect(long.text).toContain('at most 8000 signs');
  expect((await agent.post('/ingredients/nowhere/label/read', {})).status).toBe(404);
});
