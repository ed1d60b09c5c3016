import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readLine } from '../../../src/core/exchange/lines/read-line.js';
import { readMethod } from '../../../src/core/exchange/method/read-method.js';
import { isoDuration, readDuration } from '../../../src/core/exchange/recipe/iso-duration.js';
import { readRecipes } from '../../../src/core/exchange/recipe/read-recipes.js';
import { amount, unit } from '../../../src/core/facts/common.js';
import { step } from '../../../src/core/facts/recipe.js';
import { corpus } from '../../corpus/corpus.js';

/** What cooks' lines are made of, thrown together. */
const piece = fc.constantFrom(
  ...'2 ½ 1/2 1,500 400g 14-oz x × - – / ( ) [ ] , ; : & + . % " T c tbsp cup tin cans cloves of or and to each plus'.split(
    ' ',
  ),
  ...'about heaped large peeled chopped finely a an half dozen juice zest salt flour onions butter taste serve the for'.split(
    ' ',
  ),
  ...[
    '20 minutes',
    '180C',
    'gas mark 4',
    'fan',
    'overnight',
    'bake',
    'simmer',
    '°',
    '\u00a0',
    '\u200b',
    '💥',
    'é',
  ],
);
const pieces = fc.array(piece, { maxLength: 30 }).map((all) => all.join(' '));
const anyText = fc.oneof(
  pieces,
  fc.string({ unit: 'grapheme', maxLength: 200 }),
  fc.string({ unit: 'binary', maxLength: 200 }),
);

test('whatever is typed, a line is answered, with what a recipe can keep', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const read = readLine(text);
      for (const figure of [read.quantity, read.quantityTo, read.pack?.amount])
        if (figure) expect(amount.safeParse(figure).success, figure).toBe(true);
      for (const word of [read.unit, read.pack?.unit])
        if (word) expect(unit.safeParse(word).success, word).toBe(true);
      expect(read.sure).toBe(read.because.length === 0);
      expect(readLine(text)).toEqual(read);
    }),
    { numRuns: 3000 },
  );
});

test('spaces and bullets change nothing', () => {
  const lines = corpus('lines-develop').map(({ text }) => text);
  fc.assert(
    fc.property(
      fc.constantFrom(...lines),
      fc.constantFrom('• ', '- ', '  ', '\u00a0', '* ', '[ ] '),
      (text, before) => {
        expect(readLine(`${before}${text.replaceAll(' ', '  ')} `)).toEqual(readLine(text));
      },
    ),
  );
});

test('an amount and unit written out are read back', () => {
  const units = fc.constantFrom('g', 'kg', 'ml', 'l', 'tsp', 'tbsp', 'cup', 'oz', 'lb', 'pint');
  const figures = fc.oneof(
    fc.integer({ min: 1, max: 9999 }).map(String),
    fc.tuple(fc.nat(99), fc.integer({ min: 1, max: 99 })).map(([a, b]) => `${a}.${b}`),
    fc.constantFrom('1/3', '2/3', '3/4', '5/8'),
  );
  fc.assert(
    fc.property(figures, units, (figure, of) => {
      const read = readLine(`${figure} ${of} flour`);
      const again = readLine(`${read.quantity} ${read.unit} flour`);
      expect(read).toMatchObject({ unit: of, food: 'flour' });
      expect(again.quantity).toBe(read.quantity);
    }),
  );
});

test('whatever is typed, a method is answered in steps that a recipe can keep', () => {
  fc.assert(
    fc.property(fc.array(anyText, { maxLength: 8 }), (lines) => {
      for (const read of readMethod(lines.join('\n'))) {
        const { words, minutes, minutesLongest, attended, rings, mixers, fridgeShelves, oven } = read;
        const kept = step.safeParse({
          key: 'a',
          words,
          minutes,
          minutesLongest,
          attended,
          rings,
          mixers,
          fridgeShelves,
          oven: oven && { heat: oven.heat },
        });
        expect(kept.error).toBeUndefined();
      }
    }),
    { numRuns: 1000 },
  );
});

test('minutes as an ISO duration are read back', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), (n) => {
      expect(readDuration(isoDuration(n))).toBe(n);
    }),
  );
});

test('whatever is pasted, recipes are answered or refused', () => {
  const json = fc.jsonValue().map((value) =>
    JSON.stringify({
      '@type': 'Recipe',
      name: value,
      recipeIngredient: value,
      recipeInstructions: value,
      recipeYield: value,
      totalTime: value,
    }),
  );
  const tag = fc.constantFrom(
    '<p>',
    '</p>',
    '<script type="application/ld+json">',
    '</script>',
    '<div itemscope itemtype="x/Recipe">',
    '<b itemprop="recipeIngredient">',
    '<',
    '<!--',
    '-->',
    '&amp;',
    '{',
    '}',
    '"',
  );
  const html = fc.array(fc.oneof(tag, pieces, json), { maxLength: 20 }).map((all) => `<html>${all.join('')}`);
  fc.assert(
    fc.property(
      fc.oneof(
        anyText,
        json,
        html,
        fc.array(anyText).map((all) => all.join('\n')),
      ),
      (text) => {
        const read = readRecipes(text);
        expect('sentence' in read ? read.sentence.length : read.drafts.length).toBeGreaterThan(0);
      },
    ),
    { numRuns: 1500 },
  );
});
