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
const formAt = async (url: string): Promise<Sent> => fieldsOf((await agent.get(url)).text);
const stored = async (key: string) => (await read(agent.db, 'recipe', key))?.doc;

test('saving a form as it was drawn changes nothing', async () => {
  for (const { key } of exampleKitchen().recipes) {
    const before = await read(agent.db, 'recipe', key);
    const saved = await agent.post(`/recipes/${key}/edit`, await formAt(`/recipes/${key}/edit`));
    expect([saved.status, saved.headers.location]).toEqual([303, `/recipes/${key}`]);
    expect((await read(agent.db, 'recipe', key))?.doc).toEqual(before?.doc);
  }
});

test('a new recipe is saved by hand with a new ingredient and its steps', async () => {
  const form: Sent = {
    ...(await formAt('/recipes/new')),
    name: 'Saffron leeks',
    'yield.portions': '12',
    'lines[0].amount': '1 1/2',
    'lines[0].unit': 'kgs',
    'lines[0].item': 'Leek',
    'lines[1].amount': '2 g',
    'lines[1].item': 'Saffron',
    'lines[2].item': 'salt',
    'lines[2].scales': 'taste',
    'steps[0].words': 'Sweat the leeks gently.',
    'steps[0].minutes': '1 h 20',
  };
  const refused = await agent.post('/recipes/new', form);
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('Line 2, saffron: ingredient');
  expect(refused.text).toContain('There is no ingredient or recipe called Saffron yet.');
  const asked = await agent.post('/recipes/new', { ...form, do: 'new:all' });
  expect([asked.status, asked.text.includes('New ingredient “Saffron”')]).toEqual([200, true]);
  const saved = await agent.post('/recipes/new', fieldsOf(asked.text));
  expect(saved.headers.location).toMatch(/^\/recipes\/saffron-leeks\?saved=\d+$/);
  const doc = await stored('saffron-leeks');
  expect(doc?.lines).toMatchObject([
    { amount: '1.5', unit: 'kg', item: { ingredient: 'leek' } },
    { amount: '2', unit: 'g', item: { ingredient: 'saffron' } },
    { amount: null, item: { ingredient: 'salt' }, scales: 'taste' },
  ]);
  expect(doc?.steps).toMatchObject([{ key: 'sweat-the-leeks', minutes: 80, attended: true }]);
  expect((await read(agent.db, 'ingredient', 'saffron'))?.doc).toMatchObject({
    name: 'Saffron',
    allergens: {},
  });
});

test('what can’t be read is named with its line, and all that was typed is kept', async () => {
  const form = {
    ...(await formAt('/recipes/tomato-sauce/edit')),
    'lines[0].amount': '1,500',
    'lines[1].amount': '0',
    'lines[2].amount': '-3',
    'lines[3].item': 'Thymee',
    'yield.weight': '720 %',
    'steps[0].oven': '1800',
    note: '<script>alert(1)</script>',
  };
  const { status, text } = await agent.post('/recipes/tomato-sauce/edit', form);
  expect(status).toBe(422);
  for (const words of [
    'Line 1, olive oil: quantity',
    '1,500 can&#39;t be read'.slice(0, 5),
    'read two ways. Type 1500, or 1.500.',
    'Enter a quantity above zero',
    'never below zero. You entered -3.',
    'Did you mean Thyme?',
    'value="use:3:Thyme"',
    'Enter a unit such as g',
    'Did you mean 180?',
    'fix line 1',
  ])
    expect(text, words).toContain(words);
  expect(text).toContain('value="1,500"');
  expect(text).toContain('&lt;script&gt;alert(1)');
  expect(text).not.toContain('<script>alert');
  expect((await stored('tomato-sauce'))?.lines).toEqual(
    exampleKitchen().recipes.find(({ key }) => key === 'tomato-sauce')?.lines,
  );
});

test('rows are added, moved and taken out without a script, all typed text kept', async () => {
  const form = { ...(await formAt('/recipes/mash/edit')), note: 'kept', 'lines[0].amount': 'as typed' };
  const url = '/recipes/mash/edit';
  const added = fieldsOf((await agent.post(url, { ...form, do: 'add:lines' })).text);
  expect(added).toMatchObject({ 'lines[4].key': '', 'lines[4].scales': 'straight', note: 'kept' });
  const moved = fieldsOf((await agent.post(url, { ...form, do: 'down:lines:0' })).text);
  expect(moved['lines[1].amount']).toBe('as typed');
  const out = fieldsOf((await agent.post(url, { ...form, do: 'out:lines:1' })).text);
  expect([out['lines[0].amount'], out['lines[3].item']]).toEqual(['as typed', undefined]);
  const steps = fieldsOf((await agent.post(url, { ...form, do: 'add:steps' })).text);
  expect(steps['steps[2].attended']).toBe('on');
});

test('a name that another recipe has is refused with a link to it', async () => {
  const form = { ...(await formAt('/recipes/mash/edit')), name: '  tomato  SAUCE' };
  const { status, text } = await agent.post('/recipes/mash/edit', form);
  expect(status).toBe(422);
  expect(text).toContain('There is a recipe called Tomato sauce already');
  expect(text).toContain('href="/recipes/tomato-sauce"');
});

test('a recipe that would contain itself is refused and the loop named', async () => {
  const form: Sent = {
    ...(await formAt('/recipes/vegetable-stock/edit')),
    'lines[7].amount': '1',
    'lines[7].unit': 'kg',
    'lines[7].item': 'Tomato sauce',
  };
  const { status, text } = await agent.post('/recipes/vegetable-stock/edit', form);
  expect(status).toBe(422);
  expect(text).toContain(
    'Vegetable stock would contain itself: Vegetable stock → Tomato sauce → Vegetable stock.',
  );
});

