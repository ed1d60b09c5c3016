import { afterAll, beforeAll, expect, test } from 'vitest';
import { edit } from '../../../src/store/changes.js';
import { eventFacts } from '../../../src/store/facts.js';
import { search } from '../../../src/way-out/search.js';
import { waysFor } from '../../../src/web/way-out/searches.js';
import { dietsParty } from '../../bench/kitchen/diets-party.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';

let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(exampleKitchen());
});
afterAll(() => agent.close());

const lunch = async () => {
  const { events, facts, stored } = (await eventFacts(agent.db, ['retirement-lunch']))!;
  return { event: events[0]!, facts, revision: stored[0]!.revision };
};
const enough = 60_000;

test('who will not wait is told nothing yet; the search goes on, and who asks again is told the same', async () => {
  const one = await lunch();
  expect(await waysFor(agent.db, one, 0)).toBeUndefined();
  const found = await waysFor(agent.db, one, enough);
  expect(found!.ways.length).toBeGreaterThan(0);
  // On a PostgreSQL that others write to, something may have been saved meanwhile, and then it is searched anew.
  expect(await waysFor(agent.db, one, enough)).toEqual(found);
});

test('after any save it is searched anew', async () => {
  const before = await waysFor(agent.db, await lunch(), enough);
  const { revision } = await lunch();
  await edit(agent.db, 'event', 'retirement-lunch', {
    revision,
    change: (doc) => ({ ...doc, guests: doc.guests.filter(({ key }) => key !== 'gwen') }),
    who: 'test',
    at: new Date(),
  });
  const after = await waysFor(agent.db, await lunch(), enough);
  expect(before!.lacking.map(({ who }) => who)).toContain('Gwen Abery (vegan)');
  expect(after!.lacking.map(({ who }) => who)).not.toContain('Gwen Abery (vegan)');
});

test('a search that is stopped has no answer', async () => {
  const { answer, stop } = search({ ...dietsParty('stopped'), stoodIn: new Map() });
  stop();
  await expect(answer).rejects.toThrow('the search was stopped');
});
