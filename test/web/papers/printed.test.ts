import { afterAll, beforeAll, expect, test } from 'vitest';
import { prints } from '../../../src/store/printed-sheets.js';
import { exportWorkbook } from '../../../src/store/workbook.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

// On Wed 14 Oct at 10:20 the allergen sheet of the lunch is printed. Then the label of the tahini, which is in the hummus
// and nowhere else of that menu, is forgotten: the sheet no longer holds, and says that it is the hummus.
let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());
const event = '/events/retirement-lunch';
const print = (sheet: string, more: Record<string, string | string[]> = {}) =>
  agent.post(`${event}/printed`, { sheet, ...more });

const renameHummus = async (name: string) => {
  const { db } = agent;
  const { edit } = await import('../../../src/store/changes.js');
  const [recipe] = (await exportWorkbook(db))!.recipes.filter((one) => /Hummus/.test(one.name));
  const { read } = await import('../../../src/store/documents.js');
  const stored = (await read(db, 'recipe', recipe!.key))!;
  await edit(db, 'recipe', recipe!.key, {
    revision: stored.revision,
    change: (doc) => ({ ...doc, name }),
    who: 'test',
    at: new Date('2026-10-14T09:25:00Z'),
  });
};

test('a paper is noted as printed, by whom and when, and its page prints it', async () => {
  const posted = await print('allergens');
  expect(posted.status).toBe(303);
  expect(posted.headers.location).toBe(`${event}/allergens?printing=1`);
  const page = await agent.get(posted.headers.location!);
  expect(page.text).toContain('data-print-now');
  const [kept] = await prints(agent.db, ['retirement-lunch']);
  expect(kept).toMatchObject({ sheet: 'allergens', who: 'the owner', at: '2026-10-14T09:20:00Z' });
  expect((await agent.get(`${event}/allergens`)).text).toContain(
    'Printed Wed 10:20 by the owner; it still holds.',
  );
});

test('what is kept of it names no guest and no diet', async () => {
  await print('pass');
  const text = JSON.stringify(await prints(agent.db, ['retirement-lunch']));
  expect(text).toContain('Hummus with carrot sticks');
  expect(text).not.toMatch(/Gwen|Tom|vegan|coeliac|pescatarian/);
});

test('once a dish changed, the event, the sheet and the week say which', async () => {
  await renameHummus('Hummus on leaves');
  const said =
    'The allergen sheet printed Wed 10:20 no longer holds: Gwen Abery, Tom Lisle, Priya Sandell and 2 more changed; Hummus on leaves is new on it; Hummus with carrot sticks is gone from it.';
  expect((await agent.get(event)).text).toContain(said);
  expect((await agent.get(`${event}/allergens`)).text).toContain(said);
  expect((await agent.get('/?from=2026-12-02')).text).toContain(said);
  expect((await agent.get(event)).text).toContain('The list for the pass printed Wed 10:20 no longer holds');
});

test('printed again it holds again', async () => {
  await print('allergens');
  await print('pass');
  expect((await agent.get(event)).text).not.toContain('no longer holds');
});

test('of cards those chosen alone are noted, so another dish does not put them out of date', async () => {
  const { text } = await agent.get(`${event}/allergens/table`);
  const beans = [...text.matchAll(/name="d" value="([^"]+)"/g)].map(([, id]) => id!)[5]!;
  const posted = await print('table-cards', { d: [beans], n: ['3'] });
  expect(posted.headers.location).toBe(`${event}/allergens/table?d=${beans}&n=3&printing=1`);
  await renameHummus('Hummus once more');
  const page = (await agent.get(`${event}/allergens/table`)).text;
  expect(page).toContain('it still holds');
  expect((await agent.get(event)).text).not.toContain('sheet of table cards');
});

test('a number of cards that is none is not printed', async () => {
  const { text } = await agent.get(`${event}/allergens/table`);
  const beans = [...text.matchAll(/name="d" value="([^"]+)"/g)].map(([, id]) => id!)[5]!;
  const posted = await print('table-cards', { d: [beans], n: ['many'] });
  expect(posted.headers.location).not.toContain('printing');
  expect((await agent.get(posted.headers.location!)).status).toBe(422);
});

test('no such paper, no such event', async () => {
  expect((await print('menu')).status).toBe(400);
  expect((await agent.post('/events/no-such/printed', { sheet: 'allergens' })).status).toBe(404);
});

test('the workbook file carries the prints', async () => {
  const printed = (await exportWorkbook(agent.db))!.printedSheets;
  expect(printed.map(({ sheet }) => sheet)).toEqual(['allergens', 'pass', 'table-cards']);
  const other = await agentOn((await exportWorkbook(agent.db))!);
  expect((await exportWorkbook(other.db))!.printedSheets).toEqual(printed);
  await other.close();
});
