import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { EntityName, EntityOf } from '../../src/core/facts/facts.js';
import { create, edit } from '../../src/store/changes.js';
import { read } from '../../src/store/documents.js';
import { remove } from '../../src/store/removal.js';
import { undo } from '../../src/store/undo.js';
import { anyEvent, anyIngredient, anyPlace, anyRecipe } from '../arbitraries/index.js';
import { useKitchen } from './kitchen.js';
import { by } from './world.js';

const kitchen = useKitchen();

const there = { ingredients: ['leek', 'flour'], recipes: ['tart', 'pastry'], places: ['home', 'barn'] };

const any: { [N in Exclude<EntityName, 'kitchen'>]: fc.Arbitrary<EntityOf[N]> } = {
  place: anyPlace('x', 'venue'),
  ingredient: anyIngredient('x'),
  recipe: anyRecipe('x', there),
  event: anyEvent('x', there),
};

// A document is made, changed to another, changed back by undo and removed; each time it reads as it was saved.
test.each(['place', 'ingredient', 'recipe', 'event'] as const)('any %s is kept as it is', async (entity) => {
  const own = (any[entity] as fc.Arbitrary<EntityOf[typeof entity]>).map((doc) => ({
    ...doc,
    origin: 'own' as const,
  }));
  await fc.assert(
    fc.asyncProperty(own, own, async (first, second) => {
      const { db } = kitchen;
      const made = await create(db, entity, first as never, by);
      expect(made).toMatchObject({ outcome: 'saved' });
      expect((await read(db, entity, 'x'))?.doc).toEqual(first);
      const revision = 'revision' in made ? made.revision : 0;
      const changed = await edit(db, entity, 'x', { ...by, revision, change: () => second as never });
      expect((await read(db, entity, 'x'))?.doc).toEqual(second);
      const undone =
        changed.outcome === 'saved' && changed.changeId ? await undo(db, changed.changeId, by) : changed;
      expect(undone).toMatchObject({ outcome: 'saved' });
      const back = await read(db, entity, 'x');
      expect(back?.doc).toEqual(first);
      expect(await remove(db, entity, 'x', { ...by, revision: back?.revision ?? 0 })).toMatchObject({
        outcome: 'removed',
      });
      expect(await read(db, entity, 'x')).toBeUndefined();
    }),
    { numRuns: 25 },
  );
});
