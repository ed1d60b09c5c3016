import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../src/store/documents.js';
import { exampleKitchen } from '../world.js';
import { desk, expectAccessible, type Open, openWorkbook, phone } from './workbook.js';

let open: Open;
let page: Page;
beforeAll(async () => {
  open = await openWorkbook(exampleKitchen());
  page = await open.page();
});
afterAll(() => open.close());

const focused = () => page.evaluate('document.activeElement.id || document.activeElement.className');
const kitchen = async () => (await read(open.agent.db, 'kitchen', 'kitchen'))!.doc;

test('Enter on the last row adds one and goes there; in any other it goes to the next', async () => {
  await page.goto('/kitchen');
  const { people } = await kitchen();
  await page.locator(`[name="people[${people.length - 1}].name"]`).press('Enter');
  await expect.poll(focused).toBe(`f-people-${people.length}-name`);
  await page.locator('[name="people[0].name"]').press('Enter');
  expect(await focused()).toBe('f-people-1-name');
  await page.locator(`[name="people[${people.length}].name"]`).fill('Ada Finch');
  await page.getByRole('button', { name: 'Save the kitchen' }).click();
  await page.waitForURL(/\/kitchen\?saved=\d+$/);
  expect(await focused()).toBe('receipt');
  expect((await kitchen()).people.at(-1)?.name).toBe('Ada Finch');
});

test('what is refused is named at once, keeps what was typed, and Undo takes a save back', async () => {
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForURL(/undone/);
  await page.locator('[name="tax.rate"]').fill('two hundred');
  await page.getByRole('button', { name: 'Save the kitchen' }).click();
  await expect.poll(focused).toBe('not-saved');
  expect(await page.locator('[name="tax.rate"]').inputValue()).toBe('two hundred');
  await page.locator('#not-saved a').click();
  expect(await page.evaluate('document.activeElement.name')).toBe('tax.rate');
  expect(await page.locator('#f-tax-rate').getAttribute('aria-invalid')).toBe('true');
});

test('Enter in a field saves and presses no other button', async () => {
  await page.goto('/places/new');
  await page.getByRole('button', { name: 'Add an oven' }).click();
  await expect.poll(focused).toBe('f-ovens-0-name');
  await page.locator('[name="ovens[0].name"]').fill('Range');
  await page.locator('[name="ovens[0].shelves"]').fill('4');
  await page.locator('[name="name"]').fill('Boat house');
  await page.locator('[name="name"]').press('Enter');
  await page.waitForURL(/\/places\/boat-house\?saved=/);
  expect((await read(open.agent.db, 'place', 'boat-house'))?.doc.ovens[0]).toMatchObject({
    name: 'Range',
    shelves: 4,
  });
});

test('single letters find, list the keys and rest inside fields', async () => {
  await page.goto('/places');
  await page.keyboard.press('/');
  expect(await focused()).toBe('find');
  await page.keyboard.type('?n');
  expect(await page.locator('#find').inputValue()).toBe('?n');
  await page.locator('h1').click();
  await page.evaluate('document.activeElement.blur()');
  await page.keyboard.press('n');
  await page.waitForURL('**/places/new');
  await page.evaluate('document.activeElement.blur()');
  await page.keyboard.press('?');
  await page.waitForURL('**/keys');
});

test('finding narrows as one types, keeps the focus, says how many and can be gone back from', async () => {
  await page.goto('/find');
  await page.locator('#q').pressSequentially('hall', { delay: 20 });
  await page.waitForURL(/q=hall/);
  expect(await focused()).toBe('q');
  await expect.poll(() => page.locator('#said').textContent()).toMatch(/^\d+ found$/);
  await page.goBack();
  await page.waitForURL(/\/find$/);
  expect(await page.locator('.top').count()).toBe(1);
});

test('an error reaches htmx as a line above the page, and the form stays as typed', async () => {
  await page.goto('/places/boat-house');
  await page.locator('[name="note"]').fill('Ring twice');
  await page.evaluate("document.querySelector('#place').setAttribute('hx-post', '/nowhere')");
  await page.evaluate("htmx.process(document.querySelector('#place'), true)");
  await page.getByRole('button', { name: 'Save this place' }).click();
  await expect.poll(() => page.locator('#notice').textContent()).toContain('Nothing at this address');
  expect(await page.locator('[name="note"]').inputValue()).toBe('Ring twice');
  expect(await page.getByRole('button', { name: 'Save this place' }).count()).toBe(1);
});

test('the pages of the shell are accessible, on a desk and on a phone', async () => {
  for (const size of [desk, phone]) {
    await page.setViewportSize(size);
    for (const path of [
      '/kitchen',
      '/places',
      '/places/boat-house',
      '/places/new',
      '/find?q=a',
      '/menu',
      '/keys',
      '/workbook',
      '/history/kitchen/kitchen',
      '/nowhere',
      '/account/first',
    ]) {
      await page.goto(path);
      await expectAccessible(page);
    }
  }
});

test('two people who change one place see both side by side, with nothing chosen', async () => {
  await page.setViewportSize(desk);
  const other = await open.page();
  await page.goto('/kitchen');
  await other.goto('/kitchen');
  await other.locator('[name="name"]').fill('Theirs');
  await other.getByRole('button', { name: 'Save the kitchen' }).click();
  await other.waitForURL(/saved=/);
  await page.locator('[name="name"]').fill('Mine');
  await page.locator('[name="locale"]').fill('en-IE');
  await page.getByRole('button', { name: 'Save the kitchen' }).click();
  await expect.poll(() => page.locator('table.merge').count()).toBe(1);
  expect(await page.locator('[type=radio]:checked').count()).toBe(0);
  await expectAccessible(page);
  await page.getByLabel('Mine').check();
  await page.getByRole('button', { name: 'Save with these choices' }).click();
  await page.waitForURL(/saved=/);
  expect(await kitchen()).toMatchObject({ name: 'Mine', locale: 'en-IE' });
});

test('nothing on these pages broke or was refused by the content policy', () => {
  expect(open.complaints).toEqual([]);
});
