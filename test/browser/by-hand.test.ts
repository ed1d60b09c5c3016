import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Open, openWorkbook } from './workbook.js';

// Invented dish and party. By hand: 40 guests eat 40 portions; the recipe makes 8 portions, 2 kg, so 5 batches:
// 10 kg soup from 5 × 1 kg = 5 kg leek, prepared. At a yield of 50 % that is 10 kg bought; a 5 kg pack costs 12.00,
// so 24.00, and 24.00 / 40 = 0.60 a guest. For 46 guests: 5.75 batches, 11.5 kg soup, 11.5 kg bought, 27.60 in all,
// and still 0.60 a guest.
let open: Open;
let page: Page;
beforeAll(async () => {
  open = await openWorkbook();
  page = await open.page();
});
afterAll(() => open.close());

/** What a person reads there: hidden words are not among it. */
const words = async (selector: string) =>
  String(await page.evaluate(`document.querySelector('${selector}')?.innerText ?? ''`)).replace(/\s+/g, ' ');
const press = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
const fill = (name: string, value: string) => page.locator(`[name="${name}"]`).fill(value);

test('from first run to a recipe with an ingredient of its own', async () => {
  await page.goto('/');
  await expect.poll(() => page.locator('h1').textContent()).toMatch(/empty week/i);
  await press('Set up the kitchen');
  await fill('name', 'Quince House');
  await press('Save the kitchen');
  await page.waitForURL(/saved=/);

  await page.goto('/ingredients/new');
  await fill('name', 'Leek');
  await fill('size', '5 kg');
  await fill('price', '12.00');
  await fill('yield', '50');
  await press('Save ingredient');
  await page.waitForURL(/\/ingredients\/leek/);

  await page.goto('/recipes/new');
  await fill('name', 'Leek soup');
  await fill('yield.portions', '8');
  await fill('yield.weight', '2 kg');
  await fill('lines[0].amount', '1');
  await fill('lines[0].unit', 'kg');
  await fill('lines[0].item', 'leek');
  await fill('lines[0].preparation', 'in rings');
  if ((await page.locator('[name="steps[0].words"]').count()) === 0) await press('Add a step');
  await fill('steps[0].words', 'Sweat the leek, cover and simmer until soft.');
  await fill('steps[0].minutes', '40');
  await press('Save recipe');
  await page.waitForURL(/\/recipes\/leek-soup/);
  expect(await page.locator('main').textContent()).toMatch(/2\.00 kg at 50%/);
});

test('to a party with that dish, its cost a guest, and its printed prep list', async () => {
  await page.goto('/events/new');
  await fill('name', 'Allotment lunch');
  await fill('date', '17 Oct');
  await fill('adults', '40');
  await fill('time', '1pm');
  await page.locator('[name="state"]').selectOption('confirmed');
  await press('Save event');
  await page.waitForURL(/\/events\/allotment-lunch/);

  await page.goto('/events/allotment-lunch/menu');
  if ((await page.locator('[name="courses[0].dishes[0].recipe"]').count()) === 0) await press('Add a dish');
  await page.locator('[name="courses[0].dishes[0].recipe"]').fill('Leek soup');
  await press('Save menu');
  await page.waitForURL(/\/events\/allotment-lunch\?saved=/);
  const event = (await page.locator('main').textContent())!.replace(/\s+/g, ' ');
  expect(event).toContain('Leek soup');
  expect(event).toMatch(/Cost a guest ?£0\.60/);

  await page.goto('/prep?date=2026-10-17');
  await page.emulateMedia({ media: 'print' });
  const sheet = await words('body');
  expect(sheet).toMatch(/10(\.0)? ?kg Leek soup/);
  expect(sheet).toMatch(/5\.0 ?kg Leek, in rings from 10\.0 ?kg as purchased/);
  expect(sheet).toContain('Added by hand');
  expect(sheet).toMatch(/local food-safety code/);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  await page.emulateMedia({ media: 'screen' });
});

test('40 guests become 46 by keyboard alone, seen before it is saved, and Undo takes it back', async () => {
  await page.goto('/events/allotment-lunch');
  await page
    .getByRole('link', { name: 'Change guest count' })
    .or(page.getByRole('button', { name: 'Change guest count' }))
    .focus();
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate('document.activeElement.getAttribute("inputmode")')).toBe('numeric');
  await page.keyboard.type('46');
  await expect.poll(() => words('#preview')).toMatch(/£27\.60/);
  const preview = await words('#preview');
  expect(preview).toMatch(/£24\.00/);
  expect(await page.evaluate('document.activeElement.value')).toBe('46');
  await page.keyboard.press('Enter');
  await expect.poll(() => words('#receipt')).toMatch(/46 guests/);
  expect(await words('main')).toMatch(/Guests ?46/);

  await page.goto('/prep?date=2026-10-17');
  expect(await words('main')).toMatch(/11\.5 ?kg/);
  await page.goBack();
  await press(/Undo/);
  await expect.poll(() => words('main')).toMatch(/Guests ?40/);
  expect(open.complaints).toEqual([]);
});
