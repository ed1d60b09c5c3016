import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf, stored } from '../events/page.js';
import { kitchenWithTeas } from './held.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = kitchenWithTeas();
  const coming = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
  coming.costs = structuredClone(kitchen.events.find(({ key }) => key === 'tea-2026-09-12')!.costs);
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

// 27 of 38 tartlets eaten by 36 who came is 0.75; they would have had 32.5 portions, so a share of 83.08, up to 84.
test('what the last parties taught, each with how many it rests on', async () => {
  const { text } = await agent.get('/averages');
  expect(text).toContain('0.75');
  expect(text).toContain('nothing was left, so more might have been eaten');
  // 13.5 hours for 36 guests are 3.75 for ten.
  expect(text).toContain('3.8 h');
  expect(text).toContain('one party');
  const { body } = await agent.get('/averages.json');
  expect(body.tables[2].rows).toEqual([{ kind: 'hands', name: 'Serving', perTen: '3.75', parties: '1' }]);
});

test('the menu offers the share that was eaten, and takes it only when asked to', async () => {
  const menu = '/events/birthday-tea/menu';
  const { text } = await agent.get(menu);
  expect(text).toContain('One party: 0.75 portions a guest eaten.');
  expect(text).toContain('Use a share of 84%');
  const form = fieldsOf(text);
  expect(form['courses[0].dishes[1].who']).toBe('everybody');
  const used = fieldsOf((await agent.post(menu, { ...form, do: 'eaten:0:1' })).text);
  expect(used).toMatchObject({
    'courses[0].dishes[1].who': 'shares',
    'courses[0].dishes[1].part0': '84',
    'courses[0].dishes[1].part1': '84',
  });
  expect((await stored(agent, 'birthday-tea'))?.courses[0]?.dishes[1]?.eaters).toEqual({ everybody: true });
  await agent.post(menu, used);
  expect((await stored(agent, 'birthday-tea'))?.courses[0]?.dishes[1]?.eaters).toMatchObject({
    shares: [{ percent: '84' }, { percent: '84' }],
  });
});

// 38 guests at 3.75 for ten are 14.25 hours, of each of three 4.75.
test('the costs offer the hours that were worked, and take them only when asked to', async () => {
  const costs = '/events/birthday-tea/costs';
  const { text } = await agent.get(costs);
  expect(text).toContain('One party: 3.8 hours for ten guests; for 38 that is 4.75 h of each of 3.');
  const form = fieldsOf(text);
  const used = fieldsOf((await agent.post(costs, { ...form, do: 'worked:0' })).text);
  expect(used['costs[0].hours']).toBe('4.75');
  expect((await stored(agent, 'birthday-tea'))?.costs[0]?.by).toMatchObject({ hours: '4' });
});

test('a dish is given a price of its own, kept by a form that does not ask, and refused where it is none', async () => {
  const menu = '/events/birthday-tea/menu';
  const form = { ...fieldsOf((await agent.get(menu)).text), 'courses[0].dishes[0].price': '4.50' };
  expect((await agent.post(menu, form)).status).toBe(303);
  const priced = async () => (await stored(agent, 'birthday-tea'))?.courses[0]?.dishes[0]?.price;
  expect(await priced()).toBe(450);
  const { 'courses[0].dishes[0].price': _, ...without } = fieldsOf((await agent.get(menu)).text);
  await agent.post(menu, { ...without, 'courses[0].dishes[0].portion': '2' });
  expect(await priced()).toBe(450);
  const again = fieldsOf((await agent.get(menu)).text);
  const wrong = await agent.post(menu, { ...again, 'courses[0].dishes[0].price': 'dear' });
  expect(wrong.status).toBe(422);
  expect(fieldsOf(wrong.text)['courses[0].dishes[0].price']).toBe('dear');
});

test('a kitchen without parties behind it says what to do first', async () => {
  const bare = await agentOn({ ...kitchenWithTeas(), events: [] });
  expect((await bare.get('/averages')).text).toContain('Nothing to learn from yet');
  await bare.close();
});
