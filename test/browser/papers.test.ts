import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Workbook } from '../../src/core/facts/facts.js';
import { exampleKitchen } from '../world.js';
import { pagesOf } from './pdf.js';
import { type Open, openWorkbook } from './workbook.js';

const dishes = 40;

/** The example with a buffet of forty dishes: its own recipes again and again, each under a name of its own. */
const large = (paper: 'A4' | 'Letter'): Workbook => {
  const kitchen = exampleKitchen();
  kitchen.kitchen.paper = paper;
  const event = kitchen.events.find(({ key }) => key === 'retirement-lunch')!;
  const served = event.courses.flatMap((course) => course.dishes.map(({ recipe }) => recipe));
  const names = new Map(kitchen.recipes.map((recipe) => [recipe.key, recipe]));
  const keys = Array.from({ length: dishes }, (_, at) => {
    const of = names.get(served[at % served.length]!)!;
    const key = `dish-${at}`;
    kitchen.recipes.push({ ...structuredClone(of), key, name: `${of.name}, ${at + 1}` });
    return key;
  });
  const [course] = event.courses;
  const dish = course!.dishes[0]!;
  event.courses = [{ ...course!, dishes: keys.map((recipe) => ({ ...dish, key: recipe, recipe })) }];
  return kitchen;
};

const open = new Map<string, Open>();
beforeAll(async () => {
  for (const paper of ['A4', 'Letter'] as const) open.set(paper, await openWorkbook(large(paper)));
});
afterAll(async () => {
  for (const one of open.values()) await one.close();
});

const lunch = '/events/retirement-lunch';
const printed = async (page: Page, address: string): Promise<string[]> => {
  await page.goto(address);
  return pagesOf(await page.pdf({ preferCSSPageSize: true }));
};
const papers = [['A4'], ['Letter']];

test.each(papers)(
  'the matrix of forty dishes on %s repeats its heads on every page it takes',
  async (paper) => {
    const page = await open.get(paper)!.page();
    const pages = await printed(page, `${lunch}/allergens`);
    const rows = (words: string) => words.match(/\w+,\d+(?=(–\*?|C|\?|MMMMM){14})/g) ?? [];
    const matrix = pages.filter((words) => rows(words).length > 0);
    expect(matrix.length).toBeGreaterThan(1);
    for (const words of matrix) expect(words).toMatch(/DishGlutenCrustaceansEggs.*LupinMolluscs/);
    expect(new Set(matrix.flatMap(rows)).size).toBe(dishes);
    expect(pages.every((words, at) => words.startsWith(`${at + 1}of${pages.length}`))).toBe(true);
  },
);

test.each(papers)(
  'forty cards are five sheets of eight on %s, and nothing on one is cut off',
  async (paper) => {
    const page = await open.get(paper)!.page();
    const pages = await printed(page, `${lunch}/allergens/table`);
    const cards = pages.map((words) => words.match(/itdoesnottestfood/g)?.length ?? 0);
    expect(cards).toEqual([8, 8, 8, 8, 8]);
    await page.emulateMedia({ media: 'print' });
    const cut = `[...document.querySelectorAll('.cut-card, .cut-card *')]
    .filter((one) => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== 'inline').length`;
    expect(await page.evaluate(cut)).toBe(0);
  },
);

test.each(papers)('the questions fit one page of %s, whatever list is in force', async (paper) => {
  const { agent, page: newPage } = open.get(paper)!;
  const page = await newPage();
  for (const list of ['eu', 'us', 'ca', 'anz'] as const) {
    await agent.db.updateTable('kitchen').set({ allergen_list: list }).execute();
    const pages = await printed(page, `${lunch}/questions?by=2026-11-20`);
    expect(pages, list).toHaveLength(1);
    expect(pages[0]).toContain('Whatdoyourguestseat?');
    expect(pages[0]).not.toContain('Putthedayonthesheet');
  }
  await agent.db.updateTable('kitchen').set({ allergen_list: 'eu' }).execute();
});

test.each(papers)(
  'the list for the pass says on every page of %s what it is and that it stays here',
  async (paper) => {
    const pages = await printed(await open.get(paper)!.page(), `${lunch}/pass`);
    for (const words of pages) {
      expect(words).toContain('Retirementlunch,Sat5Dec2026');
      expect(words).toContain('Keepitinthekitchen.');
    }
  },
);

