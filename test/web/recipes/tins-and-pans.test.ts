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

const formAt = async (url: string) => fieldsOf((await agent.get(url)).text);
const recipe = async (key: string) => (await read(agent.db, 'recipe', key))!.doc;
const home = async () => (await read(agent.db, 'place', 'home'))!.doc;

test('a form sent back as drawn loses no tin, no litres and no pan', async () => {
  for (const key of ['shortbread', 'vegetable-stock', 'mash']) {
    const before = await recipe(key);
    const url = `/recipes/${key}/edit`;
    expect((await agent.post(url, await formAt(url))).status).toBe(303);
    expect(await recipe(key)).toEqual(before);
  }
  const before = await home();
  expect((await agent.post('/places/home', await formAt('/places/home'))).status).toBe(303);
  expect(await home()).toEqual(before);
});

test('a tin and the litres of a step are typed in, in inches and quarts too', async () => {
  const url = '/recipes/lemon-posset/edit';
  const tin = { 'tin.shape': 'ring', 'tin.sides': '9½ x 3 in', 'tin.depth': '2', 'tin.count': '3' };
  await agent.post(url, { ...(await formAt(url)), ...tin, 'steps[0].pan': '2.5 L' });
  const { tin: kept, steps } = await recipe('lemon-posset');
  expect(kept).toEqual({ shape: 'ring', diameter: '9.5', hole: '3', unit: 'in', depth: '2', count: 3 });
  expect(steps[0]!.pan).toBe('2.5');
  expect((await agent.get(url)).text).toContain('value="9 1/2 × 3 in"');
  await agent.post(url, { ...(await formAt(url)), 'tin.sides': '', 'tin.depth': '', 'tin.count': '' });
  expect((await recipe('lemon-posset')).tin).toBeNull();
});

test('what can’t be a tin stays as typed, with its sentence', async () => {
  const url = '/recipes/shortbread/edit';
  const wrong = await agent.post(url, { ...(await formAt(url)), 'tin.sides': '20', 'steps[0].pan': '5 kg' });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('Enter the inside of the tin, such as 20 x 30 cm. You entered 20.');
  expect(wrong.text).toContain('Enter a volume, such as 2 l.');
  expect(wrong.text).toMatch(/id="tin"><div class="gutter">fix this/);
  const lost = await agent.post(url, { ...(await formAt(url)), 'tin.sides': '' });
  expect(lost.text).toContain('Enter the inside of the tin');
});

test('pans are added, changed and taken out of a place', async () => {
  const url = '/places/ash-cottage';
  const added = fieldsOf((await agent.post(url, { ...(await formAt(url)), do: 'add:pans' })).text);
  const filled = { ...added, 'pans[0].name': 'Jam pan <b>', 'pans[0].litres': '8 quarts' };
  const wrong = await agent.post(url, { ...filled, 'pans[0].litres': 'big', 'pans[0].count': '0' });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('value="big"');
  expect(wrong.text).toContain('must be between 1 and 100');
  expect(wrong.text).not.toContain('Jam pan <b>');
  expect((await agent.post(url, filled)).status).toBe(303);
  const { doc } = (await read(agent.db, 'place', 'ash-cottage'))!;
  // The kitchen means metric cups, and with them imperial quarts: 8 × 1.1365225 L.
  expect(doc.pans).toEqual([{ key: 'p1', name: 'Jam pan <b>', litres: '9.09218', count: 1 }]);
  const zero = await agent.post(url, { ...(await formAt(url)), 'pans[0].litres': '0' });
  expect(zero.status).toBe(422);
});
