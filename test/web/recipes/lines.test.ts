import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Workbook } from '../../../src/core/facts/facts.js';
import { ingredient } from '../../../src/core/facts/ingredient.js';
import { recipe } from '../../../src/core/facts/recipe.js';
import { read } from '../../../src/store/documents.js';
import { emptyKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

const food = (key: string, name: string, more: object = {}) =>
  ingredient.parse({ key, name, edibleYield: { yield: '1' }, ...more });
const line = (key: string, amount: string, unit: string, item: string, more: object = {}) => ({
  key,
  amount,
  unit,
  item: { ingredient: item },
  ...more,
});

/** A roast with every way a line can be stated and scaled. */
const kitchen = (): Workbook => ({
  ...emptyKitchen(),
  ingredients: [
    food('lamb', 'Leg of lamb', {
      cookedYields: [
        { name: 'roasted', yield: '0.584', from: 'bought' },
        { name: 'braised', yield: '0.5', from: 'bought' },
      ],
    }),
    food('garlic', 'Garlic', { weights: [{ unit: 'clove', grams: '3' }] }),
    food('thyme', 'Thyme'),
    food('salt', 'Fine salt'),
    food('flour', 'Plain flour'),
    food('water', 'Water', { notBought: true }),
    food('oil', 'Olive oil'),
    food('egg', 'Egg', { weights: [{ unit: 'each', grams: '50' }] }),
  ].toSorted((a, b) => (a.key < b.key ? -1 : 1)),
  recipes: [
    recipe.parse({
      key: 'roast',
      name: 'Roast lamb',
      yield: { portions: '10' },
      lines: [
        line('meat', '1.25', 'kg', 'lamb', { stated: 'cooked', cooked: 'roasted', preparation: 'sliced' }),
        line('cloves', '2', 'clove', 'garlic', { amountTo: '3' }),
        line('herb', '10', 'g', 'thyme', { scales: 'herb' }),
        line('salt', '5', 'g', 'salt'),
        line('flour', '100', 'g', 'flour', { scales: 'flour' }),
        line('water', '65', 'percent', 'water'),
        line('oil', '2', 'tbsp', 'oil', { scales: 'batch' }),
        line('egg', '1', 'each', 'egg', { scales: 'pieces' }),
      ],
      steps: [{ key: 'do', words: 'Roast it.', minutes: 60, oven: { heat: 180 } }],
    }),
  ],
});

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(kitchen());
});
afterAll(() => agent.close());

type Sent = Record<string, string | string[]>;
const url = '/recipes/roast/edit';
const form = async (): Promise<Sent> => fieldsOf((await agent.get(url)).text);
const stored = async () => (await read(agent.db, 'recipe', 'roast'))!.doc;
const plain = (html: string) =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .replaceAll('&#39;', "'");

test('the form shows a range, a per cent and a weight once cooked, and saving it as drawn changes nothing', async () => {
  const before = await stored();
  const sent = await form();
  expect(sent).toMatchObject({
    'lines[0].stated': 'cooked',
    'lines[0].cooked': 'roasted',
    'lines[1].amount': '2–3',
    'lines[2].scales': 'herb',
    'lines[4].scales': 'flour',
    'lines[5].unit': '%',
    'lines[6].scales': 'batch',
  });
  const { text } = await agent.get(url);
  expect(text).toContain('<datalist id="cooked-0"><option value="roasted"></option><option value="braised">');
  expect((await agent.post(url, sent)).status).toBe(303);
  expect(await stored()).toEqual(before);
});

test('ranges and units are read as cooks write them', async () => {
  const typed = {
    ...(await form()),
    'lines[1].amount': '2½ to 4 cloves',
    'lines[1].unit': '',
    'lines[3].amount': '2 x 400 g',
    'lines[3].unit': '',
    'lines[5].amount': '70 %',
    'lines[5].unit': '',
  };
  expect((await agent.post(url, typed)).status).toBe(303);
  const { lines } = await stored();
  expect(lines[1]).toMatchObject({ amount: '2.5', amountTo: '4', unit: 'clove' });
  expect(lines[3]).toMatchObject({ amount: '800', amountTo: null, unit: 'g' });
  expect(lines[5]).toMatchObject({ amount: '70', amountTo: null, unit: 'percent' });
  const back = {
    'lines[1].amount': '2-3',
    'lines[1].unit': 'clove',
    'lines[3].amount': '5',
    'lines[5].amount': '65%',
  };
  expect((await agent.post(url, { ...(await form()), ...back, 'lines[5].unit': '' })).status).toBe(303);
  expect((await stored()).lines[5]).toMatchObject({ amount: '65', unit: 'percent' });
});

