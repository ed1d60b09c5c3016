import { afterAll, beforeAll, expect, test } from 'vitest';
import { ingredient } from '../../../src/core/facts/ingredient.js';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

const script = '<script>alert(1)</script>';
let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.ingredients.push(ingredient.parse({ key: 'zz', name: script, section: script, note: script }));
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

const stored = async (key: string) => (await read(agent.db, 'ingredient', key))?.doc;
const plain = (html: string) => html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

test('the list says what each costs, how much is eaten and what its label says', async () => {
  const { text, status } = await agent.get('/ingredients');
  expect(status).toBe(200);
  const said = plain(text);
  for (const words of [
    '£0.90 a kg Onion Vegetables 5 kg, £4.50',
    '90% eaten',
    'label read 12 Nov',
    'label not read',
  ])
    expect(said, words).toContain(words);
  expect(said).toContain('2 ingredients have something missing');
  expect(text).not.toContain('<script>alert');
});

test('what lacks something stands behind a link; a part of a name narrows the list', async () => {
  const missing = (await agent.get('/ingredients?missing=yes')).text;
  expect(missing.match(/class="dish bare"/g)).toHaveLength(2);
  expect(missing).toContain('Horseradish sauce, jar');
  const part = await agent.get('/ingredients?q=CR%C3%88').set('hx-request', 'true');
  expect(part.text).toContain('Crème fraîche');
  expect(part.text).not.toContain('<!doctype');
});

test('an ingredient shows all its facts with their sources and where it is used', async () => {
  const said = plain((await agent.get('/ingredients/butter')).text);
  for (const words of [
    '£2.25 on Fri 27 Nov 2026',
    'Earlier prices',
    '£2.05 on Fri 18 Sept 2026',
    'lines are priced at this pack',
    'USDA SR28 01145, cup 227 g',
    'Milk , contains, label read on Fri 27 Nov 2026, R.T.',
    'Shortcrust pastry',
    'is dairy',
    '60 days unopened',
  ])
    expect(said, words).toContain(words);
});

test('what is not known is said loudest', async () => {
  const { text } = await agent.get('/ingredients/horseradish-sauce');
  expect(plain(text)).toContain('All 14 , not known: treat as contains');
  expect(text).toContain('href="/ingredients/horseradish-sauce/label#allergens"');
  const odd = await agent.get('/ingredients/zz');
  expect(odd.text).not.toContain('<script>alert');
  expect(plain(odd.text)).toContain('No pack yet.');
});

test('a new ingredient needs a name only, and takes the reference’s figures where they are chosen', async () => {
  const form = fieldsOf((await agent.get('/ingredients/new')).text);
  expect(form).toMatchObject({ yield: '100 %', yieldSource: 'as weighed', date: '14 Oct 2026' });
  const looked = await agent
    .post('/ingredients/new/reference', { ...form, name: 'Parsnips' })
    .set('hx-request', 'true');
  expect(looked.text).toContain('value="parsnip"');
  expect(looked.text).not.toContain('<!doctype');
  const whole = await agent.post('/ingredients/new', { ...form, name: 'Parsnips', do: 'look' });
  expect(whole.text).toContain('value="parsnip"');
  const saved = await agent.post('/ingredients/new', {
    ...form,
    name: 'Parsnips',
    section: 'Vegetables',
    size: '2.5 kg',
    price: '£3.40',
    guess: 'on',
    reference: 'parsnip',
  });
  expect(saved.headers.location).toMatch(/^\/ingredients\/parsnips\?saved=\d+$/);
  expect(await stored('parsnips')).toMatchObject({
    packs: [
      {
        size: { amount: '2.5', unit: 'kg' },
        preferred: true,
        prices: [{ date: '2026-10-14', price: 340, guess: true }],
      },
    ],
    edibleYield: { yield: '0.85', source: expect.stringContaining('USDA SR28 11298') },
    allergens: {},
  });
});

test('what can’t be read is kept and said, and a name that is taken links to who has it', async () => {
  const form = fieldsOf((await agent.get('/ingredients/new')).text);
  const wrong = await agent.post('/ingredients/new', {
    ...form,
    name: '',
    price: '3',
    yield: '720 %',
    date: '1 Jan 2027',
  });
  expect(wrong.status).toBe(422);
  for (const words of [
    'Enter what the ingredient is called.',
    'Enter what one pack of that price holds',
    'You entered 720 %. Did you mean 72?',
    'still to come',
    'value="720 %"',
  ])
    expect(wrong.text, words).toContain(words);
  const zero = await agent.post('/ingredients/new', { ...form, name: 'Air', yield: '0' });
  expect(zero.text).toContain('nothing of it can be eaten');
  const swells = await agent.post('/ingredients/new', { ...form, name: 'Bulgur', yield: '3.05' });
  expect(swells.status).toBe(303);
  expect((await stored('bulgur'))?.edibleYield?.yield).toBe('3.05');
  const taken = await agent.post('/ingredients/new', { ...form, name: ' LEEK ' });
  expect([taken.status, taken.text.includes('href="/ingredients/leek"')]).toEqual([422, true]);
});

test('what is used stays, archived or not; what nothing uses can go', async () => {
  const leek = await agent.get('/ingredients/leek/archive');
  expect(leek.text).toContain('href="/recipes/leek-tartlets"');
  expect(leek.text).not.toContain('>Remove Leek</button>');
  const { revision } = fieldsOf(leek.text);
  expect((await agent.post('/ingredients/leek/remove', { revision: revision! })).status).toBe(409);
  expect((await agent.post('/ingredients/leek/archive', { revision: revision! })).status).toBe(303);
  expect((await agent.get('/ingredients')).text).not.toContain('>Leek<');
  expect((await agent.get('/ingredients?archived=yes')).text).toContain('>Leek<');
  const gone = await agent.post(
    '/ingredients/zz/remove',
    fieldsOf((await agent.get('/ingredients/zz/archive')).text),
  );
  expect(gone.headers.location).toMatch(/^\/ingredients\?saved=/);
});

test('an ingredient that is not there is not found', async () => {
  for (const url of ['', '/packs', '/label', '/archive'])
    expect((await agent.get(`/ingredients/none${url}`)).status).toBe(404);
  expect((await agent.post('/ingredients/none/packs', {})).status).toBe(404);
});