/** The pixels of a mark as it prints, in grey from 0 to 255. */
const greyOf = async (page: Page, state: string): Promise<number[]> => {
  const png = await page.locator(`.legend .cell.${state}`).screenshot();
  const blank = await page.context().newPage();
  const grey = (await blank.evaluate(`(async () => {
    const image = await createImageBitmap(await (await fetch('data:image/png;base64,${png.toString('base64')}')).blob());
    const canvas = new OffscreenCanvas(24, 24);
    const paint = canvas.getContext('2d');
    paint.fillStyle = '#fff';
    paint.fillRect(0, 0, 24, 24);
    paint.drawImage(image, 0, 0, 24, 24);
    const { data } = paint.getImageData(0, 0, 24, 24);
    return Array.from({ length: 576 }, (_, i) => Math.round(0.299 * data[4 * i] + 0.587 * data[4 * i + 1] + 0.114 * data[4 * i + 2]));
  })()`)) as number[];
  await blank.close();
  return grey;
};

test('the marks of the matrix differ in shape, in grey and on a copier that knows only black and white', async () => {
  const page = await open.get('A4')!.page();
  await page.goto(`${lunch}/allergens`);
  await page.emulateMedia({ media: 'print' });
  const states = ['contains', 'may', 'free', 'word', 'unknown'];
  const marks: number[][] = [];
  for (const state of states) marks.push(await greyOf(page, state));
  const differ = (a: number[], b: number[], far: number) =>
    a.filter((grey, at) => Math.abs(grey - b[at]!) > far).length;
  const black = (mark: number[]) => mark.map((grey) => (grey < 128 ? 0 : 255));
  for (const [i, one] of marks.entries()) {
    expect(black(one).filter((grey) => grey === 0).length, `${states[i]} leaves ink`).toBeGreaterThan(5);
    for (const [j, other] of marks.entries()) {
      if (j <= i) continue;
      expect(differ(one, other, 60), `${states[i]} and ${states[j]} in grey`).toBeGreaterThan(14);
      expect(differ(black(one), black(other), 60), `${states[i]} and ${states[j]} in black`).toBeGreaterThan(
        9,
      );
    }
  }
  const signs = await page.locator('.legend .cell').allTextContents();
  expect(new Set(signs).size).toBe(states.length);
});

test('a paper printed without a script is noted all the same, and with one the dialog opens once', async () => {
  const { browser, address, page: newPage } = open.get('A4')!;
  const plain = await (await browser.newContext({ javaScriptEnabled: false, baseURL: address })).newPage();
  await plain.goto(`${lunch}/pass`);
  await plain.getByRole('button', { name: 'Print for the kitchen' }).click();
  await plain.waitForURL(/printing=1/);
  expect(await plain.locator('main').textContent()).toContain('Noted as printed.');
  await plain.context().close();

  const page = await newPage();
  await page.addInitScript('window.prints = 0; window.print = () => { window.prints += 1; };');
  await page.goto(`${lunch}/allergens`);
  await page.keyboard.press('p');
  await page.waitForURL(/printing=1/);
  await expect.poll(() => page.evaluate('window.prints')).toBe(1);
  await page.reload();
  expect(await page.evaluate('window.prints')).toBe(0);
  for (const { complaints } of open.values()) expect(complaints).toEqual([]);
});

test.each(papers)(
  'where no label was read, under the longest list, %s still holds eight cards',
  async (paper) => {
    const { agent, page: newPage } = open.get(paper)!;
    await agent.db.updateTable('kitchen').set({ allergen_list: 'anz' }).execute();
    await agent.db.updateTable('ingredient').set({ allergens: '{}' }).execute();
    const pages = await printed(await newPage(), `${lunch}/allergens/table`);
    expect(pages.map((words) => words.match(/itdoesnottestfood/g)?.length)).toEqual([8, 8, 8, 8, 8]);
    expect(pages.join('').match(/Notchecked:askus\./g)).toHaveLength(dishes);
    expect(pages.join('')).not.toMatch(/Notlisted|Contains:/);
  },
);
