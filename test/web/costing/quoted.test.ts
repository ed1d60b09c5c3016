import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';
import { accepted, lunch, priced } from '../quotes/quoted.js';

let agent: Agent;
beforeAll(async () => {
  const book = priced();
  const event = book.events.find(({ key }) => key === 'retirement-lunch')!;
  event.costs = [{ key: 'c1', name: 'Hands', kind: 'hands', by: { aGuest: 700 }, note: '' }];
  agent = await agentOn(book);
});
afterAll(() => agent.close());

test('without a quote the price stands by itself', async () => {
  const { text } = await agent.get(`${lunch}/costing`);
  expect(text).not.toContain('Margin when quoted');
  expect(text).not.toContain('accepted');
});

test('an accepted quote stands at the head with the margin it left, whatever costs become, and its price holds', async () => {
  const quote = await accepted(agent);
  const then = (await agent.get(`${lunch}/costing`)).text;
  expect(then).toMatch(new RegExp(`<a href="${quote}">Quote 1, accepted Wed 14 Oct at £26\\.00 a guest</a>`));
  const marginOf = (text: string, label: string) =>
    new RegExp(`<dt>${label}</dt><dd[^>]*>([\\d.]+%)</dd>`).exec(text)?.[1];
  const left = marginOf(then, 'Margin when quoted');
  expect(left).toBe(marginOf(then, 'Margin now'));
  const at = `${lunch}/costs`;
  await agent.post(at, { ...fieldsOf((await agent.get(at)).text, at), 'costs[0].sum': '9.00' });
  const now = (await agent.get(`${lunch}/costing`)).text;
  expect(marginOf(now, 'Margin when quoted')).toBe(left);
  // Two pounds of 26.00 more.
  expect(Number.parseFloat(left!) - Number.parseFloat(marginOf(now, 'Margin now')!)).toBeCloseTo(7.7, 1);
  expect(now).toContain('A new price takes quote 2, which');
});
