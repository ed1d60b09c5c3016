import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allergensOf } from '../../../src/core/allergens.js';
import { costOfEvent } from '../../../src/core/costing.js';
import { requirementsOf } from '../../../src/core/requirements.js';
import type { LineNeed } from '../../../src/core/scaling.js';
import { anyKitchen, type Kitchen } from '../kitchens.js';

const dishesOf = ({ facts, events }: Kitchen) =>
  events.flatMap((event) => requirementsOf(event, facts).flatMap(({ dishes }) => dishes));
const recipesOf = (kitchen: Kitchen) => dishesOf(kitchen).flatMap(({ recipes }) => recipes);
const linesOf = (kitchen: Kitchen) => recipesOf(kitchen).flatMap(({ lines }) => lines);
const isCooked = ({ line, prepared }: LineNeed) => line.stated === 'cooked' && prepared !== undefined;
const asked = ({ problems }: LineNeed) => problems.some(({ code }) => code === 'no-cooked-yield');
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
  ['a range that is needed', (k) => linesOf(k).some(({ least, amount }) => least && amount)],
  ...(['herb', 'chilli', 'batch'] as const).map((way): [string, (kitchen: Kitchen) => boolean] => [
    `a line that scales as ${way} and not straight`,
    (k) =>
      recipesOf(k).some(({ factor, lines }) =>
        lines.some(
          ({ line, base, amount }) =>
            line.scales === way && factor && amount && base && !amount.equals(base.times(factor)),
        ),
      ),
  ]),
  [
    'a per cent of flour that is known',
    (k) => linesOf(k).some(({ line, amount }) => line.unit === 'percent' && amount),
  ],
  ['a weight once cooked, and what to buy for it', (k) => linesOf(k).some((n) => isCooked(n) && n.bought)],
  ['a weight once cooked that is asked about', (k) => linesOf(k).some((n) => isCooked(n) && asked(n))],
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
