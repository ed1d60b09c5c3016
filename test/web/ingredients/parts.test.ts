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
const at = (key: string, part: string) => `/ingredients/${key}/${part}`;
const formAt = async (key: string, part: string): Promise<Sent> =>
  fieldsOf((await agent.get(at(key, part))).text);
const stored = async (key: string) => (await read(agent.db, 'ingredient', key))!.doc;
const save = async (key: string, part: string, change: Sent) =>
  agent.post(at(key, part), { ...(await formAt(key, part)), ...change });

test('saving any part as it was drawn changes nothing', async () => {
  for (const key of ['brown-ale', 'butter', 'hazelnuts', 'horseradish-sauce', 'smoked-mackerel', 'tap-water'])
    for (const part of ['basics', 'packs', 'yield', 'label', 'diets', 'keeping']) {
      const before = await stored(key);
      const { status, headers } = await save(key, part, {});
      expect([key, part, status, headers.location]).toEqual([key, part, 303, `/ingredients/${key}`]);
      expect(await stored(key)).toEqual(before);
    }
});

test('a new price joins the old ones, and a wrong one is taken out', async () => {
  await save('onion', 'packs', {
    'packs[0].price': '4.80',
    'packs[0].date': '12 Oct',
    'packs[0].guess': 'on',
  });
  const prices = async () => (await stored('onion')).packs[0]!.prices;
  expect((await prices()).at(-1)).toEqual({ key: '2026-10-12', date: '2026-10-12', price: 480, guess: true });
  const first = (await prices())[0]!.key;
  await save('onion', 'packs', { 'packs[0].wrong': first });
  expect((await prices()).map(({ key }) => key)).not.toContain(first);
  expect((await prices()).at(-1)!.key).toBe('2026-10-12');
});

test('a pack is added, priced at and taken out; wrong sizes are kept and said', async () => {
  const form = await formAt('carrot', 'packs');
  const added = fieldsOf((await agent.post(at('carrot', 'packs'), { ...form, do: 'add:packs' })).text);
  const wrong = await agent.post(at('carrot', 'packs'), {
    ...added,
    'packs[1].size': '500',
    'packs[1].price': 'x',
  });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('Enter the unit too, such as 500 g');
  expect(wrong.text).toContain('Pack 2: price');
  const sent = { ...added, 'packs[1].size': '10 kgs', 'packs[1].supplier': 'Market', preferred: '1' };
  expect((await agent.post(at('carrot', 'packs'), sent)).status).toBe(303);
  const { packs, allergens } = await stored('carrot');
  expect(packs.map(({ key, preferred, size }) => [key, preferred, size])).toEqual([
    ['pack-1', false, { amount: '5', unit: 'kg' }],
    ['market', true, { amount: '10', unit: 'kg' }],
  ]);
  expect(allergens.wheat?.source).toBe('cook');
});

test('another brand asks for the label: nothing is chosen, then it is forgotten or read again', async () => {
  const asked = await save('butter', 'packs', { 'packs[0].brand': 'Low Barn' });
  expect(asked.status).toBe(422);
  expect(asked.text).toContain('is it the same label?');
  expect(asked.text).not.toMatch(/name="relabel" value="\w+" checked/);
  const again = { ...fieldsOf(asked.text), relabel: 'same', readOn: '13 Oct 2026', by: 'N.O.' };
  expect((await agent.post(at('butter', 'packs'), again)).status).toBe(303);
  expect((await stored('butter')).allergens.milk).toEqual({
    state: 'contains',
    source: 'label',
    date: '2026-10-13',
    by: 'N.O.',
  });
  const other = await save('butter', 'packs', { preferred: '1' });
  expect(other.status).toBe(422);
  expect(
    (await agent.post(at('butter', 'packs'), { ...fieldsOf(other.text), relabel: 'forget' })).status,
  ).toBe(303);
  const { allergens, traits } = await stored('butter');
  expect([allergens, traits]).toEqual([{}, { dairy: 'yes' }]);
});

