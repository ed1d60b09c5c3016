import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const said = async (url: string) =>
  (await agent.get(url)).text
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .replaceAll('&#39;', "'");

test('a weight in all, with what whole batches leave over', async () => {
  expect(await said('/recipes/hummus?total=5.5+kg')).toContain('5.50 kg , which is × 2.50 base.');
  const whole = await said('/recipes/hummus?total=5.5+kg&whole=on');
  expect(whole).toContain('6.60 kg , which is × 3.00 base.');
  expect(whole).toContain('3 batches, 1.10 kg left over.');
});

// 800 g of carrot sticks are 800 / 0.89 g bought; 3.2 kg bought × 0.89 / 0.8 = 3.56 batches, prepared 4.
test('by what is at hand, as bought or prepared, and whole batches of it rounded down', async () => {
  const bought = await said('/recipes/hummus?have=3.2+kg&of=carrot');
  expect(bought).toContain('× 3.56 base');
  expect(bought).toContain('As far as 3.2 kg of Carrot, as bought, goes.');
  expect(await said('/recipes/hummus?have=3.2+kg&of=carrot&as=prepared')).toContain('× 4.00 base');
  const whole = await said('/recipes/hummus?have=3.2+kg&of=carrot&whole=on');
  expect(whole).toContain('× 3.00 base');
  expect(whole).toContain('3 batches, and what would make 1.23 kg more is left.');
});

test('through components, and by whole pieces', async () => {
  const { body } = await agent.get('/recipes/lentil-pie.json?have=1.5+kg&of=green-lentils');
  expect(body.about.factor).toBe('8/3');
  const tins = await said('/recipes/hummus?have=7+tins&of=tinned-chickpeas');
  expect(tins).toContain('× 1.40 base');
});

// One tin of 20 × 30 cm; two round ones of 25 cm are 981.75 / 600 = 1.636 batches.
test('by tin, and an amount in a tin that it does not fit', async () => {
  const byTin = await said('/recipes/shortbread?tin=round&sides=25+cm&tins=2');
  expect(byTin).toContain('× 1.64 base');
  expect(byTin).toContain('2 round tins of 25 cm, filled as deep as the recipe’s own.');
  expect(await said('/recipes/shortbread?tins=3')).toContain('× 3.00 base');
  const deep = await said('/recipes/shortbread?portions=72&tin=square&sides=20&deep=4');
  expect(deep).toContain(
    'In 1 square tin of 20 cm it stands 3 times as deep as in the recipe’s own; the time no longer holds.',
  );
  expect(deep).toContain('would have to be 9 cm deep and is 4 cm: it would overflow.');
  expect(deep).not.toContain('Look at the tin');
  expect(await said('/recipes/shortbread?portions=100')).toContain(
    '3 tins of 20 × 30 cm, the last 78% full.',
  );
});

test('a recipe without a tin says where to enter it', async () => {
  const { text } = await agent.get('/recipes/hummus');
  expect(text).toContain('href="/recipes/hummus/edit#tin"');
  const asked = await said('/recipes/hummus?tin=round&sides=20');
  expect(asked).toContain('the tin it is made in is not known');
  expect(asked).toContain('Add the tin');
});

test('pans that hold it, in goes where none does, and shelves in loads', async () => {
  expect(await said('/recipes/vegetable-stock?total=4.5+l')).toContain('Step 1: 7.50 L in Stockpot (10 L).');
  expect(await said('/recipes/vegetable-stock?total=12+l')).toContain(
    '20.00 L in Stockpot (10 L) and 2 × Braising pan (6 L).',
  );
  expect(await said('/recipes/vegetable-stock?total=18+l')).toContain(
    '30.00 L in 3 goes in Stockpot (10 L).',
  );
  const stew = await said('/recipes/beef-stew?portions=100');
  expect(stew).toContain('Step 2: 5 trays, in 2 loads of 3 shelves.');
  expect(stew).toContain('litres in the pan not said');
});

test('a roast by weight has a guide with its cautions; by portions it has none', async () => {
  const roast = await said('/recipes/beef-rolls?have=3.2+kg&of=topside-of-beef');
  expect(roast).toContain('3.20 kg of Topside of beef instead of 1.60 kg takes about 2 h to 2 h 25 min');
  expect(roast).toContain('Two pieces of 1.60 kg take as long as one.');
  expect(roast).toContain('A guide only');
  expect(roast).toContain('follow your local food-safety code');
  expect(roast).toMatch(/1 h 15/);
  expect(roast).not.toMatch(/\bsafe\b/i);
  for (const url of ['?portions=40', '?total=4+kg&whole=on', ''])
    expect(await said(`/recipes/beef-rolls${url}`)).not.toContain('Roasting, a guide');
});

test('CSV and JSON say it too, at the address of the page', async () => {
  const { text } = await agent.get('/recipes/shortbread?portions=100&whole=on');
  expect(text).toContain('href="/recipes/shortbread.json?portions=100&amp;whole=on"');
  const { body } = await agent.get('/recipes/shortbread.json?portions=100&whole=on');
  const table = body.tables.find(({ name }: { name: string }) => name === 'equipment');
  expect(table.rows).toEqual([
    { step: '', equipment: 'tins', needed: '3', unit: 'tin', said: '3 tins of 20 × 30 cm' },
    { step: '2', equipment: 'oven shelves', needed: '3', unit: 'shelf', said: '' },
  ]);
  expect(body.about).toMatchObject({ factor: '3', portions: '108' });
  const csv = await agent.get('/recipes/shortbread.csv?portions=300&sides=25&tin=round');
  expect(csv.text).toContain('the time no longer holds');
});
