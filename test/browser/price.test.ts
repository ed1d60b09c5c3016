import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { expectAccessible, type Open, openWorkbook, phone } from './workbook.js';

let open: Open;
beforeAll(async () => {
  const kitchen = exampleKitchen();
  kitchen.kitchen.marginFloor = '30';
  open = await openWorkbook(kitchen);
});
afterAll(() => open.close());

const main = async (page: Page) =>
  String(await page.evaluate('document.querySelector("main").innerText')).replace(/\s+/g, ' ');
const focused = (page: Page) => page.evaluate('document.activeElement.name');

test('a price is tried in its field, says what it would leave, and is saved with Undo', async () => {
  const page = await open.page();
  await page.goto('/events/birthday-tea/costing');
  const price = page.getByLabel('Price a guest, GBP');
  await price.fill('30.00');
  await expect.poll(() => main(page)).toContain('Margin with this price');
  expect(await focused(page)).toBe('aGuest');
  await page.getByRole('button', { name: 'One more a guest' }).click();
  expect(await price.inputValue()).toBe('31.00');
  await page.getByLabel('by margin').check();
  expect(await price.isVisible()).toBe(false);
  await page.getByLabel('Margin, per cent').fill('lots');
  await page.getByRole('button', { name: 'Save this price' }).click();
  await expect.poll(() => main(page)).toContain('Everything you typed is kept.');
  await expectAccessible(page);
  await page.getByLabel('Margin, per cent').fill('40');
  await page.getByRole('button', { name: 'Save this price' }).click();
  await page.waitForURL(/saved=/);
  expect(await main(page)).toContain('Undo');
});

test('a cost line shows the fields of what it goes by, and what it makes of the cost', async () => {
  const page = await open.page();
  await page.goto('/events/birthday-tea/costs');
  await page.getByRole('button', { name: 'Add a cost' }).click();
  await expect.poll(() => focused(page)).toMatch(/\.name$/);
  await page.keyboard.type('Tent');
  const row = page.getByRole('group').last();
  await row.getByLabel('Goes by').selectOption('step');
  expect(await row.getByLabel('One is enough for').isVisible()).toBe(true);
  expect(await row.getByLabel('Hours of each').isVisible()).toBe(false);
  await row.getByLabel('Sum, GBP').fill('80');
  await row.getByLabel('One is enough for').fill('30');
  await expect.poll(() => main(page)).toContain('and would cost');
  await page.getByRole('button', { name: 'Save these costs' }).click();
  await page.waitForURL(/costing\?saved=/);
  expect(await main(page)).toContain('Tent, 2 × £80.00');
});

test('on the phone: so many guests, a price at once, and an enquiry', async () => {
  const page = await open.page(phone);
  await page.goto('/menu');
  await page.getByRole('link', { name: 'A price in a minute' }).click();
  await page.getByLabel('Guests').fill('44');
  await expect.poll(() => main(page)).toMatch(/£[\d.]+ a guest/);
  expect(await focused(page)).toBe('guests');
  await expect.poll(() => page.url()).toContain('guests=44');
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Make it an enquiry' }).click();
  await page.getByLabel('What is it?').fill('Forty-four');
  await page.getByLabel('Day').fill('Sat 12 Dec');
  await expect.poll(() => main(page)).toContain('there, for 44');
  await page.getByRole('button', { name: 'Copy to Forty-four' }).click();
  await page.waitForURL(/\/events\/forty-four\?saved=/);
  expect(await main(page)).toMatch(/Guests 44/);
});

test('no page complained meanwhile', () => expect(open.complaints).toEqual([]));