test('what contradicts itself is refused at its field, with all that was typed kept', async () => {
  const wrong = {
    ...(await form()),
    'lines[0].cooked': '',
    'lines[1].amount': '3-2',
    'lines[5].scales': 'pieces',
    'lines[2].preparation': '<b>chopped</b>',
  };
  const refused = await agent.post(url, wrong);
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('A range goes up, such as 2–3. You entered 3-2.');
  expect(refused.text).toContain('value="3-2"');
  expect(refused.text).toContain('value="&lt;b&gt;chopped&lt;/b&gt;"');
  const rules = await agent.post(url, { ...wrong, 'lines[1].amount': '2-3' });
  expect(rules.status).toBe(422);
  expect(plain(rules.text)).toContain('Type how it is cooked, such as roasted');
  expect(rules.text).toContain('A per cent of the flour grows as the flour does');
  expect(rules.text).toMatch(/<details class="line-more" open>/);
  const htmx = await agent.post(url, wrong).set({ 'hx-request': 'true', 'hx-request-type': 'partial' });
  expect([htmx.status, htmx.text.includes('<!doctype')]).toEqual([422, false]);
});

// Four times the recipe: 8–12 cloves; herbs 2 + 2/2 = 3 times, 30 g for 40; 5 kg of roast are 8.56 kg bought.
test('the page shows both ends, how a line scaled, what to buy for a cooked weight, and what may not scale', async () => {
  const said = plain((await agent.get('/recipes/roast?portions=40')).text);
  for (const words of [
    '8–12 cloves',
    '2–3 cloves',
    'herb: straight it would be 40 g',
    '65 % of the flour',
    '5.00 kg',
    '8.56 kg before it is roasted',
    'scaled far: hold some back and taste',
    'Fine salt in Roast lamb is scaled × 4.00. Salt seldom scales straight: hold some back and taste.',
    'Its cooking minutes are those of one batch',
    'Of a range such as 2–3 both ends are shown',
    'Canadian Spice Association',
    'Cups and spoons: Metric: cup 250 ml, tablespoon 15 ml.',
  ])
    expect(said, words).toContain(words);
  const base = plain((await agent.get('/recipes/roast')).text);
  for (const words of ['straight it would be', 'scaled far', 'is scaled ×'])
    expect(base, words).not.toContain(words);
});

// 15 portions are a batch and a half: the oil goes in twice, 2 eggs of 1.5, half of one left over.
test('whole pieces say what is left over, and a fixed amount what straight would be', async () => {
  const said = plain((await agent.get('/recipes/roast?portions=15')).text);
  expect(said).toContain('whole ones: 1/2 of one left over');
  expect(said).toContain('once a batch: straight it would be 3 tbsp');
});

test('a density that is missing is asked for at the line, with the reference’s figure and its source', async () => {
  const { text } = await agent.get('/recipes/roast');
  expect(plain(text)).toMatch(/No density, so ml can't be turned into weight\. The reference has 0\.91\d+ g/);
  expect(plain(text)).toContain('(USDA SR28 04053');
  expect(text).toContain('href="/ingredients/oil/yield#density"');
});

test('CSV and JSON carry both ends, how each line scales and what straight would be', async () => {
  const { body } = await agent.get('/recipes/roast.json?portions=40');
  const rows = body.tables[0].rows as Record<string, string>[];
  expect(rows[1]).toMatchObject({ amount: '12', least: '8', base: '3', baseLeast: '2', unit: 'clove' });
  expect(rows[2]).toMatchObject({ amount: '30', scales: 'herb', straight: '40' });
  expect(rows[5]).toMatchObject({ amount: '260', base: '65', unit: 'g' });
  expect((await agent.get('/recipes/roast.csv?portions=40')).text).toContain('Lower end');
});

// Half of 2–3 cloves is 1–1½; at 3 g a clove, 1½ weigh 4.5 g.
test('part of a piece is said by its weight too', async () => {
  const { text } = await agent.get('/recipes/roast?portions=5');
  expect(plain(text)).toContain('as counted, 4.5 g');
  expect(plain((await agent.get('/recipes/roast')).text)).not.toContain('as counted,');
});
