import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Workbook } from '../../src/core/facts/facts.js';
import { type Agent, agentOn } from '../web/agent.js';
import { openBrowser } from './chromium.js';

/** The workbook open in a real browser, with what its pages complained of. */
export type Open = {
  agent: Agent;
  address: string;
  browser: Browser;
  /** What broke on the pages so far: errors of scripts, refusals of the content policy, answers of 500. */
  complaints: string[];
  /** A new page, on a desk unless said. */
  page(size?: { width: number; height: number }): Promise<Page>;
  close(): Promise<void>;
};

export const desk = { width: 1366, height: 768 };
export const phone = { width: 390, height: 844 };

export const openWorkbook = async (kitchen?: Workbook): Promise<Open> => {
  const agent = await agentOn(kitchen);
  const address = (await agent.app.listen({ host: '127.0.0.1', port: 0 })).replace('127.0.0.1', 'localhost');
  const browser = await openBrowser();
  const complaints: string[] = [];
  const contexts: BrowserContext[] = [];
  return {
    agent,
    address,
    browser,
    complaints,
    page: async (viewport = desk) => {
      const context = await browser.newContext({ viewport, baseURL: address });
      contexts.push(context);
      const page = await context.newPage();
      page.on('pageerror', (error) => complaints.push(error.message));
      page.on('console', (line) => {
        if (/Content Security Policy|Refused to/.test(line.text())) complaints.push(line.text());
      });
      page.on('response', (answer) => {
        if (answer.status() >= 500) complaints.push(`${answer.status()} ${answer.url()}`);
      });
      return page;
    },
    close: async () => {
      for (const context of contexts) await context.close();
      await browser.close();
      await agent.close();
    },
  };
};

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** No violation of WCAG 2.2 AA that axe finds, and no sideways scroll. */
export const expectAccessible = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze();
  const found = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
  expect(found, page.url()).toEqual([]);
  const wide = await page.evaluate('document.documentElement.scrollWidth - innerWidth');
  expect(wide, `${page.url()} scrolls sideways`).toBeLessThanOrEqual(0);
};
