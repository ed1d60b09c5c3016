import { z } from 'zod';
import published from '../../../shared/allergens.json' with { type: 'json' };
import { key, name } from './common.js';
import { traits } from './traits.js';

export const dietKinds = ['allergen', 'choice', 'religious', 'medical'] as const;
export type DietKind = (typeof dietKinds)[number];

const ids = [...published.substances, ...published.groups].map(({ id }) => id);

/** A diet that the published ones lack: what it avoids, and whether traces count. */
export const ownDiet = z
  .strictObject({
    key,
    name,
    kind: z
      .enum(dietKinds)
      .describe('allergen and medical diets turn on traces too; a choice or a faith on what is in a dish.'),
    avoidsTraits: z.array(z.enum(traits)).max(30).default([]).describe('Facts it avoids.'),
    avoidsAllergens: z
      .array(z.string().regex(/^[a-z][a-z0-9-]{0,39}$/))
      .max(60)
      .default([])
      .describe(`Allergens it avoids: ${ids.join(', ')}.`),
    avoidsIngredients: z.array(key).max(100).default([]).describe('Ingredients it avoids, by their keys.'),
  })
  .describe("A diet of the kitchen's own making: a rule over facts.")
  .meta({ id: 'own-diet' });
export type OwnDiet = z.infer<typeof ownDiet>;
