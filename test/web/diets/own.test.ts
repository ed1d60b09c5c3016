import { afterEach, beforeEach, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

let agent: Agent;
beforeEach(async () => {
  agent = await agentOn(exampleKitchen());
});
afterEach(() => agent.close());

const at = '/diets';
const guestsAt = '/events/birthday-tea/guests/diets';
const form = async (address = at) => fieldsOf((await agent.get(address)).text, address);
const own = async () => (await read(agent.db, 'kitchen', 'kitchen'))!.doc.diets;
const noGarlic = {
  'diets[0].name': 'no <i>garlic</i>',
  'diets[0].kind': 'medical',
  'diets[0].avoidsIngredients': 'garlic',
  'diets[0].avoidsAllergens': ['celery'],
};
const make = async (more: object = {}) => {
  const added = await agent.post(at, { ...(await form()), do: 'add:diets' });
  return agent.post(at, { ...fieldsOf(added.text, at), ...noGarlic, ...more });
};

test('the page says what every diet avoids, its cautions, and the list in force with clauses and exceptions', async () => {
  const { status, text } = await agent.get(at);
  expect(status).toBe(200);
  expect(text).toContain('animal rennet');
  expect(text).toContain('In pregnancy people are usually told to leave out alcohol');
  expect(text).toContain('Annex II, 12');
  expect(text).toContain('Except fish gelatine used as carrier for vitamin');
  expect(text).toContain('no more than 20 mg/kg');
  expect((await agent.get('/kitchen')).text).toContain('href="/diets"');
  expect((await agent.get(guestsAt)).text).toContain('href="/diets"');
});

test('a diet of one’s own is made, a guest has it, and who can eat what follows it', async () => {
  const saved = await make();
  expect(saved.status).toBe(303);
  expect(saved.headers.location).toMatch(/^\/diets\?saved=\d+$/);
  expect(await own()).toEqual([
    {
      key: 'no-i-garlic-i',
      name: 'no <i>garlic</i>',
      kind: 'medical',
      avoidsTraits: [],
      avoidsAllergens: ['celery'],
      avoidsIngredients: ['garlic'],
    },
  ]);
  const sent = { ...(await form(guestsAt)), 'guests[1].diets': ['no-i-garlic-i'] };
  expect((await agent.post(guestsAt, sent)).status).toBe(303);
  const { text } = await agent.get('/events/birthday-tea/allergens');
  expect(text).toContain('no &lt;i&gt;garlic&lt;/i&gt;');
  expect(text).not.toContain('<i>garlic');
  expect(text).toMatch(/June Askerby[\s\S]*?<b>Hummus with carrot sticks<\/b>: no, because of Garlic/);
});

test('while a guest has it, it stays; then it can be taken out, and Undo brings it back', async () => {
  await make();
  const sent = { ...(await form(guestsAt)), 'guests[1].diets': ['no-i-garlic-i'] };
  await agent.post(guestsAt, sent);
  const out = async () => {
    const { text } = await agent.post(at, { ...(await form()), do: 'out:diets:0' });
    return agent.post(at, fieldsOf(text, at));
  };
  const refused = await out();
  expect(refused.status).toBe(422);
  expect(refused.text).toMatch(/A guest of [^<]+ has the diet &quot;no-i-garlic-i&quot;, so it stays\./);
  await agent.post(guestsAt, { ...(await form(guestsAt)), 'guests[1].diets': ['vegan'] });
  const done = await out();
  expect(done.status).toBe(303);
  expect(await own()).toEqual([]);
  const undo = /action="(\/undo\/\d+)"/.exec((await agent.get(done.headers.location!)).text)![1]!;
  expect((await agent.post(undo)).status).toBe(303);
  expect(await own()).toHaveLength(1);
});

test('what can’t be kept says why, with everything typed', async () => {
  const { status, text } = await make({ 'diets[0].name': 'Vegan', 'diets[0].avoidsIngredients': 'garlik' });
  expect(status).toBe(422);
  expect(text).toContain('No ingredient is called garlik. Did you mean Garlic?');
  expect(text).toContain('value="garlik"');
  const taken = await make({ 'diets[0].name': 'Vegan' });
  expect([taken.status, taken.text.includes('There is a diet called vegan already')]).toEqual([422, true]);
  const empty = await make({ 'diets[0].avoidsIngredients': '', 'diets[0].avoidsAllergens': [] });
  expect(empty.text).toContain('avoids nothing, so it would find everything right');
  expect(await own()).toEqual([]);
});

test('an ingredient that a diet or a guest avoids is not removed', async () => {
  const made = await agent.post('/ingredients/new', { ...(await form('/ingredients/new')), name: 'Sorrel' });
  expect(made.status).toBe(303);
  const leave = '/ingredients/sorrel/archive';
  const remove = async () => {
    const { revision } = (await read(agent.db, 'ingredient', 'sorrel'))!;
    return agent.post('/ingredients/sorrel/remove', { revision: String(revision) });
  };
  await make({ 'diets[0].avoidsIngredients': 'sorrel' });
  const page = (await agent.get(leave)).text;
  expect(page).toContain('It can be removed once none of these uses it.');
  expect(page).toMatch(/<a href="\/kitchen">[^<]+<\/a><span class="thin">, kitchen</);
  await agent.post(at, { ...(await form()), 'diets[0].avoidsIngredients': 'garlic' });
  const sent = { ...(await form(guestsAt)), 'guests[1].avoids': 'sorrel' };
  expect((await agent.post(guestsAt, sent)).status).toBe(303);
  expect((await agent.get(leave)).text).toMatch(/birthday-tea">[^<]+<\/a><span class="thin">, event</);
  expect((await remove()).status).toBe(409);
  await agent.post(guestsAt, { ...(await form(guestsAt)), 'guests[1].avoids': '' });
  expect((await remove()).status).toBe(303);
});

test('a guest may have a diet whatever its name begins with, and however long it is', async () => {
  for (const name of ['5:2 days', 'no kiwi, mango, papaya, pineapple or any other fruit of hot countries']) {
    await make({ 'diets[0].name': name });
    const { key } = (await own()).find((one) => one.name === name)!;
    const sent = { ...(await form(guestsAt)), 'guests[1].diets': [key] };
    expect((await agent.post(guestsAt, sent)).status).toBe(303);
  }
});

test('two at once: the same diet is shown to choose; to htmx the form alone', async () => {
  await make();
  const mine = await form();
  await agent.post(at, { ...(await form()), 'diets[0].name': 'no garlic' });
  expect((await agent.post(at, { ...mine, 'diets[0].name': 'no allium' })).status).toBe(409);
  const part = await agent.post(at, { ...(await form()), 'diets[0].name': '' }).set('hx-request', 'true');
  expect(part.status).toBe(422);
  expect(part.text.trimStart()).toMatch(/^<form id="own-diets"/);
});
