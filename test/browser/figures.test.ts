import { afterAll, beforeAll, expect, test } from 'vitest';
import { kitchenWithTeas } from '../web/figures/held.js';
import { expectAccessible, type Open, openWorkbook, phone } from './workbook.js';

let open: Open;
beforeAll(async () => {
  const kitchen = kitchenWithTeas();
  for (const event of kitchen.events)
    for (const [i, dish] of event.courses.flatMap(({ dishes }) => dishes).entries())
      dish.price = 250 + 80 * i;
  open = await openWorkbook(kitchen);
});
afterAll(() => open.close());

const pages = [
  '/ingredients/butter/prices',
  '/price-moves?days=365',
  '/events/tea-2026-10-03/afterwards',
  '/events/tea-2026-09-12/beside-real',
  '/averages',
  '/menu-engineering?coming=on',
  '/events/birthday-tea/fewer?guests=20',
  '/events/birthday-tea/menu',
];

test.each([
  ['a desk', undefined],
  ['a phone', phone],
] as const)(
  'pages that look back break no rule of WCAG 2.2 AA that axe knows on %s, nor scroll sideways',
  async (_, size) => {
    const page = size ? await open.page(size) : await open.page();
    for (const address of pages) {
      await page.goto(address);
      await expectAccessible(page);
    }
  },
  240_000,
);

test('what came back is noted by keyboard, and the next menu takes up what was eaten only when pressed', async () => {
  const page = await open.page();
  await page.goto('/events/tea-2026-10-03');
  await page.getByRole('link', { name: 'note what it came to' }).click();
  await page.getByLabel('Adults, came').fill('30');
  await page.keyboard.press('Tab');
  await page.keyboard.type('8');
  await page.getByLabel('Leek and cheddar tartlets, portions left').fill('many');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.getByText('One answer needs you').count()).toBe(1);
  await page.getByLabel('Leek and cheddar tartlets, portions left').fill('9');
  await page.keyboard.press('Enter');
  await page.waitForURL(/beside-real\?saved=/);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('Planned beside real');
  await page.goto('/events/birthday-tea/menu');
  const offer = page.getByRole('button', { name: 'for Leek and cheddar tartlets' });
  // 27 of 38 eaten and 29 of 38, by 36 and 38 guests: 56 of the 66.5 portions they would have had.
  expect(await offer.textContent()).toContain('Use a share of 85%');
  const who = page.getByRole('group', { name: 'Leek and cheddar tartlets' }).getByLabel('Who eats it');
  expect(await who.inputValue()).toBe('everybody');
  await offer.press('Enter');
  await expect.poll(() => who.inputValue()).toBe('shares');
  expect(open.complaints).toEqual([]);
}, 60_000);
