import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../src/store/documents.js';
import { exampleKitchen } from '../world.js';
import { expectAccessible, type Open, openWorkbook, phone } from './workbook.js';

const pasted = `Squash and chickpea traybake

Serves 6

Ingredients
2 tbsp olive oil
1.2 kg squash, peeled and cut into chunks
2 red onions, cut into wedges
2 x 400 g tins chickpeas, drained
3-4 cloves garlic, crushed
1 tsp smoked paprika
2 tsp cumin seeds
juice of 1 lemon
a handful of parsley, chopped
salt and black pepper

For the sauce:
200 ml Greek yoghurt
2 tbsp tahini

Method
1. Heat the oven to 200C. Toss the squash, onions and chickpeas with the oil, garlic and spices in a large tin.
2. Roast for 40-45 minutes, until tender and golden.
3. Stir the yoghurt and tahini together for the sauce.
4. Leave to rest for 5 minutes, then scatter with parsley and serve with the sauce.
`;

let open: Open;
let page: Page;
let keys = 0;
beforeAll(async () => {
  open = await openWorkbook(exampleKitchen());
  page = await open.page();
});
afterAll(() => open.close());

const active = (what: string): Promise<string> =>
  page.evaluate(`String(document.activeElement.${what} ?? '')`);
const revision = () => page.locator('#draft [name="revision"]').inputValue();
const press = async (key: string) => {
  keys++;
  await page.keyboard.press(key);
};
const type = async (words: string) => {
  keys += words.length;
  await page.keyboard.type(words);
};
const tabTo = async (words: string) => {
  for (let i = 0; i < 20 && !(await active('textContent')).startsWith(words); i++) await press('Tab');
};

test('a pasted recipe of twelve lines is in the kitchen within two minutes, by keyboard alone', async () => {
  await page.goto('/recipes');
  await tabTo('Read a recipe in');
  await press('Enter');
  await page.waitForURL('**/recipes/read');
  await expect.poll(() => active('name')).toBe('text');
  keys++;
  await page.keyboard.insertText(pasted);
  await tabTo('Read it');
  await press('Enter');
  await page.waitForURL('**/recipes/read/*');
  let places = 0;
  for (; places < 40 && !(await active('textContent')).startsWith('Save recipe'); places++) {
    const before = await revision();
    if ((await active('name')).endsWith('.minutes')) await type('15');
    else expect(await active('tagName'), 'the next unsure place has the focus').toBe('BUTTON');
    await press('Enter');
    await expect.poll(revision).not.toBe(before);
    await expect.poll(() => active('tagName')).not.toBe('BODY');
  }
  expect(places).toBeGreaterThan(8);
  await press('Enter');
  await page.waitForURL('**/recipes/squash-and-chickpea-traybake?saved=*');
  // A cook who looks at each place presses a key in two seconds.
  expect(keys * 2, `${keys} keys`).toBeLessThan(120);
});

test('what it made is what was pasted', async () => {
  const { lines, steps } = (await read(open.agent.db, 'recipe', 'squash-and-chickpea-traybake'))!.doc;
  expect(
    lines.map(({ amount, amountTo, unit }) => `${amount}${amountTo ? `–${amountTo}` : ''} ${unit}`),
  ).toEqual([
    '2 tbsp',
    '1.2 kg',
    '2 each',
    '2 tin',
    '3–4 clove',
    '1 tsp',
    '2 tsp',
    '1 each',
    '1 handful',
    'null each',
    'null each',
    '200 ml',
    '2 tbsp',
  ]);
  expect(steps.map(({ minutes, oven }) => [minutes, oven?.heat])).toEqual([
    [15, undefined],
    [40, 200],
    [15, undefined],
    [5, undefined],
  ]);
  expect(await page.locator('.receipt').textContent()).toContain('Added Squash and chickpea traybake.');
});

test.each([
  ['on a desk', undefined],
  ['on a phone', phone],
])('a draft with unsure lines breaks no rule that axe knows %s', async (_, size) => {
  const own = await open.page(size);
  await own.goto('/recipes/read');
  await own.locator('#f-text').fill(pasted);
  await own.locator('main button.primary').click();
  await own.waitForURL('**/recipes/read/*');
  await expectAccessible(own);
  await own.locator('main button.primary').last().click();
  await own.waitForSelector('#not-saved');
  await expectAccessible(own);
});

test('a line is mended by hand: its field keeps what is typed when another line is settled', async () => {
  const own = await open.page();
  await own.goto('/recipes/read');
  await own.locator('#f-text').fill(pasted);
  await own.locator('main button.primary').click();
  await own.waitForURL('**/recipes/read/*');
  await own.locator('#line-l1 summary').click();
  await own.locator('[name="lines[0].amount"]').fill('3');
  await own.locator('#line-l3 .actions button').first().click();
  await expect.poll(() => own.locator('#line-l1 .as-read').textContent()).toContain('3 tbsp');
  await own.locator('#line-l1 summary').click();
  await own.locator('[name="lines[0].item"]').fill('Oilve oil');
  await own.keyboard.press('Enter');
  await expect
    .poll(() => own.locator('#line-l1 .fault').textContent())
    .toContain('no ingredient or recipe called Oilve oil');
});

test('no page complained meanwhile', () => expect(open.complaints).toEqual([]));
