import { afterAll, beforeAll, expect, test } from 'vitest';
import { coverageOf } from '../../../src/core/coverage.js';
import { eventFacts } from '../../../src/store/facts.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf, stored } from '../events/page.js';
import { readRecipe } from './recipes.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const at = '/events/retirement-lunch/way-out';

/** The page once the search is done: a page that is still working it out is asked again, as its reader does. */
const page = async (headers: Record<string, string> = {}, url = at) => {
  for (;;) {
    const answer = await agent.get(url).set(headers);
    if (!answer.text.includes('Working it out…')) return answer;
  }
};
const waysOn = (text: string) => [...text.matchAll(/name="way" value="([^"]+)"/g)].map(([, mark]) => mark!);

/** Who has nothing for sure in which course. */
const without = async () => {
  const { events, facts } = (await eventFacts(agent.db, ['retirement-lunch']))!;
  return coverageOf(events[0]!, facts).rows.flatMap(({ guest, courses }) =>
    courses.flatMap(({ course, byDiets, short }) =>
      guest!.answered && (byDiets !== 'yes' || short) ? [`${guest!.key} ${course}`] : [],
    ),
  );
};

test('the event says who goes without and leads to the way out', async () => {
  const { text } = await agent.get('/events/retirement-lunch');
  expect(text).toContain('href="/events/retirement-lunch/way-out">Find the smallest way out</a>');
});

test('each way says what moves, for whom and what it comes to; an allergy cannot be left', async () => {
  const { text, status } = await page();
  expect(status).toBe(200);
  expect(text).toContain('Gwen Abery (vegan), in pudding');
  expect(text).toContain('<b>Poached pears</b>, another dish of yours, for Gwen Abery (vegan) and Tom Lisle');
  expect(text).toMatch(/dishes more; the food costs £[\d.]+ more; \d+ min more work\./);
  expect(text).toContain('2 guests have not answered about diet');
  expect(waysOn(text).length).toBeGreaterThan(0);
  expect(text).not.toContain('Leave it. I have looked');
  const part = await page({ 'hx-request': 'true' });
  expect(part.text).not.toContain('<html');
  expect(part.text).toContain('id="ways"');
});

test('pressed without a choice it asks for one, and leaving it is refused while an allergy is at stake', async () => {
  for (const way of ['', 'leave']) {
    const { status, text } = await agent.post(at, { way });
    expect(status).toBe(422);
    expect(text).toContain('an allergy or a medical diet is at stake');
  }
  expect((await agent.post(at, { way: 'no-such-way' })).status).toBe(409);
});

test('applied it is one save: variants, dishes with their portions, fewer of the base; one Undo takes all back', async () => {
  const before = await stored(agent, 'retirement-lunch');
  expect(await without()).not.toEqual([]);
  const [mark] = waysOn((await page()).text);
  const saved = await agent.post(at, { way: mark! });
  expect(saved.status).toBe(303);
  expect(saved.headers.location).toMatch(/^\/events\/retirement-lunch\?together=\d+$/);
  expect(await without()).toEqual([]);
  const after = (await stored(agent, 'retirement-lunch'))!;
  const [starter, , pudding] = after.courses;
  const variant = starter!.dishes.find(({ keptFor }) => keptFor.includes('priya'))!;
  expect(await readRecipe(agent.db, variant.recipe)).toMatchObject({ variantOf: 'hummus' });
  expect(pudding!.dishes.map(({ recipe, eaters }) => [recipe, eaters])).toEqual([
    ['lemon-posset', { counts: [{ group: 'adults', guests: 22 }] }],
    ['poached-pears', { counts: [{ group: 'adults', guests: 2 }] }],
  ]);
  const { text } = await agent.get(saved.headers.location!);
  expect(text).toMatch(/Saved 1 event and 1 recipe together\./);
  const [, undo] = /action="(\/undo\/together\/\d+)"/.exec(text)!;
  const undone = await agent.post(undo!);
  expect(undone.headers.location).toMatch(/^\/events\/retirement-lunch\?together=\d+&undone=yes$/);
  expect(await stored(agent, 'retirement-lunch')).toEqual(before);
  expect(await readRecipe(agent.db, variant.recipe)).toBeUndefined();
});

test('a variant is a dish like any other: on the prep list, costed, in the matrix', async () => {
  const [mark] = waysOn((await page()).text);
  await agent.post(at, { way: mark! });
  const variant = (await stored(agent, 'retirement-lunch'))!.courses[0]!.dishes.at(-1)!;
  const { name } = (await readRecipe(agent.db, variant.recipe))!;
  for (const sheet of ['prep', 'costing', 'allergens'])
    expect((await agent.get(`/events/retirement-lunch/${sheet}`)).text, sheet).toContain(name);
  expect((await agent.get(`/events/retirement-lunch/costing.json`)).text).toContain(name);
  const { text } = await page();
  expect(text).toContain('Everybody who has answered has something in every course.');
});

test('what was shown and no longer stands is not done', async () => {
  const [mark] = waysOn((await page({}, '/events/choir-supper/way-out')).text);
  expect(mark).toBeDefined();
  await agent.post('/recipes/lentil-pie-oil/archive', { revision: '1' });
  const { guests, ...rest } = (await stored(agent, 'choir-supper'))!;
  const form = fieldsOf((await agent.get('/events/choir-supper/guests/diets')).text);
  await agent.post('/events/choir-supper/guests/diets', { ...form, 'guests[4].diets': ['no-milk'] });
  expect((await stored(agent, 'choir-supper'))!.guests).not.toEqual(guests);
  const late = await agent.post('/events/choir-supper/way-out', { way: mark! });
  expect(late.status).toBe(409);
  expect(late.text).toContain('Something was saved since these ways were worked out');
  expect((await stored(agent, 'choir-supper'))!.courses).toEqual(rest.courses);
});

test('an event that is not there has no way out', async () => {
  expect((await agent.get('/events/no-such-party/way-out')).status).toBe(404);
  expect((await agent.post('/events/no-such-party/way-out', {})).status).toBe(404);
});
