import { afterEach, beforeEach, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

const page = '/events/birthday-tea/costing/what-if';
const asking = (fields: Record<string, string>) => `${page}?${new URLSearchParams(fields)}`;

let agent: Agent;
beforeEach(async () => {
  agent = await agentOn(exampleKitchen());
});
afterEach(() => agent.close());

const party = async () => (await read(agent.db, 'event', 'birthday-tea'))!.doc;
const aGuest = (text: string) => text.split('A guest costs</th>')[1]!.match(/£\d+\.\d\d/g)![1]!;
const costing = async () => (await agent.get('/events/birthday-tea/costing')).text;

test('a head-count leads to its form, filled in, and costs what was said once it is saved', async () => {
  const { text } = await agent.get(asking({ 'if[0].guests': '41' }));
  const preview = '/events/birthday-tea/guests/preview';
  const form = await agent.post(preview, fieldsOf(text, preview));
  expect(form.status).toBe(200);
  expect((await party()).groups.map(({ guests }) => guests)).toEqual([30, 8]);
  const saved = await agent.post('/events/birthday-tea/guests', fieldsOf(form.text));
  expect(saved.status).toBe(303);
  expect((await party()).groups.map(({ guests }) => guests)).toEqual([32, 9]);
  expect(await costing()).toContain(aGuest(text));
});

test('a dish is left out, another portion saved, by the save of the menu; the rest of it stays', async () => {
  const before = await party();
  const menu = '/events/birthday-tea/menu';
  const out = (await agent.get(asking({ 'if[0].without': 'tea/hummus' }))).text;
  expect(out).toContain('Leave out Hummus with carrot sticks</button>');
  expect((await agent.post(menu, fieldsOf(out, menu))).status).toBe(303);
  const left = {
    ...before.courses[0]!,
    dishes: before.courses[0]!.dishes.filter(({ key }) => key !== 'hummus'),
  };
  expect((await party()).courses).toEqual([left]);
  expect(await costing()).toContain(aGuest(out));

  const size = (await agent.get(asking({ 'if[0].dish': 'tea/beef-rolls', 'if[0].portion': '120 g' }))).text;
  expect((await agent.post(menu, fieldsOf(size, menu))).status).toBe(303);
  const { dishes } = (await party()).courses[0]!;
  expect(dishes.find(({ key }) => key === 'beef-rolls')!.portion).toEqual({ amount: '120', unit: 'g' });
  expect(await costing()).toContain(aGuest(size));
});

test('another pack is taken by the save of the packs, which asks about the label first', async () => {
  const { text } = await agent.get(asking({ 'if[0].pack': 'butter/pack-2' }));
  const packs = '/ingredients/butter/packs';
  const asked = await agent.post(packs, fieldsOf(text, packs));
  const preferred = async () =>
    (await read(agent.db, 'ingredient', 'butter'))!.doc.packs.find((pack) => pack.preferred)!.key;
  expect(asked.status).toBe(422);
  expect(asked.text).toContain('is it the same label?');
  expect(await preferred()).toBe('pack-1');
  const saved = await agent.post(packs, { ...fieldsOf(asked.text, packs), relabel: 'same' });
  expect(saved.status).toBe(303);
  expect(await preferred()).toBe('pack-2');
  expect(await costing()).toContain(aGuest(text));
});

test('a price is entered when it is asked or paid, so it leads to where that is done', async () => {
  const { text } = await agent.get(asking({ 'if[0].ingredient': 'butter', 'if[0].percent': '8' }));
  expect(text).toContain('<a class="button text" href="/ingredients/butter/packs">');
});

test('what somebody else saved meanwhile is not lost: the menu merges as any other save', async () => {
  const menu = '/events/birthday-tea/menu';
  const { text } = await agent.get(asking({ 'if[0].without': 'tea/hummus' }));
  const other = (await agent.get(asking({ 'if[0].dish': 'tea/shortbread', 'if[0].portion': '60 g' }))).text;
  expect((await agent.post(menu, fieldsOf(other, menu))).status).toBe(303);
  expect((await agent.post(menu, fieldsOf(text, menu))).status).toBe(303);
  const { dishes } = (await party()).courses[0]!;
  expect(dishes.map(({ key }) => key)).toEqual(['beef-rolls', 'leek-tartlets', 'shortbread']);
  expect(dishes[2]!.portion).toEqual({ amount: '60', unit: 'g' });
});

test('a party that is done stays as it was served', async () => {
  const kitchen = exampleKitchen();
  await agent.close();
  const { places, ingredients, recipes } = kitchen;
  const tea = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
  tea.state = 'done';
  tea.served = { date: tea.date, kitchen: kitchen.kitchen, places, ingredients, recipes };
  agent = await agentOn(kitchen);
  const { text, status } = await agent.get(asking({ 'if[0].guests': '41' }));
  expect(status).toBe(200);
  expect(text).toContain('stays as it was served');
  expect(text).not.toContain('Work it out');
});
