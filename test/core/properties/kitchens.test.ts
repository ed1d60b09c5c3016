import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allergensOf } from '../../../src/core/allergens.js';
import { costOfEvent } from '../../../src/core/costing.js';
import { requirementsOf } from '../../../src/core/requirements.js';
import { anyKitchen, type Kitchen } from '../kitchens.js';

const dishesOf = ({ facts, events }: Kitchen) =>
  events.flatMap((event) => requirementsOf(event, facts).flatMap(({ dishes }) => dishes));
const linesOf = (kitchen: Kitchen) =>
  dishesOf(kitchen).flatMap(({ recipes }) => recipes.flatMap(({ lines }) => lines));
const costs = ({ facts, events }: Kitchen) => events.map((event) => costOfEvent(event, facts).value);
const cells = ({ facts }: Kitchen) =>
  [...facts.recipes.values()].flatMap((recipe) => allergensOf(recipe, facts));

const kitchens = fc.sample(anyKitchen, { numRuns: 300, seed: 7 });

// A property over kitchens in which a thing never happens would hold of anything: what the properties speak of does.
test.each<[string, (kitchen: Kitchen) => boolean]>([
  [
    'a cost that is complete and above nothing',
    (k) => costs(k).some(({ complete, total }) => complete && total > 0),
  ],
  ['a cost that is known in part', (k) => costs(k).some(({ complete, total }) => !complete && total > 0)],
  ['a dish of three or more recipes', (k) => dishesOf(k).some(({ recipes }) => recipes.length > 2)],
  ['whole pieces', (k) => linesOf(k).some(({ line, amount }) => line.scales === 'pieces' && amount)],
  ['a line to taste', (k) => linesOf(k).some(({ line }) => line.amount === null)],
  [
    'a component that is asked for as it is not known',
    (k) => linesOf(k).some((n) => n.component && n.amount && !n.batches),
  ],
  ['nothing eaten', (k) => dishesOf(k).some(({ portions }) => portions.isZero)],
  ...(['contains', 'may', 'unknown', 'free'] as const).map(
    (state): [string, (kitchen: Kitchen) => boolean] => [
      state,
      (k) => cells(k).some((cell) => cell.state === state),
    ],
  ),
  [
    'a may contain with something not known',
    (k) => cells(k).some(({ state, unknown }) => state === 'may' && unknown),
  ],
])('of 300 kitchens some have %s', (_, has) => {
  expect(kitchens.filter((kitchen) => has(kitchen)).length).toBeGreaterThan(2);
});
