import fc from 'fast-check';
import { expect, test } from 'vitest';
import { guestChange } from '../../../src/core/guest-change.js';
import { copyMenu } from '../../../src/core/menu.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { showQuantity } from '../../../src/core/quantity/show.js';
import { allergenMatrix } from '../../../src/core/sheets/allergen-matrix.js';
import { allergenMatrixSheet } from '../../../src/core/sheets/allergen-matrix-sheet.js';
import { costing, costingSheet } from '../../../src/core/sheets/costing.js';
import { eventSummary } from '../../../src/core/sheets/event-summary.js';
import { eventSummarySheet } from '../../../src/core/sheets/event-summary-sheet.js';
import { prepList, prepListSheet } from '../../../src/core/sheets/prep-list.js';
import { scaledRecipe } from '../../../src/core/sheets/scaled-recipe.js';
import { scaledRecipeSheet } from '../../../src/core/sheets/scaled-recipe-sheet.js';
import type { Sheet } from '../../../src/core/sheets/sheet.js';
import { week } from '../../../src/core/sheets/week.js';
import { anyKitchen, type Kitchen } from '../kitchens.js';

const sheetsOf = ({ facts, events }: Kitchen): Sheet[] => [
  ...events.map((event) => eventSummarySheet(eventSummary(event, facts))),
  ...events.map((event) => allergenMatrixSheet(allergenMatrix(event, facts))),
  ...events.map((event) => costingSheet(costing(event, facts))),
  ...[...facts.recipes.values()].map((recipe) => scaledRecipeSheet(scaledRecipe(recipe, undefined, facts))),
  ...[...facts.recipes.values()].map((recipe) =>
    scaledRecipeSheet(scaledRecipe(recipe, { portions: Rational.zero, portion: null }, facts)),
  ),
  prepListSheet(prepList(events, facts)),
];

const notWords = /undefined|NaN|\[object/;
const tooSure = /\bsafe\b|suitable for|guarantee/i;
const isPlain = (text: unknown): boolean => typeof text === 'string' && !notWords.test(text);

test('every sheet of every kitchen stands, with plain words in every cell of its columns', () => {
  fc.assert(
    fc.property(anyKitchen, (kitchen) => {
      for (const { tables, about, problems } of sheetsOf(kitchen)) {
        const cells = tables.flatMap(({ columns, rows }) =>
          rows.flatMap((row) => columns.map(({ key }) => [key, row[key]])),
        );
        const wrong = [...Object.entries(about), ...cells].filter(([, text]) => !isPlain(text));
        expect(wrong).toEqual([]);
        const sentences = problems.map(({ sentence }) => sentence);
        const ended = (text: string) => /^\S.*[.?!]$/.test(text) && isPlain(text) && !tooSure.test(text);
        expect(sentences.filter((sentence) => !ended(sentence))).toEqual([]);
      }
    }),
    { numRuns: 60 },
  );
});

test('the week, a change of guests and a copied menu stand for every kitchen', () => {
  fc.assert(
    fc.property(anyKitchen, fc.constantFrom(0, 1, 46), ({ facts, events }, guests) => {
      expect(week(events, '2026-11-23', facts).days).toHaveLength(7);
      for (const event of events) {
        const { before, after, dishes } = guestChange(event, new Map([['adults', guests]]), facts);
        expect(dishes).toHaveLength(before.courses.flatMap((course) => course.dishes).length);
        expect(after.event.groups[0]!.guests).toBe(guests);
        expect(copyMenu(event, events[0]!)).toHaveLength(event.courses.length);
      }
    }),
    { numRuns: 40 },
  );
});

test('any quantity is shown in figures that can be weighed, never as nothing while there is something', () => {
  const anyValue = fc.oneof(
    fc.tuple(fc.nat(), fc.integer({ min: 1, max: 1000 })),
    fc.tuple(fc.nat(99), fc.constant(99_991)),
  );
  fc.assert(
    fc.property(
      anyKitchen,
      anyValue,
      fc.constantFrom('g', 'ml', 'each'),
      fc.constantFrom('metric', 'us'),
      (k, [n, d], base, units) => {
        const value = Rational.of(n, d);
        const { figure, fraction } = showQuantity({ value, base }, { ...k.facts.kitchen, units });
        expect(`${figure} ${fraction ?? ''}`).toMatch(/^(under |\d*\.?\d* ?)(\d+\/\d+)?/);
        const nothing = /^0(\.0*)?$/.test(figure) && !fraction;
        expect(nothing).toBe(n === 0);
      },
    ),
    { numRuns: 300 },
  );
});
