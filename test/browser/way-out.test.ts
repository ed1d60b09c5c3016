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

const ways = () => page.locator('input[name=way]');
const stops = async () =>
  (await page.locator('#clashes p').allTextContents()).filter((one) => one.includes('nothing to eat'));

// Gwen and Tom have no pudding at the lunch. From the stop to the changed menu and back, by keyboard alone.
test('from a stop to the smallest way out, applied and taken back', async () => {
  await page.goto('/events/retirement-lunch');
  expect(await stops()).toHaveLength(2);
  await page.getByRole('link', { name: 'Find the smallest way out' }).first().press('Enter');
  await expect.poll(() => ways().count(), { timeout: 30_000 }).toBeGreaterThan(1);
  await expectAccessible(page);
  await ways().first().press('Space');
  await page.getByRole('button', { name: 'Change the menu this way' }).press('Enter');
  await expect.poll(() => page.locator('#receipt').textContent()).toContain('together.');
  expect(await stops()).toEqual([]);
  expect(await page.locator('.course, tbody').allTextContents()).toEqual(
    expect.arrayContaining([expect.stringContaining('Poached pears')]),
  );
  await page.getByRole('button', { name: 'Undo' }).press('Enter');
  await expect.poll(stops).toHaveLength(2);
  expect(open.complaints).toEqual([]);
});

test('on a phone it fits', async () => {
  const small = await open.page(phone);
  await small.goto('/events/retirement-lunch/way-out');
  await small.locator('input[name=way]').first().waitFor({ timeout: 30_000 });
  await expectAccessible(small);
});
