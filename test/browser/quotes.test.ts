import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { lunch, priced } from '../web/quotes/quoted.js';
import { pagesOf } from './pdf.js';
import { expectAccessible, type Open, openWorkbook, phone } from './workbook.js';

const open = new Map<string, Open>();
beforeAll(async () => {
  for (const paper of ['A4', 'Letter'] as const) {
    const workbook = priced();
    workbook.kitchen.paper = paper;
    open.set(paper, await openWorkbook(workbook));
  }
});
afterAll(async () => {
  for (const one of open.values()) await one.close();
});

const words = async (page: Page) =>
  String(await page.evaluate('document.querySelector("main").innerText')).replace(/\s+/g, ' ');
const press = (page: Page, name: string) =>
  page.locator('main').getByRole('button', { name, exact: true }).first().click();

/** What sticks out of the sheet, in whole pixels, when the page is laid out as paper of this width. */
const overflow = async (page: Page, paper: string): Promise<unknown> => {
  const millimetres = paper === 'A4' ? 210 : 215.9;
  await page.setViewportSize({ width: Math.round(((millimetres - 44) / 25.4) * 96), height: 900 });
  await page.emulateMedia({ media: 'print' });
  const out = await page.evaluate(`[...document.querySelectorAll('.client-paper, .client-paper *')]
    .filter((one) => one.getBoundingClientRect().right > innerWidth + 1 || (one.scrollWidth > one.clientWidth + 1
      && getComputedStyle(one).display !== 'inline')).map((one) => one.className || one.tagName)`);
  await page.emulateMedia({ media: null });
  return out;
};

const printed = async (page: Page, address: string) => {
  await page.goto(address);
  return pagesOf(await page.pdf({ preferCSSPageSize: true }));
};

test.each([['A4'], ['Letter']])(
  'from an enquiry to a quote accepted with its deposit, on one sheet of %s each, and a head-count that needs another',
  async (paper) => {
    const { agent, page: newPage, complaints } = open.get(paper)!;
    const page = await newPage();
    await page.goto(lunch);
    await page.locator('main').getByRole('link', { name: 'Quotes' }).click();
    await press(page, 'Draft quote 1');
    await page.getByRole('textbox', { name: 'The party', exact: true }).fill('Lunch for Gwen');
    await press(page, 'Save the draft');
    await press(page, 'Issue quote 1');
    await expect.poll(() => words(page)).toContain('Issued Wed 14 Oct 2026');
    const quote = new URL(page.url()).pathname;
    await press(page, 'Quote 1 is accepted');
    await expect.poll(() => words(page)).toContain('Accepted Wed 14 Oct 2026');

    await page.getByRole('link', { name: 'Record a payment' }).click();
    await page.getByLabel('Amount').fill('156');
    await page.getByLabel('How and what for').fill('deposit, by bank');
    await press(page, 'Record this payment');
    await expect.poll(() => words(page)).toContain('deposit, one quarter of £156.00, paid');
    await press(page, 'Issue its receipt');
    await page.waitForURL(/papers\/receipt\/1/);
    await page.goto(`${lunch}/quotes`);
    await press(page, 'Issue an invoice of quote 1');
    await page.waitForURL(/papers\/invoice\/1/);

    for (const [address, said] of [
      [quote, 'deposit,onequarter.Received14October,thankyou'],
      ['/papers/invoice/1', '£468.00stilltobepaid'],
      ['/papers/receipt/1', '£156.00received,thankyou'],
    ] as const) {
      const sheets = await printed(page, address);
      expect(sheets, address).toHaveLength(1);
      expect(sheets[0], address).toContain(said);
      expect(sheets[0], address).toContain('1of1');
      expect(sheets[0], address).not.toMatch(/Margin|Recordapayment|Besidetoday/);
      expect(await overflow(page, paper), address).toEqual([]);
      await page.setViewportSize({ width: 1366, height: 768 });
    }

    await page.goto(lunch);
    await page.getByRole('link', { name: 'Change guest count' }).click();
    await page.locator('#head-count input[inputmode=numeric]').first().fill('40');
    await expect.poll(() => words(page)).toContain('40 guests now, 24 in quote 1: quote 2 is needed.');
    await page.locator('#save-guests').click();
    await page.locator('#clashes').getByRole('button', { name: 'Draft quote 2' }).click();
    await press(page, 'Save the draft');
    await expect.poll(() => words(page)).toContain('40 guests at £26.00 each');
    expect((await agent.get(quote)).text).toContain('Accepted Wed 14 Oct 2026');
    expect(complaints).toEqual([]);
  },
);

test('the pages of quotes and papers keep the rules of WCAG 2.2 AA, on a desk and on a phone', async () => {
  const { page: newPage } = open.get('A4')!;
  const quotes = ['', '/edit'].map((end) => `/quotes/retirement-lunch-quote-2${end}`);
  for (const page of [await newPage(), await newPage(phone)])
    for (const address of [
      `${lunch}/quotes`,
      ...quotes,
      '/quotes/retirement-lunch-quote-1',
      '/papers/invoice/1',
    ]) {
      expect((await page.goto(address))?.status(), address).toBe(200);
      await expectAccessible(page);
    }
});
