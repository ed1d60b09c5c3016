import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Agent, agentOn } from '../agent.js';
import { kitchenWithTeas } from './held.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = kitchenWithTeas();
  const [tea] = kitchen.events.filter(({ key }) => key === 'tea-2026-09-12');
  for (const dish of tea!.courses.flatMap(({ dishes }) => dishes)) dish.price = 300;
  // Bought beside the plan, and no longer in the kitchen.
  tea!.afterwards!.bought.push({ ingredient: 'gone-since', amount: null, paid: 250 });
  agent = await agentOn(kitchen);
});
afterAll(() => agent.close());

const pages = [
  '/ingredients/butter/prices',
  '/price-moves?days=365',
  '/events/tea-2026-09-12',
  '/events/tea-2026-09-12/afterwards',
  '/events/tea-2026-09-12/beside-real',
  '/events/tea-2026-10-03/beside-real?view=used',
  '/averages',
  '/menu-engineering?coming=on',
  '/events/birthday-tea/fewer?guests=20',
];

test('pages that look back: one heading, nothing that the policy refuses, no figure that is none', async () => {
  for (const address of pages) {
    const { status, text } = await agent.get(address);
    expect(status, address).toBe(200);
    expect(text.match(/<h1\b/g), address).toHaveLength(1);
    expect(text, address).not.toMatch(/\sstyle="|<style|\son[a-z]+="|javascript:/i);
    const words = text.replace(/<[^>]*>/g, ' ');
    expect(words, address).not.toMatch(
      /\bsafe\b|\bsuitable for\b|\bguaranteed?\b|\bNaN\b|\bundefined\b|\bnull\b/i,
    );
  }
});

test('every link of them leads to an answer', async () => {
  const links = new Set<string>();
  for (const address of pages) {
    const { text } = await agent.get(address);
    const main = text.slice(text.indexOf('<main'));
    for (const [, href] of main.matchAll(/href="(\/[^"#]*)/g)) links.add(href!.replaceAll('&amp;', '&'));
  }
  expect(links.size).toBeGreaterThan(40);
  // Of the pages of ingredients and recipes one of each is enough.
  const shapes = new Map(
    [...links].map((href) => [href.replace(/^(\/(?:ingredients|recipes)\/)[^/?]+/, '$1:key'), href]),
  );
  for (const href of shapes.values()) expect((await agent.get(href)).status, href).toBe(200);
});

test('what was bought beside the plan and is gone since stands by its key and counts', async () => {
  const { text } = await agent.get('/events/tea-2026-09-12/beside-real');
  expect(text).toContain('gone-since');
  expect(text).not.toContain('href="/ingredients/gone-since"');
  expect(text).toContain('£2.50 so far');
});
