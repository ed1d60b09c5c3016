import { afterAll, beforeAll, expect, test } from 'vitest';
import { emptyKitchen, exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
let empty: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
  empty = await agentOn(emptyKitchen());
});
afterAll(async () => {
  await agent.close();
  await empty.close();
});

const send = (to: Agent, text: string) => to.upload('/csv', { name: 'file', filename: 'table.csv', text });
const bring = async (to: Agent, text: string) => {
  const address = (await send(to, text)).headers.location!;
  const page = await to.get(address);
  return { address, page, taken: await to.post(address, fieldsOf(page.text, address)) };
};

test('three tables leave, come back into an empty kitchen, and leave as the same bytes', async () => {
  const tables = ['/ingredients.csv', '/prices.csv', '/recipes.csv'];
  for (const address of tables) {
    const file = await agent.get(address);
    expect(file.headers['content-type']).toContain('text/csv');
    const { page, taken } = await bring(empty, file.text);
    expect(page.text).toContain('Take over');
    expect(taken.status).toBe(303);
    const again = await send(agent, file.text);
    expect((await agent.get(again.headers.location!)).text).toContain('Nothing would change');
  }
  for (const address of tables) expect((await empty.get(address)).text).toBe((await agent.get(address)).text);
});

test('a changed cell is shown before and after, taken over, and taken back with one Undo', async () => {
  const before = (await agent.get('/ingredients.csv')).text;
  const { page, taken } = await bring(agent, 'key,section\r\nleek,<b>Greens</b>\r\nplain-flour,Dry\r\n');
  expect(page.text).toContain('&lt;b&gt;Greens&lt;/b&gt;');
  expect(page.text).not.toContain('<b>Greens');
  expect(page.text).toContain('Section');
  const receipt = await agent.get(taken.headers.location!);
  expect(receipt.text).toContain('2 ingredients together');
  await agent.post(/action="(\/undo\/together\/\d+)"/.exec(receipt.text)![1]!);
  const after = (await agent.get('/ingredients.csv')).text;
  expect(after).toBe(before);
});

test('one refused row keeps all of it out, and says its line', async () => {
  const { address } = await bring(agent, 'key,name,note\r\nnew-thing,New thing,fine\r\nbad key,Bad,\r\n');
  const page = await agent.get(address);
  expect(page.text).toContain('Something must be mended first');
  expect(page.text).toContain('<b class="figure">3</b>');
  expect(page.text).not.toContain('form="take-over"');
  expect((await agent.post(address, fieldsOf(page.text, address))).status).toBe(409);
  expect((await agent.get('/ingredients/new-thing')).status).toBe(404);
});

test('what changed between looking and taking over is seen', async () => {
  const address = (await send(agent, 'key,note\r\nleek,mine\r\n')).headers.location!;
  const page = await agent.get(address);
  await bring(agent, 'key,note\r\nleek,theirs\r\n');
  const late = await agent.post(address, fieldsOf(page.text, address));
  expect(late.status).toBe(409);
  expect(late.text).toContain('Nothing was taken over.');
});

test('another file, an empty one and a draft that is not kept are said to be so', async () => {
  expect((await send(agent, '')).status).toBe(422);
  const other = await agent.get((await send(agent, 'a,b\r\n1,2\r\n')).headers.location!);
  expect(other.status).toBe(422);
  expect(other.text).toContain('names none of the columns');
  expect((await agent.get('/csv/nosuch')).status).toBe(404);
  expect((await agent.post('/csv/nosuch')).status).toBe(404);
});
