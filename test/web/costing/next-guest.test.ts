import { afterAll, beforeAll, expect, test } from 'vitest';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

// The supper of 60: the 60th guest begins a third batch of stew, 45 + 40 minutes more at 16.00 and twice that of the
// hob; the 61st needs a fourth to serve, 4½ hours at 13.50.
test('the costing page says what one guest fewer saves and which guest nearby costs the most, and why', async () => {
  const { text } = await agent.get('/events/choir-supper/costing');
  expect(text).toContain('One guest fewer saves £28.40.');
  expect(text).toContain(
    'Cooking: the 60th guest begins a third batch of Beef and ale stew with mash, 85 minutes more.',
  );
  expect(text).toContain('Nearby the 61st guest costs the most, £65.59.');
  expect(text).toContain('Serving: at 60 guests three people are enough; the 61st guest needs a fourth.');
  const bought = await agent.get('/events/birthday-tea/costing?view=bought');
  expect(bought.text).toContain('One guest fewer saves £14.13.');
  expect(bought.text).toContain(
    'Topside of beef: at 37 guests six packs are enough; the 38th guest needs a seventh.',
  );
});
