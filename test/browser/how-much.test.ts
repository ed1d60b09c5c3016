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

const words = () => page.locator('#scale-words').textContent();
const active = () => page.evaluate('document.activeElement.id');
const address = () => {
  const { pathname, search } = new URL(page.url());
  return pathname + search;
};

test('the other ways are reached and used by keyboard, and the address says only what counts', async () => {
  await page.goto('/recipes/shortbread');
  await page.locator('.other-ways > summary').focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  await page.keyboard.type('2 kg');
  await expect.poll(words).toContain('× 2.35');
  expect(await active()).toBe('f-total');
  await expect.poll(address).toBe('/recipes/shortbread?total=2+kg');
  await page.locator('#f-total').fill('');
  await page.locator('#f-of').selectOption('butter');
  await page.locator('#f-have').fill('1 kg');
  await expect.poll(words).toContain('× 3.33');
  await expect.poll(address).toBe('/recipes/shortbread?of=butter&have=1+kg');
});

test('a wrong field says so beneath it, and stops saying so', async () => {
  await page.locator('#f-have').fill('1');
  await expect.poll(() => page.locator('#at-have').textContent()).toContain('Enter the unit too');
  expect(await page.locator('.other-ways').getAttribute('open')).not.toBeNull();
  await page.locator('#f-have').fill('600 g');
  await expect.poll(words).toContain('× 2.00');
  expect(await page.locator('#at-have').textContent()).toBe('');
});

test('a tin that the amount does not fit, and whole batches', async () => {
  await page.locator('#f-sides').fill('20 x 15 cm');
  await expect.poll(words).toContain('times as deep');
  await page.locator('#f-sides').fill('');
  await page.locator('#f-have').fill('700 g');
  await page.locator('[name="whole"]').check();
  await expect.poll(words).toContain('2 batches');
  await page.goBack();
  await expect.poll(words).not.toContain('2 batches');
});

test('open, it breaks no rule that axe knows and fits a phone', async () => {
  const wrong = '/recipes/shortbread?total=x&have=3&of=butter&sides=big&tin=round&tins=x&deep=y';
  for (const at of [page, await open.page(phone)])
    for (const url of [
      wrong,
      '/recipes/shortbread?portions=300&sides=20&deep=4',
      '/recipes/hummus?total=4+kg',
    ]) {
      await at.goto(url);
      await expectAccessible(at);
    }
});

test('no page complained meanwhile', () => expect(open.complaints).toEqual([]));
