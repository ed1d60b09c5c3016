import fc from 'fast-check';
import { expect, it } from 'vitest';
import words from '../../../shared/label-words.json' with { type: 'json' };
import { allergenIds } from '../../../src/core/allergens.js';
import { marksOf, withLabelRead } from '../../../src/core/label-marks.js';
import { readLabel } from '../../../src/core/label-text.js';

/** Labels of real words, signs and mark-up in any order, and of anything at all. */
const known = [...words.names.flatMap(({ law, practice }) => [...law, ...practice])];
const sounding = [...words.asides, ...words.open].flatMap((one) => one.words);
const between = [
  '**',
  '<b>',
  '</b>',
  ', ',
  '. ',
  ' (',
  ') ',
  ' ',
  '\n',
  ' free ',
  'free from ',
  ' no ',
  'may contain ',
];
const piece = fc.oneof(
  fc.constantFrom(...known, ...sounding),
  fc.constantFrom(...between),
  fc.string({ maxLength: 5 }),
);
const label = fc.array(piece, { maxLength: 60 }).map((all) => all.join(' '));
const stamp = { source: 'label', date: '2026-11-01', by: 'R.T.' } as const;

it('reads anything without a fault, and never says free', () => {
  fc.assert(
    fc.property(fc.oneof(label, fc.string({ maxLength: 400, unit: 'binary' })), (text) => {
      for (const { id, state, led } of readLabel(text).named) {
        expect(allergenIds).toContain(id);
        expect(['contains', 'may']).toContain(state);
        expect(led.length).toBeGreaterThan(0);
      }
      const states = Object.values(withLabelRead({}, text, '', stamp)).map(({ state }) => state);
      expect(states).not.toContain('free');
    }),
    { numRuns: 400 },
  );
});

it('marks every allergen that stands in the list by name, whatever stands around it in bold or not', () => {
  const names = words.names.flatMap(({ is, law }) => law.map((word) => ({ is, word })));
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      fc.boolean(),
      fc.constantFrom(...sounding),
      ({ is, word }, bold, beside) => {
        const text = `water, ${beside}, ${bold ? `**${word}**` : word}, salt`;
        expect([...marksOf(readLabel(text)).keys()]).toContain(is);
      },
    ),
    { numRuns: 600 },
  );
});

it('a name that is stuck to another word is marked or left to settle, however much of it is set apart', () => {
  const names = words.names
    .flatMap(({ law }) => law)
    .filter((word) => /^[a-z]{4,}$/.test(word) && !word.endsWith('s'));
  const aside = words.asides.flatMap((one) => one.words);
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      fc.constantFrom('powder', 'paste', 'whole'),
      fc.constantFrom('', '**', 'capitals', '\u00ad'),
      fc.boolean(),
      (name, beside, how, first) => {
        const shown =
          how === 'capitals' ? name.toUpperCase() : how === '\u00ad' ? name : `${how}${name}${how}`;
        const text = first ? `${shown}${beside}` : `${beside}${shown}`;
        fc.pre(!aside.includes(text));
        const { named, unsettled } = readLabel(
          `water, ${how === '\u00ad' ? text.replace('a', 'a\u00ad') : text}, salt`,
        );
        expect(named.length + unsettled.length).toBeGreaterThan(0);
      },
    ),
    { numRuns: 400 },
  );
});

it('goes on naming what a label named when more is added as a sentence of its own', () => {
  fc.assert(
    fc.property(label, label, (first, more) => {
      fc.pre(
        !/\*\*|<|[(]/.test(first + more) && first === first.toLowerCase() && more === more.toLowerCase(),
      );
      const before = readLabel(`${first}.`).named;
      const after = new Map(readLabel(`${first}.\n\n${more}`).named.map((one) => [one.id, one.state]));
      for (const { id, state } of before) expect([state, 'contains']).toContain(after.get(id));
    }),
    { numRuns: 300 },
  );
});

it('reads 8000 signs of whatever repeats, well within the time a test may take', () => {
  for (const part of [
    'may contain milk, ',
    '**',
    '<b>',
    'made in a ',
    '(',
    'preservative 220 ',
    'no added ',
    '\n',
    'a',
  ])
    expect(readLabel(part.repeat(8000 / part.length).slice(0, 8000)).named.length).toBeLessThan(3);
});
