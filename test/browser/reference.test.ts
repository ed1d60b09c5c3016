import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { expectAccessible, type Open, openWorkbook, phone } from './workbook.js';

let open: Open;
let page: Page;
beforeAll(async () => {
  open = await openWorkbook(exampleKitchen());
  page = await open.page();
});
afterAll(() => open.close());

const value = (name: string) => page.locator(`[name="${name}"]`).inputValue();
const key = (name: string) => page.keyboard.press(name);
const focused = () => page.evaluate('document.activeElement.id');

// USDA Standard Reference 28 (2016): courgette, item 11477, less 5 % ends; a lamb leg, 17011 and 17012, as roasted.
test('a new ingredient takes the reference by keyboard alone, as its name is typed', async () => {
  await page.goto('/ingredients/new');
  expect(await focused()).toBe('f-name');
  await page.keyboard.type('zuchi');
  await page.locator('#reference-courgette').waitFor();
  expect([await focused(), await value('name')]).toEqual(['f-name', 'zuchi']);
  await expectAccessible(page);
  await key('Tab');
  expect(await focused()).toBe('reference-none');
  await key('ArrowUp');
  await expect.poll(() => value('yield')).toBe('95 %');
  expect([await focused(), await value('yieldSource')]).toEqual([
    'reference-courgette',
    'USDA SR28 11477, less ends',
  ]);
  await expectAccessible(page);
});

test('another name brings another offer, and what was typed into the yield stays until it is chosen', async () => {
  await page.locator('[name="yield"]').fill('80');
  await page.locator('#f-name').fill('Leg of lamb');
  await page.locator('#reference-lamb-leg').waitFor();
  expect(await value('yield')).toBe('80');
  await page.locator('#reference-lamb-leg').check();
  await expect.poll(() => value('yield')).toBe('79 %');
  await page.locator('#f-name').focus();
  await key('Enter');
  await page.waitForURL(/\/ingredients\/leg-of-lamb\?saved=/);
  expect(await page.locator('main').textContent()).toMatch(/58\.4%\s*of the bought weight once roasted/);
});

test('its cooked yields are changed on a phone without scrolling sideways, and taken back in a press', async () => {
  page = await open.page(phone);
  await page.goto('/ingredients/leg-of-lamb/yield');
  await expectAccessible(page);
  await page.locator('[name="cookedYields[0].yield"]').fill('60');
  await page.getByRole('button', { name: 'Save yield and weights' }).first().click();
  await page.waitForURL(/saved=/);
  expect(await page.locator('main').textContent()).toContain('yours; the USDA’s figure is 58.4%');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Take the USDA’s' }).click();
  await expect.poll(() => page.locator('main').textContent()).not.toContain('yours;');
  expect(open.complaints).toEqual([]);
});
