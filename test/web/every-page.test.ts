import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { emptyKitchen, exampleKitchen, otherKitchen } from '../world.js';
import { type Agent, agentOn } from './agent.js';
import { anchorsIn, crawl, type Visited } from './crawl.js';
import { traybake } from './drafts/texts.js';
import { quoteEverything } from './quotes/quoted.js';

// Weeks before and after lead on for ever, and every day has a prep list; a few of each are enough.
const endless = /^\/(prep(\.csv|\.json)?)?\?(.*&)?(from|date)=/;

const worlds = { example: () => exampleKitchen(), other: () => otherKitchen(7), empty: emptyKitchen };

describe.each(Object.entries(worlds))('every page of the %s kitchen', (_, kitchen) => {
  let agent: Agent;
  let visited: Visited[];
  let pages: Visited[];
  beforeAll(async () => {
    agent = await agentOn(kitchen());
    await agent.post('/recipes/read', { text: traybake });
    const [event] = kitchen().events;
    if (event) await quoteEverything(agent, event.key);
    visited = await crawl(agent, '/', endless, 6);
    pages = visited.filter(({ type }) => type.includes('html'));
  });
  afterAll(() => agent.close());

  test('every link leads to an answer', () => {
    expect(
      visited.filter(({ status }) => status >= 400).map(({ address, from }) => `${from} → ${address}`),
    ).toEqual([]);
    expect(pages.length).toBeGreaterThan(kitchen().events.length > 0 ? 30 : 15);
  });

  test('every link to a part of a page finds the part', () => {
    const at = new Map(pages.map((page) => [page.address, page.body]));
    const lost = pages.flatMap(({ address, body }) =>
      anchorsIn(body, address)
        .filter((to) => at.get(to.address)?.includes(`id="${to.id}"`) === false)
        .map((to) => `${address} → ${to.address}#${to.id}`),
    );
    expect(lost).toEqual([]);
  });

  test('nothing is written into a page that the content policy would refuse', () => {
    for (const { address, body } of pages) {
      expect(body, address).not.toMatch(
        /<script(?![^>]*\bsrc=)[^>]*>|<style|\sstyle="|\son[a-z]+="|javascript:/i,
      );
    }
  });

  test('a whole page says its language and its title, and has one main heading', () => {
    for (const { address, body, status } of pages) {
      if (status !== 200 || !body.startsWith('<!doctype')) continue;
      expect(body, address).toMatch(/<html lang="[a-z]{2}/);
      expect(body, address).toMatch(/<title>[^<]+<\/title>/);
      expect(body.match(/<h1\b/g) ?? [], address).toHaveLength(1);
    }
  });

  test('no page says what is not ours to say, and none shows a figure that is none', () => {
    for (const { address, body } of pages) {
      const words = body.replace(/<[^>]*>/g, ' ');
      expect(words, address).not.toMatch(/\bsafe\b|\bsuitable for\b|\bguaranteed?\b/i);
      expect(words, address).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|\[object |\bInfinity\b/);
    }
  });
});
