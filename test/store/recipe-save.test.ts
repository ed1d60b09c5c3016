import { tmpdir } from 'node:os';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ingredient } from '../../src/core/facts/ingredient.js';
import { type Recipe, recipe } from '../../src/core/facts/recipe.js';
import { editIn } from '../../src/store/changes.js';
import { dishesUsing } from '../../src/store/dishes.js';
import { read } from '../../src/store/documents.js';
import { draftOf } from '../../src/store/draft.js';
import { namesOf, sectionsOf } from '../../src/store/names.js';
import { withNewIngredients } from '../../src/store/recipe-save.js';
import { add } from '../../src/store/saves.js';
import { importWorkbook } from '../../src/store/workbook.js';
import { type TestDatabase, testDatabase } from '../database.js';
import { exampleKitchen } from '../world.js';

let at: TestDatabase;
const by = { who: 'test', at: new Date('2026-10-14T09:20:00Z') };

beforeAll(async () => {
  at = await testDatabase();
  await importWorkbook(at.db, exampleKitchen(), { ...by, dataDir: tmpdir() });
});
afterAll(() => at.close());

const saffron = ingredient.parse({ key: 'saffron', name: 'Saffron' });
const line = (key: string) => ({ key, amount: '1', unit: 'g', item: { ingredient: key } });
const withLine = (doc: Recipe, key: string): Recipe =>
  recipe.parse({ ...doc, lines: [...doc.lines, line(key)] });

test('a recipe and the ingredients it is the first to name are saved together', async () => {
  const stored = (await read(at.db, 'recipe', 'mash'))!;
  const outcome = await withNewIngredients(at.db, [saffron], by, (trx) =>
    editIn(trx, 'recipe', 'mash', {
      revision: stored.revision,
      change: (doc) => withLine(doc, 'saffron'),
      ...by,
    }),
  );
  expect(outcome.outcome).toBe('saved');
  expect((await read(at.db, 'ingredient', 'saffron'))?.doc.allergens).toEqual({});
});

test('a recipe refused leaves no ingredient behind', async () => {
  const sumac = ingredient.parse({ key: 'sumac', name: 'Sumac' });
  const made = recipe.parse({ key: 'x', name: 'Mashed potato', yield: { portions: '1' } });
  const outcome = await withNewIngredients(at.db, [sumac], by, (trx) =>
    add(trx, 'recipe', withLine(made, 'sumac'), by),
  );
  expect(outcome.outcome).toBe('refused');
  expect(await read(at.db, 'ingredient', 'sumac')).toBeUndefined();
});

test('every dish a component goes into is found, through any depth', async () => {
  const uses = await dishesUsing(at.db, 'vegetable-stock', '2026-12-01');
  expect(uses.map(({ event, recipe: of }) => `${event} ${of}`)).toEqual([
    'choir-supper beef-stew',
    'choir-supper lentil-pie',
    'choir-supper lentil-pie-oil',
    'retirement-lunch lentil-pie-oil',
  ]);
  expect(await dishesUsing(at.db, 'vegetable-stock', '2026-12-06')).toEqual([]);
});

test('names and sections stand once each, archived ones marked', async () => {
  const { ingredients, recipes } = await namesOf(at.db);
  expect(ingredients.find(({ key }) => key === 'leek')).toEqual({
    key: 'leek',
    name: 'Leek',
    archived: false,
  });
  expect(recipes).toHaveLength(exampleKitchen().recipes.length);
  expect(await sectionsOf(at.db)).toContain('Vegetables');
});

test('a draft brings its own ingredients into the facts and leaves those that stand alone', async () => {
  const { doc } = (await read(at.db, 'recipe', 'shortcrust'))!;
  const ghee = ingredient.parse({ key: 'ghee', name: 'Ghee' });
  const wanted = withLine(withLine(doc, 'leek'), 'ghee');
  const draft = (await draftOf(at.db, wanted, { added: [ghee], events: ['birthday-tea'] }))!;
  expect(draft.before.recipes.get('shortcrust')).toEqual(doc);
  expect(draft.after.recipes.get('shortcrust')).toEqual(wanted);
  expect(draft.after.ingredients.get('leek')?.name).toBe('Leek');
  expect(draft.after.ingredients.get('ghee')).toEqual(ghee);
  expect(draft.events.map(({ key }) => key)).toEqual(['birthday-tea']);
});