test('a label is marked, and the whole of it read in one press', async () => {
  const marks = {
    'entries.gluten': 'contains',
    'states.wheat': 'contains',
    'entries.milk': 'may',
    'entries.pine-nut': 'free',
  };
  const date = { date: '12 Oct 2026', by: 'R.T.', do: 'whole' };
  expect((await save('horseradish-sauce', 'label', { ...marks, ...date })).status).toBe(303);
  const { allergens } = await stored('horseradish-sauce');
  const stamp = { source: 'label', date: '2026-10-12', by: 'R.T.' };
  expect(allergens).toMatchObject({
    wheat: { state: 'contains', ...stamp },
    milk: { state: 'may', ...stamp },
    rye: { state: 'free', ...stamp },
    almond: { state: 'free', ...stamp },
    'pine-nut': { state: 'free', ...stamp },
  });
  expect(allergens.gluten).toBeUndefined();
});

test('not listed frees every substance of a group; marks that speak against it are refused', async () => {
  const clash = await save('hazelnuts', 'label', { 'entries.nuts': 'free' });
  expect([clash.status, clash.text.includes('marked as not listed, and hazelnut as listed')]).toEqual([
    422,
    true,
  ]);
  const future = await save('hazelnuts', 'label', { date: '1 Jan 2030' });
  expect([future.status, future.text.includes('still to come')]).toEqual([422, true]);
});

test('plain produce is free in the cook’s word, unless something is marked', async () => {
  const refused = await save('hazelnuts', 'label', { do: 'plain' });
  expect([refused.status, refused.text.includes('no plain produce')]).toEqual([422, true]);
  expect((await save('brown-sugar', 'label', { do: 'plain', by: 'R.T.' })).status).toBe(303);
  expect((await stored('brown-sugar')).allergens.milk).toEqual({
    state: 'free',
    source: 'cook',
    date: null,
    by: 'R.T.',
  });
});

test('the reference fills the form in one press and saves nothing', async () => {
  const filled = await save('leek', 'yield', { do: 'fill:leek', 'edibleYield.yield': '' });
  expect(fieldsOf(filled.text)).toMatchObject({
    'edibleYield.yield': '44 %',
    'edibleYield.source': expect.stringContaining('11246'),
    'weights[0].grams': '89',
  });
  expect((await stored('leek')).edibleYield?.source).toContain('refuse 56');
});

test('yield, density and weights are read as cooks write them', async () => {
  const wrong = await save('leek', 'yield', { 'edibleYield.yield': '720 %', 'density.gramsPerMl': '92' });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('Did you mean 72?');
  expect(wrong.text).toContain('water weighs 1');
  await save('leek', 'yield', {
    'edibleYield.yield': '0.5',
    'density.gramsPerMl': '125 g a cup',
    'weights[1].unit': 'bunch',
    'weights[1].grams': '450 g',
    'weights[1].of': 'bought',
  });
  expect(await stored('leek')).toMatchObject({
    edibleYield: { yield: '0.5' },
    density: { gramsPerMl: '0.5' },
    weights: [{ unit: 'each' }, { unit: 'bunch', grams: '450', of: 'bought' }],
  });
});

test('plain plant food is none of what diets turn on; keeping days are whole', async () => {
  await save('horseradish-sauce', 'diets', { do: 'plain' });
  expect((await stored('horseradish-sauce')).traits.meat).toBe('no');
  const wrong = await save('leek', 'keeping', { 'keeping.opened': '1.5' });
  expect([wrong.status, wrong.text.includes('whole number')]).toEqual([422, true]);
  await save('leek', 'keeping', { 'keeping.opened': '4' });
  expect((await stored('leek')).keeping.opened).toBe(4);
});

test('two tabs: different parts join, the same fact is asked about', async () => {
  const [mine, theirs] = [await formAt('pear', 'basics'), await formAt('pear', 'basics')];
  await agent.post(at('pear', 'basics'), { ...theirs, section: 'Market' });
  expect((await agent.post(at('pear', 'basics'), { ...mine, note: 'ripe ones' })).status).toBe(303);
  expect(await stored('pear')).toMatchObject({ section: 'Market', note: 'ripe ones' });
  const clash = await agent.post(at('pear', 'basics'), { ...mine, section: 'Barrow' });
  expect([clash.status, clash.text.includes('choose one')]).toEqual([409, true]);
});

test('htmx gets the form of the part alone', async () => {
  const form = await formAt('pear', 'keeping');
  const wrong = await agent
    .post(at('pear', 'keeping'), { ...form, 'keeping.opened': 'x' })
    .set({ 'hx-request': 'true', 'hx-request-type': 'partial' });
  expect([wrong.status, wrong.text.includes('<!doctype'), wrong.text.includes('id="part"')]).toEqual([
    422,
    false,
    true,
  ]);
});
