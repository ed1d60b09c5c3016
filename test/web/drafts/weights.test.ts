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

const text =
  'Onion oil\nServes 4\nIngredients\n900 g onion\n500 ml olive oil\nMethod\nSimmer for 20 minutes.';
const begin = async (name: string): Promise<string> =>
  String((await agent.post('/recipes/read', { text: `${name}\n${text}` })).headers.location);
const form = async (address: string) => fieldsOf((await agent.get(address)).text, address);

// Of an onion 90 per cent is eaten: 900 g are 810 g to eat, or 1 kg to buy.
test('which weight of onions is meant is asked, and the answer is kept', async () => {
  for (const [stated, cost] of [
    ['bought', '900'],
    ['prepared', '1000'],
  ] as const) {
    const address = await begin(`Onion oil ${stated}`);
    const page = (await agent.get(address)).text;
    expect(page).toContain('Whether that is the weight as bought or of the part that is eaten is not said.');
    expect(page).toContain('900 g as bought');
    expect((await agent.post(address, await form(address))).status).toBe(422);
    await agent.post(address, { ...(await form(address)), do: `stated:0:${stated}` });
    const sent = await agent.post(address, await form(address));
    const made = String(sent.headers.location);
    const key = made.split('?')[0]!.split('/').at(-1)!;
    expect((await read(agent.db, 'recipe', key))!.doc.lines[0]).toMatchObject({ amount: '900', stated });
    const sheet = (await agent.get(`/recipes/${key}.json`)).body;
    expect(sheet.tables[0].rows[0]).toMatchObject({ item: 'Onion', bought: cost });
  }
});

test('one who said in the fields which weight it is, is not asked', async () => {
  const address = await begin('Onion oil');
  await agent.post(address, { ...(await form(address)), 'lines[0].stated': 'bought', do: 'add:lines' });
  expect((await agent.get(address)).text).not.toContain('Whether that is the weight as bought');
});

// "or thereabouts" leaves the line in doubt; choosing its ingredient must not settle which weight is meant as well.
test('of a line that is in doubt the weight is asked too, once its ingredient is chosen', async () => {
  const pasted = 'Stewed onions\nServes 4\nIngredients\n900 g onoins, or so\nMethod\nStew for 20 minutes.';
  const address = String((await agent.post('/recipes/read', { text: pasted })).headers.location);
  const opened = await form(address);
  expect((await agent.post(address, { ...opened, do: 'use:0:Onion' })).status).toBeLessThan(400);
  expect((await agent.get(address)).text).toContain('Whether that is the weight as bought');
});
