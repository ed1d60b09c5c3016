import { afterAll, beforeAll, expect, test } from 'vitest';
import { read } from '../../../src/store/documents.js';
import { exampleKitchen } from '../../world.js';
import { type Agent, agentOn } from '../agent.js';
import { fieldsOf } from '../forms.js';

const kitchen = exampleKitchen();
const recipe = kitchen.recipes.find(({ steps }) => steps.length > 1)!;
const [first, ...rest] = recipe.steps;
const shared = { ...recipe, steps: [{ ...first!, equipment: ['Fryer', 'tray, large'] }, ...rest] };
let agent: Agent;
beforeAll(async () => {
  agent = await agentOn({
    ...kitchen,
    recipes: kitchen.recipes.map((one) => (one === recipe ? shared : one)),
  });
});
afterAll(() => agent.close());

const page = `/recipes/${recipe.key}`;
const edit = `${page}/edit`;
const stored = async () => (await read(agent.db, 'recipe', recipe.key))!.doc;

test('an edit of something else never loses a step’s equipment', async () => {
  const form = fieldsOf((await agent.get(edit)).text);
  expect(form['steps[0].equipment']).toBe('Fryer; tray, large');
  expect((await agent.post(edit, { ...form, note: 'Another note' })).status).toBe(303);
  expect((await stored()).steps[0]!.equipment).toEqual(['Fryer', 'tray, large']);
  expect((await agent.get(page)).text).toContain('with fryer and tray, large');
});

test('equipment is typed with commas, offered again, and refused where it is too long', async () => {
  const form = fieldsOf((await agent.get(edit)).text);
  await agent.post(edit, { ...form, 'steps[1].equipment': 'board, Fryer' });
  expect((await stored()).steps[1]!.equipment).toEqual(['board', 'Fryer']);
  const now = (await agent.get(edit)).text;
  expect(now).toContain('<option value="tray, large">');
  const wrong = await agent.post(edit, { ...fieldsOf(now), 'steps[1].equipment': 'x'.repeat(70) });
  expect(wrong.status).toBe(422);
  expect(wrong.text).toContain('in at most 60 signs');
});

test('a recipe that is read in names the fryer and the grill its method names', async () => {
  const text =
    'Chips\nServes 4\n\nIngredients\n1 kg potatoes\n\nMethod\n1. Deep-fry the potatoes for 5 minutes.\n2. Put them under a hot grill for 2 minutes.\n';
  const { headers } = await agent.post('/recipes/read', { text });
  const form = fieldsOf((await agent.get(headers.location!)).text, headers.location!);
  expect([form['steps[0].equipment'], form['steps[1].equipment']]).toEqual(['fryer', 'grill']);
  expect((await agent.get(headers.location!)).text).toContain('food touches the fryer');
});
