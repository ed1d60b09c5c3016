import { afterAll, beforeAll, expect, test } from 'vitest';
import { edit } from '../../../src/store/changes.js';
import { read } from '../../../src/store/documents.js';
import { type Agent, agentOn, now } from '../agent.js';
import { accepted, priced } from '../quotes/quoted.js';

let agent: Agent;
beforeAll(async () => {
  const kitchen = priced();
  // Invented: butter was 8.00 a kilo at the end of September, and is 16.00.
  for (const one of kitchen.ingredients)
    if (one.key === 'butter')
      one.packs[0]!.prices = [
        { key: 'p1', date: '2026-09-30', price: 200, guess: false },
        { key: 'p2', date: '2026-10-10', price: 400, guess: false },
      ];
  agent = await agentOn(kitchen);
  await accepted(agent);
  const { revision } = (await read(agent.db, 'event', 'retirement-lunch'))!;
  await edit(agent.db, 'event', 'retirement-lunch', {
    revision,
    change: (doc) => ({ ...doc, price: { ...doc.price, by: { aGuest: 5000 } } }),
    who: 'test',
    at: now,
  });
});
afterAll(() => agent.close());

// Twenty-four guests at 26.00 are 624.00, whatever price is set since.
test('margins are of what the client accepted, not of a price that is set since', async () => {
  const { text } = await agent.get('/events/retirement-lunch/beside-real?view=used');
  expect(text).toContain('Of the price accepted in quote 1, £624.00 without tax, the margin was');
  const { body } = await agent.get('/price-moves.json?days=10');
  const [row] = body.tables[1].rows.filter(({ event }: { event: string }) => event === 'Retirement lunch');
  const margin = (cost: string) => ((624 - Number(cost)) / 6.24).toFixed(1);
  expect([row.marginBefore, row.marginAfter]).toEqual([margin(row.costBefore), margin(row.costAfter)]);
  expect(Number(row.marginBefore)).toBeGreaterThan(Number(row.marginAfter));
});
