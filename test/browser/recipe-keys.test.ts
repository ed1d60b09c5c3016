import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { type Open, openWorkbook } from './workbook.js';

let open: Open;
let page: Page;
beforeAll(async () => {
  open = await openWorkbook(exampleKitchen());
  page = await open.page();
});
afterAll(() => open.close());

const active = () => page.evaluate('document.activeElement.name');
const lines = () =>
  page
    .locator('[name^="lines["][name$="].item"]')
    .evaluateAll((all) => all.map((one) => Reflect.get(one, 'value')));
const type = async (...fields: string[]) => {
  for (const [i, field] of fields.entries()) {
    if (i > 0) await page.keyboard.press('Tab');
    await page.keyboard.type(field);
  }
};

test('a recipe is written with the keyboard alone', async () => {
  await page.goto('/recipes');
  await page.keyboard.press('n');
  await page.waitForURL('**/recipes/new');
  await expect.poll(active).toBe('name');
  await type('Leek broth', '8');
  for (let i = 0; i < 3; i++) await page.keyboard.press('Tab');
  await type('1.5', 'kg', 'Leek', 'sliced');
  await page.keyboard.press('Enter');
  expect(await active()).toBe('lines[1].amount');
  await type('2', 'l', 'Vegetable stock');
  await page.keyboard.press('Enter');
  await type('1', 'tsp', 'Saffron');
  await page.keyboard.press('Enter');
  await expect.poll(active).toBe('lines[3].amount');
  await type('20', 'g', 'Butter, unsalted');
  await page.keyboard.press('Alt+ArrowUp');
  await expect.poll(lines).toEqual(['Leek', 'Vegetable stock', 'Butter, unsalted', 'Saffron']);
});

test('a name that is not known is made an ingredient and the recipe saved, still by keyboard', async () => {
  await page.locator('[name="name"]').focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate('document.activeElement.id')).toBe('not-saved');
  for (let i = 0; i < 4 && (await page.evaluate('document.activeElement.value')) !== 'new:all'; i++)
    await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate('document.activeElement.textContent')).toBe('Save recipe');
  await page.keyboard.press('Enter');
  await page.waitForURL('**/recipes/leek-broth?saved=*');
  expect(await page.locator('.lines-table').textContent()).toContain('14 not known');
});

test('scaling leaves the focus where one types, and Back goes back', async () => {
  await page.goto('/recipes/hummus');
  await page.locator('#f-portions').fill('46');
  await expect.poll(() => page.locator('#scale-words').textContent()).toContain('× 2.30');
  expect(await page.evaluate('document.activeElement.id')).toBe('f-portions');
  await page.locator('#f-each').fill('120 g');
  await expect.poll(() => page.locator('#scale-words').textContent()).toContain('× 2.51');
  await page.goBack();
  await expect.poll(() => page.locator('#scale-words').textContent()).toContain('× 2.30');
});

test('no page complained meanwhile', () => expect(open.complaints).toEqual([]));
