import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../src/store/documents.js';
import { exampleKitchen } from '../world.js';
import { expectAccessible, type Open, openWorkbook } from './workbook.js';

let open: Open;
let page: Page;
beforeAll(async () => {
  open = await openWorkbook(exampleKitchen());
  page = await open.page();
});
afterAll(() => open.close());

const marked = (name: string) => page.locator(`[name="${name}"]:checked`).getAttribute('value');

test('a label is read as it is typed, what is not understood is settled, and one press keeps it all', async () => {
  await page.goto('/ingredients/horseradish-sauce/label');
  await page.locator('#f-words').focus();
  await page.keyboard.type('Horseradish, whey, **XANTHO**. May contain nuts.');
  await expect.poll(() => marked('entries.milk')).toBe('contains');
  expect(await marked('entries.nuts')).toBe('may');
  expect(await page.evaluate('document.activeElement.id')).toBe('f-words');
  await expectAccessible(page);
  await page.locator('[name="settle[0].as"]').selectOption('none');
  await page.locator('button[value="whole"]').first().click();
  await page.waitForURL(/\/ingredients\/horseradish-sauce\?saved=/);
  const { doc } = (await read(open.agent.db, 'ingredient', 'horseradish-sauce'))!;
  expect([doc.allergens.milk?.state, doc.allergens.nuts?.state, doc.allergens.eggs?.state]).toEqual([
    'contains',
    'may',
    'free',
  ]);
  expect(doc.labelText).toBe('Horseradish, whey, **XANTHO**. May contain nuts.');
});
