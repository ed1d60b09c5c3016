import { afterAll, beforeAll, expect, test } from 'vitest';
import { recipe } from '../../../src/core/facts/recipe.js';
import { dish, food, pack } from '../../core/small.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

/*
 * Rice at 2.00 a kilo: 1 kg for 10 portions is 20p each. With 10 g of saffron that has no price nobody knows what a
 * risotto costs. Stock, 2 kg of bones at 1.50 for 4 litres, is 75p a litre.
 */
let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.ingredients.push(
    food('rice', pack('1 kg at 200')),
    food('saffron-threads'),
    food('bones', pack('1 kg at 150')),
  );
  kitchen.recipes.push(
    dish('plain-rice', '10 portions', ['1 kg rice']),
    dish('rice-for-two', '1 portion', ['2 portion @plain-rice']),
    dish('risotto', '10 portions', ['1 kg rice', '10 g saffron-threads']),
    dish('bone-stock', '4 l', ['2 kg bones']),
    recipe.parse({ key: 'idea', name: 'An idea', yield: { portions: '4' } }),
  );
  for (const list of [kitchen.ingredients, kitchen.recipes]) list.sort((a, b) => (a.key < b.key ? -1 : 1));
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

const listed = async (name: string) => {
  const { text } = await agent.get('/recipes');
  const row = text.split('<li ').find((one) => one.includes(`>${name}</a>`));
  return row?.replace(/<[^>]*>/g, '').replace(/\s+/g, ' ');
};

test('each recipe with what a portion, kilo or litre costs; what isn’t known says why', async () => {
  expect(await listed('Plain rice')).toContain('£0.20 a portion, in 1 recipe');
  expect(await listed('Rice for two')).toContain('£0.40 a portion');
  expect(await listed('Bone stock')).toContain('£0.75 a litre');
  expect(await listed('Risotto')).toContain('not known: no price for Saffron threads');
  expect(await listed('An idea')).toContain('no lines yet');
});

test('a portion costs in the list what it costs on the page of each recipe', async () => {
  const { text } = await agent.get('/recipes');
  const rows = [
    ...text.matchAll(/href="(\/recipes\/[^"]+)">[^<]*<\/a> <span class="second">(£[\d.,]+) a portion/g),
  ];
  expect(rows.length).toBeGreaterThan(10);
  for (const [, href, cost] of rows) expect((await agent.get(href!)).text).toContain(`${cost} a portion`);
});

test('a saved price is in the list at once, and before it is saved one sees what it moves', async () => {
  const page = await agent.get('/ingredients/rice/packs');
  const form = { ...fieldsOf(page.text), 'packs[0].price': '3.00', 'packs[0].date': '14 Oct 2026' };
  const asked = await agent.post('/ingredients/rice/packs', { ...form, do: 'moves' });
  expect(asked.text).toContain('Moves 2 recipes; most: Rice for two, £0.40 → £0.60 a portion.');
  expect(await listed('Plain rice')).toContain('£0.20 a portion');
  const unread = await agent.post('/ingredients/rice/packs', {
    ...form,
    'packs[0].price': 'dear',
    do: 'moves',
  });
  expect(unread.text).toContain('can’t be read yet');
  expect((await agent.post('/ingredients/rice/packs', form)).status).toBe(303);
  expect(await listed('Plain rice')).toContain('£0.30 a portion');
  const same = { ...fieldsOf((await agent.get('/ingredients/rice/packs')).text), do: 'moves' };
  expect((await agent.post('/ingredients/rice/packs', same)).text).toContain('Moves no recipe’s cost.');
});
