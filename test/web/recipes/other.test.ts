import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { otherKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

const kitchen = otherKitchen(11);
let agent: Agent;
beforeAll(async () => {
  agent = await agentOn(structuredClone(kitchen));
});
afterAll(() => agent.close());

test('in a kitchen of other money, measures, heat and law, forms sent back as drawn change nothing', async () => {
  for (const { key } of kitchen.recipes.slice(0, 8)) {
    const url = `/recipes/${key}/edit`;
    const sent = await agent.post(url, fieldsOf((await agent.get(url)).text));
    expect([key, sent.status, sent.headers.location]).toEqual([key, 303, `/recipes/${key}`]);
  }
  for (const { key } of kitchen.ingredients.slice(0, 6))
    for (const part of ['packs', 'yield', 'label', 'diets', 'keeping']) {
      const before = await read(agent.db, 'ingredient', key);
      const url = `/ingredients/${key}/${part}`;
      const sent = await agent.post(url, fieldsOf((await agent.get(url)).text));
      expect([url, sent.status]).toEqual([url, 303]);
      expect((await read(agent.db, 'ingredient', key))?.doc).toEqual(before?.doc);
    }
});

test('every recipe and ingredient page opens there', async () => {
  for (const { key } of kitchen.recipes.slice(0, 8))
    expect((await agent.get(`/recipes/${key}?portions=7`)).status, key).toBe(200);
  for (const { key } of kitchen.ingredients.slice(0, 8))
    expect((await agent.get(`/ingredients/${key}`)).status, key).toBe(200);
});
