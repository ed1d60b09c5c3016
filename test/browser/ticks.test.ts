import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { expectAccessible, type Open, openWorkbook, phone } from './workbook.js';

const day = '/prep?date=2026-12-02';
let open: Open;
let page: Page;
beforeAll(async () => {
  open = await openWorkbook(exampleKitchen());
  page = await open.page();
  await page.goto(day);
});
afterAll(() => open.close());

const boxes = () => page.locator('.tick-off');
const states = async () =>
  (await boxes().evaluateAll((all) => all.map((one) => one.getAttribute('aria-checked')))).slice(0, 3);
const focused = () => boxes().evaluateAll((all) => all.findIndex((one) => one.matches(':focus')));
const tally = () => page.locator('#tally').textContent();

test('jobs are ticked by keyboard, and the focus stays on the box', async () => {
  await boxes().first().focus();
  await page.keyboard.press('Space');
  await expect.poll(states).toEqual(['true', 'false', 'false']);
  await expect.poll(tally).toBe(', 1 of 10 done');
  expect(await focused()).toBe(0);
  await page.keyboard.press('ArrowDown');
  expect(await focused()).toBe(1);
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Space');
  await expect.poll(states).toEqual(['true', 'true', 'true']);
  expect(await focused()).toBe(2);
  await expect.poll(() => page.locator('#said').textContent()).toMatch(/done\. 3 of 10 done\.$/);
  expect(await page.locator('.task.done').count()).toBe(3);
  await page.keyboard.press('Space');
  await expect.poll(states).toEqual(['true', 'true', 'false']);
  await page.reload();
  expect(await states()).toEqual(['true', 'true', 'false']);
});

test('a tick that could not be saved flips back and says so in words; the next one takes', async () => {
  await page.route('**/prep/ticks', (route) => route.abort());
  const row = page.locator('.task').nth(2);
  await boxes().nth(2).click();
  await expect.poll(() => row.getAttribute('data-failed')).toBe('');
  expect(await states()).toEqual(['true', 'true', 'false']);
  expect(await page.locator('#said').textContent()).toBe('Not saved, tap again.');
  await page.unroute('**/prep/ticks');
  await boxes().nth(2).click();
  await expect.poll(states).toEqual(['true', 'true', 'true']);
  expect(await row.getAttribute('data-failed')).toBeNull();
});

test('on a phone the whole row is the label, and nothing of it breaks a rule of access', async () => {
  const small = await open.page(phone);
  await small.goto(day);
  await small.locator('.task').nth(3).locator('.job-words').click({ force: true });
  await expect.poll(() => small.locator('.tick-off').nth(3).getAttribute('aria-checked')).toBe('true');
  expect(await small.locator('#bottom-tally b').textContent()).toBe('4 of 10 done');
  await expectAccessible(small);
  await small.getByRole('button', { name: 'Undo: Shortbread fingers' }).click();
  await expect.poll(() => small.locator('#bottom-tally').textContent()).toBe('3 of 10 done');
  expect(await small.locator('.tick-off').nth(3).getAttribute('aria-checked')).toBe('false');
  await page.reload();
  await expectAccessible(page);
});

test('no page complained meanwhile', () => expect(open.complaints).toEqual([]));
