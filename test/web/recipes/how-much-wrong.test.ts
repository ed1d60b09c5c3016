import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

/** The sentence that stands at a field. */
const at = (html: string, field: string) =>
  new RegExp(`id="at-${field}">(?:<p[^>]*>([^<]*)</p>)?`).exec(html)?.[1] ?? '';

test('what can’t be read keeps its text, with the sentence at its field', async () => {
  const url =
    '/recipes/shortbread?total=lots&of=butter&have=3&as=prepared&tin=ring&sides=8+x+24&tins=x&deep=y&whole=on';
  const { status, text } = await agent.get(url);
  expect(status).toBe(422);
  for (const value of ['lots', '3', '8 x 24', 'x', 'y']) expect(text).toContain(`value="${value}"`);
  expect(text).toContain('<option value="butter" selected>');
  expect(text).toContain('<option value="prepared" selected>');
  expect(text).toContain('<option value="ring" selected>');
  expect(text).toContain('<details class="other-ways" open>');
  expect(at(text, 'have')).toBe('Say how much in one way. Empty this, or in all, lots.');
  expect(at(text, 'sides')).toContain('The hole of a ring is smaller than the ring.');
  expect(at(text, 'tins')).toContain('Enter how many tins in figures');
  expect(at(text, 'deep')).toContain('Enter how deep the tin is');
  expect(text).not.toContain('which is');
});

test('each field says what to type', async () => {
  const page = async (query: string) => (await agent.get(`/recipes/hummus?${query}`)).text;
  expect(at(await page('have=3.2+kg'), 'of')).toBe('Choose the ingredient you have so much of.');
  expect(at(await page('have=3.2+kg&of=plum'), 'of')).toBe('Choose the ingredient you have so much of.');
  expect(at(await page('have=1+kg&of=salt'), 'of')).toBe('Choose the ingredient you have so much of.');
  expect(at(await page('have=3.2&of=carrot'), 'have')).toContain('Enter the unit too');
  expect(at(await page('total=0+kg'), 'total')).toContain('above zero');
  expect(at(await page('portions=8&total=3+kg'), 'total')).toBe(
    'Say how much in one way. Empty this, or portions, 8.',
  );
  expect(at(await page('tins=2'), 'sides')).toContain('Enter the inside of the tin');
});

test('a script in what was typed is text', async () => {
  const { text } = await agent.get('/recipes/hummus?total=%3Cscript%3Ealert(1)%3C/script%3E');
  expect(text).not.toContain('<script>alert(1)');
  expect(text).toContain('&lt;script&gt;alert(1)');
});

test('CSV and JSON refuse in the same words', async () => {
  const { status, body } = await agent.get('/recipes/hummus.json?have=3.2+kg');
  expect(status).toBe(422);
  expect(body.error).toContain('Choose the ingredient');
});

test('htmx gets the sentence at its field, and the address without what says nothing', async () => {
  const part = { 'hx-request': 'true', 'hx-request-type': 'partial' };
  const wrong = await agent.get('/recipes/hummus?total=x').set(part);
  expect(wrong.text).toMatch(/hx-target="#at-total"[^>]*><p class="fault"/);
  expect(wrong.headers['hx-push-url']).toBe('false');
  const right = await agent
    .get('/recipes/hummus?portions=&each=&of=carrot&as=bought&have=&total=4.4+kg')
    .set(part);
  expect(right.headers['hx-push-url']).toBe('/recipes/hummus?total=4.4+kg');
  expect(right.text).toContain('hx-target="#at-total" hx-swap="innerHTML"></hx-partial>');
});
