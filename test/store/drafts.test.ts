import { expect, test } from 'vitest';
import type { RecipeDraft } from '../../src/core/exchange/recipe/draft.js';
import { recipe } from '../../src/core/facts/recipe.js';
import { makeRecipe } from '../../src/store/draft-recipe.js';
import {
  forgetDrafts,
  keepDrafts,
  openDrafts,
  readDraft,
  saveDraft,
  throwDraft,
} from '../../src/store/drafts.js';
import { exportWorkbook } from '../../src/store/workbook.js';
import { useKitchen } from './kitchen.js';
import { by } from './world.js';

const kitchen = useKitchen();

const read: RecipeDraft = {
  name: 'Leek broth',
  source: 'text',
  yield: { text: '', portions: '4', portionsTo: null, byPiece: false, weight: null, volume: null },
  times: { prep: null, cook: null, total: null },
  sections: [],
  steps: [],
  note: '',
  unsure: [],
};
const begin = async () => {
  const [id] = await keepDrafts(
    kitchen.db,
    [{ name: 'Leek broth', read, form: { name: 'x' }, text: 'y' }],
    by,
  );
  return id!;
};
const broth = (name: string) => ({
  recipe: recipe.parse({ key: name.toLowerCase().replaceAll(' ', '-'), name, yield: { portions: '4' } }),
  components: [],
  ingredients: [],
  weights: [],
});

test('a draft comes back as it was kept, and the workbook file holds none of it', async () => {
  const before = await exportWorkbook(kitchen.db);
  const id = await begin();
  expect(await readDraft(kitchen.db, id)).toMatchObject({
    read,
    form: { name: 'x' },
    text: 'y',
    revision: 1,
  });
  expect(await exportWorkbook(kitchen.db)).toEqual(before);
});

test('of two saves from one revision the second is refused and changes nothing', async () => {
  const id = await begin();
  const save = (form: object) => saveDraft(kitchen.db, { id, revision: 1, name: 'n', form }, by);
  expect(await save({ mine: '1' })).toBe(2);
  expect(await save({ theirs: '1' })).toBeUndefined();
  expect((await readDraft(kitchen.db, id))?.form).toEqual({ mine: '1' });
});

test('a draft makes one recipe, and not from an older revision', async () => {
  const id = await begin();
  expect((await makeRecipe(kitchen.db, { id, revision: 0 }, broth('Broth one'), by)).outcome).toBe('gone');
  expect((await makeRecipe(kitchen.db, { id, revision: 1 }, broth('Broth one'), by)).outcome).toBe('saved');
  expect((await readDraft(kitchen.db, id))?.recipe).toBe('broth-one');
  expect((await openDrafts(kitchen.db)).map((draft) => draft.id)).not.toContain(id);
});

test('a component that is refused leaves nothing of the recipe', async () => {
  const id = await begin();
  const built = { ...broth('Broth two'), components: [broth('Broth one').recipe, broth('Broth one').recipe] };
  const outcome = await makeRecipe(kitchen.db, { id, revision: 1 }, built, by);
  expect(outcome.outcome).toBe('refused');
  expect((await exportWorkbook(kitchen.db))?.recipes.map(({ key }) => key)).not.toContain('broth-two');
  expect((await readDraft(kitchen.db, id))?.recipe).toBeNull();
});

test('what was thrown away goes with the old history, what waits stays', async () => {
  const [old, waits] = [await begin(), await begin()];
  await throwDraft(kitchen.db, old, by.at);
  await forgetDrafts(kitchen.db, new Date(by.at.getTime() - 1));
  expect(await readDraft(kitchen.db, old)).toMatchObject({ thrown: true });
  await forgetDrafts(kitchen.db, new Date(by.at.getTime() + 1));
  expect(await readDraft(kitchen.db, old)).toBeUndefined();
  expect(await readDraft(kitchen.db, waits)).toMatchObject({ thrown: false });
});
