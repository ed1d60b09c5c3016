import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { type Open, openWorkbook } from './workbook.js';

// The example's lunch, with the day before it as today. Bea Larkin, invented, has just told of two diets.
const kitchen = exampleKitchen();
kitchen.events.find(({ key }) => key === 'retirement-lunch')!.date = '2026-10-15';

let open: Open;
let page: Page;
const steps = { presses: 0, letters: 0 };
beforeAll(async () => {
  open = await openWorkbook(kitchen);
  page = await open.page();
});
afterAll(() => open.close());

const main = async () =>
  String(await page.evaluate('document.querySelector("main").innerText')).replace(/\s+/g, ' ');
const click = async (role: 'link' | 'button', name: string) => {
  steps.presses++;
  await page.locator('main').getByRole(role, { name, exact: true }).first().click();
};
const press = async (key: string) => {
  steps.presses++;
  await page.keyboard.press(key);
};

test('a new guest with two diets on the last day, to the changed menu, cards and prep list', async () => {
  await page.goto('/');
  await click('link', 'Retirement lunch');
  await click('link', 'Diets & allergens');
  await click('link', 'Guests and diets');
  steps.presses++;
  await page.getByLabel('Add a guest, or several').click();
  const said = 'Bea Larkin, vegan, coeliac';
  steps.letters += said.length;
  await page.keyboard.type(said);
  await press('Enter');
  await expect.poll(main).toContain('Diets: vegan, coeliac, no gluten');

  await click('link', 'Find the smallest way out');
  const ways = page.locator('input[name=way]');
  await ways.first().waitFor();
  expect(await main()).toMatch(/Bea Larkin .*in starter.*Bea Larkin .*in pudding/);
  steps.presses++;
  await ways.first().click();
  await click('button', 'Change the menu this way');
  await page.waitForURL(/together=/);
  expect(await main()).not.toContain('Bea Larkin (vegan, coeliac, no gluten) has nothing');

  await click('link', 'Diets & allergens');
  await click('link', 'Table cards');
  for (const dish of ['Hummus with carrot sticks, without tahini', 'Poached pears'])
    expect(await main()).toContain(`${dish} Contains: nothing on the list is named on its labels.`);
  await click('button', 'Print these cards');
  await page.waitForURL(/printing=1/);
  await click('link', 'Retirement lunch');
  await click('link', 'Prep');
  expect(await main()).toMatch(/ 3 ?portions Poached pears/);
  expect(await main()).toMatch(/\d ?g Hummus with carrot sticks, without tahini/);
  // Three seconds to look, point and press, the answer among them; a letter in three tenths of one.
  expect(steps.presses * 3 + steps.letters * 0.3, JSON.stringify(steps)).toBeLessThan(60);
  expect(open.complaints).toEqual([]);
});
