import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  const lunch = kitchen.events.find(({ key }) => key === 'retirement-lunch')!;
  lunch.guests[0]!.name = 'Gwen <i>Abery</i>';
  lunch.guests[0]!.table = '10';
  lunch.guests[1]!.table = '2';
  const main = lunch.courses[1]!;
  main.service = 'shared';
  main.dishes[0]!.keptApart = 'second tray';
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());
const at = '/events/retirement-lunch/pass';
const course = (text: string, name: string) =>
  text
    .slice(text.indexOf(`<h2>${name}</h2>`))
    .split('</section>')[0]!
    .replace(/\s+/g, ' ');
const rowOf = (text: string, name: string) =>
  text
    .split('pass-row')
    .slice(1)
    .find((row) => row.includes(name))!;

test('by course and table: who gets what, what not and because of what', async () => {
  const { text, status } = await agent.get(at);
  expect(status).toBe(200);
  const starter = course(text, 'Starter');
  expect(starter.indexOf('Tom Lisle')).toBeLessThan(starter.indexOf('Gwen'));
  expect(starter.indexOf('Gwen')).toBeLessThan(starter.indexOf('Priya'));
  expect(rowOf(starter, 'Gwen &lt;i&gt;Abery')).toMatch(
    /table <\/span>10<.*gets <b>Hummus with carrot sticks<\/b>/,
  );
  expect(rowOf(starter, 'Tom Lisle')).toMatch(
    /Not<\/b> Smoked mackerel pâté with toast \(White bread, sliced\)/,
  );
  expect(rowOf(course(text, 'Pudding'), 'Gwen')).toContain('Nothing here for them.');
});

test('of a buffet an allergy gets only what is kept apart, and how many are kept back is counted', async () => {
  const main = course((await agent.get(at)).text, 'Main');
  expect(rowOf(main, 'Tom Lisle')).toMatch(/gets <b>Chicken[^<]*\(kept back: second tray\)<\/b>/);
  expect(rowOf(main, 'Tom Lisle')).toMatch(/Not known, treat as contains: [^<]*not kept apart/);
  expect(main).toMatch(/kept back<\/div><p>Chicken[^<]*: 1 for Tom Lisle, second tray/);
});

test('who has not answered is there to be asked, also those without a name', async () => {
  const { text } = await agent.get(at);
  expect(rowOf(text, 'Oskar Venn')).toContain('Has not answered: ask before serving.');
  expect(text).toContain('1 more guest has not answered: ask before serving.');
});

test('it says that it stays in the kitchen', async () => {
  const { text } = await agent.get(at);
  expect(text).toContain('What guests eat is private. This page and its paper are for the kitchen');
  expect(text).toMatch(/running-foot">[^<]*Keep it in the kitchen/);
});

test('the same answer as CSV and JSON', async () => {
  const { body } = await agent.get(`${at}.json`);
  const tom = body.tables[0].rows.find((row: { guest: string }) => row.guest === 'Tom Lisle');
  expect(tom).toMatchObject({ course: 'Starter', atTable: '2', gets: 'Hummus with carrot sticks' });
  expect((await agent.get(`${at}.csv`)).text).toContain('Starter,13:00,2,Tom Lisle');
  expect((await agent.get('/events/no-such/pass')).status).toBe(404);
});
