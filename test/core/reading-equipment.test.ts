import { expect, it } from 'vitest';
import { readEquipment, typedEquipment } from '../../src/core/reading-equipment.js';

it.each([
  ['', []],
  ['fryer', ['fryer']],
  [' Fryer,  large  tray , ', ['Fryer', 'large tray']],
  ['fryer, Fryer', ['fryer']],
  ['tray, large;', ['tray, large']],
  ['tray, large; board', ['tray, large', 'board']],
])('%s', (text, value) => expect(readEquipment(text)).toEqual({ value }));

it('reads back what it shows', () => {
  for (const some of [[], ['fryer'], ['fryer', 'tray'], ['tray, large'], ['tray, large', 'board']])
    expect(readEquipment(typedEquipment(some))).toEqual({ value: some });
});

it('says what is too long or too many', () => {
  expect(readEquipment('x'.repeat(61))).toEqual({ sentence: expect.stringContaining('at most 60 signs') });
  expect(readEquipment(Array.from({ length: 11 }, (_, i) => `tray ${i}`).join(','))).toEqual({
    sentence: expect.stringContaining('up to ten'),
  });
});