test('what saving would change is shown first, with htmx and without', async () => {
  const form = {
    ...(await formAt('/recipes/vegetable-stock/edit')),
    'lines[0].amount': '4',
    'lines[0].unit': 'kg',
  };
  const whole = await agent.post('/recipes/vegetable-stock/edit', { ...form, do: 'preview' });
  expect(whole.status).toBe(200);
  expect(whole.text).toContain('<!doctype html>');
  for (const words of ['What changes', 'Choir supper after the concert</a>', 'food for a guest'].slice(0, 1))
    expect(whole.text).toContain(words);
  expect(whole.text).toMatch(/Choir supper after the concert, food for a guest/);
  const part = await agent.post('/recipes/vegetable-stock/edit/preview', form).set('hx-request', 'true');
  expect(part.text).toContain('id="saving"');
  expect(part.text).not.toContain('<!doctype');
  expect((await stored('vegetable-stock'))?.lines[0]?.amount).toBe('400');
});

test('two tabs: different lines join by themselves, the same line is asked about', async () => {
  const [mine, theirs] = [await formAt('/recipes/mash/edit'), await formAt('/recipes/mash/edit')];
  await agent.post('/recipes/mash/edit', { ...theirs, 'lines[0].amount': '9' });
  const joined = await agent.post('/recipes/mash/edit', {
    ...mine,
    'lines[1].amount': '77',
    'lines[4].amount': '5',
    'lines[4].unit': 'g',
    'lines[4].item': 'Thyme',
  });
  expect(joined.status).toBe(303);
  expect((await stored('mash'))?.lines.map(({ amount }) => amount)).toEqual([
    '9',
    '77',
    expect.anything(),
    null,
    '5',
  ]);
  const clash = await agent.post('/recipes/mash/edit', { ...mine, 'lines[0].amount': '8' });
  expect(clash.status).toBe(409);
  expect(clash.text).toContain('choose one');
});

test('a variant begins as a copy and says what it is of', async () => {
  const form = await formAt('/recipes/new?variant=mash');
  expect(form).toMatchObject({ name: 'Mashed potato, variant', variantOf: 'mash' });
  const saved = await agent.post('/recipes/new', {
    ...form,
    name: 'Mash with oil',
    'lines[1].item': 'Olive oil',
  });
  expect(saved.status).toBe(303);
  expect(await stored('mash-with-oil')).toMatchObject({ variantOf: 'mash', origin: 'own' });
  expect((await agent.get('/recipes/mash-with-oil')).text).toContain('Differs from');
});

test('htmx gets the form alone, and is sent on when it is saved', async () => {
  const htmx = { 'hx-request': 'true', 'hx-request-type': 'partial' };
  const form = await formAt('/recipes/mash/edit');
  const wrong = await agent.post('/recipes/mash/edit', { ...form, name: '' }).set(htmx);
  expect([wrong.status, wrong.text.includes('<!doctype')]).toEqual([422, false]);
  expect(wrong.text).toContain('data-focus');
  const saved = await agent.post('/recipes/mash/edit', { ...form, note: 'new' }).set(htmx);
  expect(saved.headers['hx-redirect']).toMatch(/^\/recipes\/mash\?saved=/);
});

test('two hundred lines are saved, and one more is refused', async () => {
  const lines = (n: number): Sent =>
    Object.fromEntries(
      Array.from({ length: n }, (_, i) => [
        [`lines[${i}].amount`, '1'],
        [`lines[${i}].unit`, 'g'],
        [`lines[${i}].item`, 'Leek'],
      ]).flat(),
    );
  const form = { ...(await formAt('/recipes/new')), name: 'Long', 'yield.portions': '1' };
  expect((await agent.post('/recipes/new', { ...form, ...lines(200) })).status).toBe(303);
  expect((await stored('long'))?.lines).toHaveLength(200);
  const more = await agent.post('/recipes/new', { ...form, name: 'Longer', ...lines(201) });
  expect([more.status, more.text.includes('The most that may stand here is 200')]).toEqual([422, true]);
});

test('a recipe in use says what uses it and stays; one that nothing uses can go, and comes back', async () => {
  const { text } = await agent.get('/recipes/mash/archive');
  expect(text).toContain('href="/recipes/beef-stew"');
  expect(text).not.toContain('>Remove Mashed potato</button>');
  const revision = String((await read(agent.db, 'recipe', 'mash'))?.revision);
  const refused = await agent.post('/recipes/mash/remove', { revision });
  expect([refused.status, refused.text.includes('That was not done')]).toEqual([409, true]);
  expect((await agent.post('/recipes/mash/archive', { revision })).status).toBe(303);
  expect((await stored('mash'))?.archived).toBe(true);
  const own = await formAt('/recipes/new');
  await agent.post('/recipes/new', { ...own, name: 'Alone', 'yield.portions': '1' });
  const gone = await agent.post(
    '/recipes/alone/remove',
    fieldsOf((await agent.get('/recipes/alone/archive')).text, '/recipes/alone/remove'),
  );
  expect(gone.headers.location).toMatch(/^\/recipes\?saved=/);
  expect(await stored('alone')).toBeUndefined();
});

test('a form of a recipe that is gone is not found', async () => {
  for (const url of ['/recipes/none/edit', '/recipes/none/archive', '/recipes/new?variant=none'])
    expect((await agent.get(url)).status).toBe(404);
  expect((await agent.post('/recipes/none/edit', { name: 'x' })).status).toBe(404);
  expect((await agent.post('/recipes/none/edit/preview', { name: 'x' })).status).toBe(404);
});
