import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { crawl } from '../web/crawl.js';
import { traybake } from '../web/drafts/texts.js';
import { quoteEverything } from '../web/quotes/quoted.js';
import { exampleKitchen } from '../world.js';
import { expectAccessible, type Open, openWorkbook, phone } from './workbook.js';

let open: Open;
let addresses: string[];
beforeAll(async () => {
  open = await openWorkbook(exampleKitchen());
  await open.agent.post('/recipes/read', { text: traybake });
  await quoteEverything(open.agent, 'retirement-lunch');
  const visited = await crawl(open.agent, '/', /[?&](from|date)=/, 2);
  const pages = visited.filter(({ status, type }) => status === 200 && type.includes('html'));
  // One address of each shape: the pages of two recipes differ in nothing that a rule of the page could see.
  const shapes = new Map(pages.map(({ address }) => [shapeOf(address), address]));
  addresses = [...shapes.values(), '/no-such-page'];
});
afterAll(() => open.close());

const shapeOf = (address: string): string =>
  address
    .replace(
      /^(\/(?:events|recipes|ingredients|places|quotes|history\/\w+|papers\/\w+)\/)(?!new\b)[^/?]+/,
      '$1:key',
    )
    .replace(/=[^&]+/g, '=');

const long = 240_000;

const visit = async (page: Page) => {
  expect(addresses.length).toBeGreaterThan(35);
  for (const address of addresses) {
    await page.goto(address);
    await expectAccessible(page);
  }
};

test(
  'no page breaks a rule of WCAG 2.2 AA that axe knows, on a desk',
  async () => visit(await open.page()),
  long,
);

test('nor on a phone, and none scrolls sideways', async () => visit(await open.page(phone)), long);

test('no page complained meanwhile', () => expect(open.complaints).toEqual([]));
