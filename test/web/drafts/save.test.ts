import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { openDrafts } from '../../../src/store/drafts.js';
import { exportWorkbook } from '../../../src/store/workbook.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';
import { jsonLd, traybake } from './texts.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

type Sent = Record<string, string | string[]>;
const begin = async (text: string): Promise<string> =>
  String((await agent.post('/recipes/read', { text })).headers.location);
const formAt = async (address: string): Promise<Sent> => fieldsOf((await agent.get(address)).text, address);
const press = async (address: string, what: string, typed: Sent = {}) =>
  agent.post(address, { ...(await formAt(address)), ...typed, do: what });

/** Presses what a cook would press for the traybake, line by line. */
const settle = async (address: string) => {
  await press(address, 'use:1:Chickpeas, tinned');
  await press(address, 'confirm:lines:1');
  await press(address, 'new:2:butternut-squash');
  await press(address, 'new:4');
  await press(address, 'out:lines:5');
  await press(address, 'new:6');
  await press(address, 'confirm:lines:6');
  await press(address, 'confirm:head');
  await press(address, 'confirm:steps:1', { 'steps[1].minutes': '5' });
};

test('a settled draft makes its recipe, new ingredients and a tin’s weight in one go', async () => {
  const before = (await exportWorkbook(agent.db))!;
  const address = await begin(traybake);
  await settle(address);
  const sent = await agent.post(address, await formAt(address));
  expect(sent.headers.location).toMatch(/^\/recipes\/chicken-traybake\?saved=\d+$/);
  const page = await agent.get(String(sent.headers.location));
  expect(page.text).toContain('Added Chicken traybake.');
  const made = (await read(agent.db, 'recipe', 'chicken-traybake'))!.doc;
  expect(made.yield.portions).toBe('4');
  expect(made.lines.map(({ amount, amountTo, unit, stated }) => [amount, amountTo, unit, stated])).toEqual([
    ['1', null, 'tbsp', 'usual'],
    ['2', null, 'tin', 'usual'],
    ['700', null, 'g', 'bought'],
    ['2', '3', 'clove', 'usual'],
    ['1', null, 'tsp', 'usual'],
    ['2', null, 'pot', 'usual'],
  ]);
  expect(made.lines.at(-1)!.preparation).toBe('for the sauce');
  expect(made.steps).toMatchObject([{ minutes: 45, oven: { heat: 200 } }, { minutes: 5 }]);
  const squash = (await read(agent.db, 'ingredient', 'squash'))!.doc;
  expect(squash.edibleYield?.source).toMatch(/^USDA SR28/);
  const sumac = (await read(agent.db, 'ingredient', 'sumac'))!.doc;
  expect(sumac).toMatchObject({ edibleYield: null, density: null, allergens: {}, traits: {}, packs: [] });
  const yoghurt = (await read(agent.db, 'ingredient', 'greek-yoghurt'))!.doc;
  expect(yoghurt.weights).toMatchObject([{ unit: 'pot', grams: '500', of: 'bought' }]);
  const after = (await exportWorkbook(agent.db))!;
  expect(after.recipes.length).toBe(before.recipes.length + 1);
  expect(after.ingredients.length).toBe(before.ingredients.length + 3);
  expect(JSON.stringify(after)).not.toContain('draft');
});

test('the draft is one no longer; when the save is taken back it is there again', async () => {
  const address = await begin(
    traybake.replace('Chicken traybake', 'Second traybake').replace('sumac', 'cumin seed'),
  );
  await settle(address);
  const sent = await agent.post(address, await formAt(address));
  const to = String(sent.headers.location);
  expect((await agent.get(address)).headers.location).toBe('/recipes/second-traybake');
  expect((await agent.post(address, await formAt('/recipes/read').catch(() => ({})))).headers.location).toBe(
    '/recipes/second-traybake',
  );
  const listed = async () => (await openDrafts(agent.db)).some(({ name }) => name === 'Second traybake');
  expect(await listed()).toBe(false);
  const change = /saved=(\d+)/.exec(to)![1];
  expect((await agent.post(`/undo/${change}`)).status).toBe(303);
  expect(await listed()).toBe(true);
  expect((await agent.get(address)).status).toBe(200);
});

test('a heading becomes a component of its own when the cook says so', async () => {
  const address = await begin(
    traybake.replace('Chicken traybake', 'Third traybake').replace('sumac', 'nigella'),
  );
  await settle(address);
  const form: Sent = {
    ...(await formAt(address)),
    'parts[1].as': 'component',
    'parts[1].name': 'Yoghurt sauce',
    'parts[1].makes': '1 kg',
  };
  const sent = await agent.post(address, form);
  expect(sent.status).toBe(303);
  const sauce = (await read(agent.db, 'recipe', 'yoghurt-sauce'))!.doc;
  expect(sauce.lines).toMatchObject([{ amount: '2', unit: 'pot', preparation: '' }]);
  const dish = (await read(agent.db, 'recipe', 'third-traybake'))!.doc;
  expect(dish.lines.at(-1)).toMatchObject({
    amount: '1',
    unit: 'batch',
    item: { component: 'yoghurt-sauce' },
  });
  expect((await agent.get('/recipes/third-traybake')).text).toContain('Yoghurt sauce');
});

test('a name that is taken is refused at its field, and nothing is half made', async () => {
  const address = await begin(jsonLd({ name: 'Hummus with carrot sticks', lines: ['1 tsp zaatar'] }));
  await press(address, 'new:0');
  const form = await formAt(address);
  const sent = await agent.post(address, form);
  expect(sent.status).toBe(422);
  expect(sent.text).toContain('f-name-fault');
  expect(await read(agent.db, 'ingredient', 'zaatar')).toBeUndefined();
  const mended = { ...fieldsOf(sent.text, address), name: 'Hummus with zaatar' };
  expect((await agent.post(address, mended)).headers.location).toMatch(/^\/recipes\/hummus-with-zaatar/);
});

test('a recipe without a method needs one line with its minutes', async () => {
  const address = await begin(jsonLd({ name: 'Oiled toast', lines: ['1 tbsp olive oil'], method: '' }));
  const refused = await agent.post(address, await formAt(address));
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('Say how long it takes');
  await press(address, 'confirm:steps:0', { 'steps[0].minutes': '10' });
  expect((await agent.post(address, await formAt(address))).status).toBe(303);
  expect((await read(agent.db, 'recipe', 'oiled-toast'))?.doc.steps).toMatchObject([
    { words: 'Make Oiled toast.', minutes: 10 },
  ]);
});

test('a recipe goes out again as schema.org has it, from a link on its page', async () => {
  expect((await agent.get('/recipes/hummus')).text).toContain('href="/recipes/hummus/schema-org.json"');
  const file = await agent.get('/recipes/hummus/schema-org.json');
  expect(file.status).toBe(200);
  const recipe = JSON.parse(file.text ?? file.body.toString());
  expect(recipe).toMatchObject({
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: 'Hummus with carrot sticks',
  });
  expect((await agent.get('/recipes/no-such/schema-org.json')).status).toBe(404);
});
