import { afterEach, beforeEach, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeEach(async () => {
  const kitchen = exampleKitchen();
  const tea = kitchen.events.find(({ key }) => key === 'birthday-tea')!;
  tea.guests.find(({ key }) => key === 'dot')!.name = '<b>Dot</b>';
  agent = await agentOn(kitchen);
});
afterEach(() => agent.close());

const at = '/events/birthday-tea/guests/forget';
const form = async () => fieldsOf((await agent.get(at)).text, at);
const guests = async () => (await read(agent.db, 'event', 'birthday-tea'))!.doc.guests;

test('the page lists whose, what goes and what stays, and says before that it cannot be undone', async () => {
  const { text, status } = await agent.get(at);
  expect(status).toBe(200);
  expect(text).toContain('<b>June Askerby</b>: vegan');
  expect(text).toContain('<b>4 guests</b>: vegetarian');
  expect(text).toContain('This party is still to come');
  expect(text).toContain('soft food only, please');
  expect(text).toContain('in the list of this event');
  expect(text).toContain('This cannot be undone.');
  expect(text).toContain('traces in the database’s own files');
  expect(text).toContain('&lt;b&gt;Dot&lt;/b&gt;');
  expect(text).not.toContain('<b>Dot</b>');
  expect((await agent.get('/events/birthday-tea/guests/diets')).text).toContain(`href="${at}"`);
  expect((await agent.get('/events/no-such/guests/forget')).status).toBe(404);
  expect((await agent.post('/events/no-such/guests/forget', { guests: 'x' })).status).toBe(404);
});

test('all of a party are forgotten at once, and nothing of it is on any page after', async () => {
  const diets = '/events/birthday-tea/guests/diets';
  await agent.post(diets, { ...fieldsOf((await agent.get(diets)).text, diets), eatsAll: '26' });
  const answer = await agent.post(at, await form());
  expect(answer.status).toBe(303);
  expect(answer.headers.location).toBe(`${diets}?forgot=4&saves=1&files=0`);
  const { text } = await agent.get(answer.headers.location!);
  expect(text).toContain('What 4 guests eat is forgotten, also in 1 save of the history and 0 backups.');
  expect((await guests()).map(({ answered, diets, other }) => [answered, diets, other])).toEqual(
    Array.from({ length: 4 }, () => [false, [], '']),
  );
  for (const page of [
    '/history/event/birthday-tea',
    '/events/birthday-tea/allergens',
    '/workbook.json',
    at,
  ]) {
    const { text } = await agent.get(page);
    const own = page.endsWith('.json') ? JSON.stringify(JSON.parse(text).events[0]) : text;
    expect(own, page).not.toMatch(/soft food|no-eggs/);
  }
  expect((await agent.get('/events/birthday-tea')).text).toContain('have not answered about diet');
});

test('one guest alone, with the name', async () => {
  await agent.post(at, { guests: 'june', names: 'on' });
  const left = await guests();
  expect(left.map(({ name, diets }) => [name, diets])).toEqual([
    ['', ['vegetarian']],
    ['', []],
    ['Milo Varley', ['no-milk', 'no-eggs']],
    ['<b>Dot</b>', []],
  ]);
  expect(left[1]).toMatchObject({ key: 'forgotten-1', answered: false });
});

test('with nobody ticked it says what to do and forgets nothing', async () => {
  const { status, text } = await agent.post(at, { names: 'on' });
  expect(status).toBe(422);
  expect(text).toContain('Tick the guests whose diets are to be forgotten.');
  expect(text).toMatch(/name="names"[^>]* checked/);
  expect((await guests())[1]!.diets).toEqual(['vegan']);
});

test('a done party offers it, and then says that nobody knows, not that all were covered', async () => {
  const { revision } = (await read(agent.db, 'event', 'birthday-tea'))!;
  const edit = '/events/birthday-tea/edit';
  const sent = { ...fieldsOf((await agent.get(edit)).text, edit), state: 'done', revision: String(revision) };
  expect((await agent.post(edit, sent)).status).toBe(303);
  expect((await agent.get('/events/birthday-tea')).text).toContain(`href="${at}">Forget what its guests eat`);
  expect((await agent.get(at)).text).not.toContain('still to come');
  await agent.post(at, await form());
  const { text } = await agent.get('/events/birthday-tea/allergens');
  expect(text).not.toContain('Ask today');
  expect(text).toMatch(/June Askerby[\s\S]*?Not known/);
});

test('removing an event says that the history keeps what its guests eat', async () => {
  const { text } = await agent.get('/events/birthday-tea/remove');
  expect(text).toContain(`<a href="${at}">forget it first</a>`);
});

test('a diet of the kitchen’s own stands there by its name', async () => {
  const avoids = { avoidsTraits: [], avoidsAllergens: [], avoidsIngredients: ['garlic'] };
  const own = exampleKitchen();
  own.kitchen.diets.push({ key: 'no-alliums', name: 'no <i>alliums</i>', kind: 'medical', ...avoids });
  own.events.find(({ key }) => key === 'birthday-tea')!.guests[0]!.diets.push('no-alliums');
  const other = await agentOn(own);
  const { text } = await other.get(at);
  expect(text).toContain('vegetarian, no &lt;i&gt;alliums&lt;/i&gt;');
  await other.close();
});
