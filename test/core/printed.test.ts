import { expect, test } from 'vitest';
import type { Event } from '../../src/core/facts/event.js';
import { forgetInPrint, type LineNow, linesOf, outdatedBy } from '../../src/core/printed.js';
import { allergenMatrix } from '../../src/core/sheets/allergen-matrix.js';
import { allergenMatrixSheet } from '../../src/core/sheets/allergen-matrix-sheet.js';
import { passList } from '../../src/core/sheets/pass-list.js';
import { passListSheet } from '../../src/core/sheets/pass-list-sheet.js';
import { dish, factsOf, food, labelled, party } from './small.js';

// The matrix of a tart and a salad is printed. Then the tart's leeks come in another brand whose label nobody has read:
// the tart's row differs, the salad's does not, and what Ana can eat of them differs too.
const foods = (leek: object) =>
  factsOf([
    dish('leek-tart', '10 portions', ['1 kg leek']),
    dish('salad', '10 portions', ['1 kg leaves']),
    food('leek', leek),
    food('leaves', labelled()),
  ]);
const read = foods(labelled());
const ana = { key: 'ana', name: 'Ana', group: 'adults', diets: ['no-milk'] };
const event = party(10, ['leek-tart', 'salad'], { guests: [ana] });

// A line's text stands for its hash here.
const now = (lines: ReturnType<typeof linesOf>): LineNow[] =>
  lines.map(({ of, name, text }) => ({ id: `${of} ${name}`, of, name, fingerprint: text }));
const kept = (lines: readonly LineNow[]) => ({
  lines: lines.map(({ name, ...line }) => ({ ...line, dish: line.of === 'dish' ? name : '' })),
});
const matrix = (one: Event, facts = read) => now(linesOf(allergenMatrixSheet(allergenMatrix(one, facts))));
const printed = kept(matrix(event));

test('a paper holds while nothing of it changed', () => {
  expect(outdatedBy(printed, matrix(event))).toBeUndefined();
  // Amounts are not on it.
  const more = { ...read, recipes: new Map(read.recipes) };
  more.recipes.set('salad', dish('salad', '10 portions', ['3 kg leaves']));
  expect(outdatedBy(printed, matrix(event, more))).toBeUndefined();
});

test('a label that is no longer read changes the dish it is in, by name, and no other dish', () => {
  expect(outdatedBy(printed, matrix(event, foods({})))).toEqual({
    head: false,
    changed: ['Leek tart', 'Ana'],
    added: [],
    gone: [],
    guests: 0,
  });
});

test('dishes and guests that came or went are named; a guest that went is not', () => {
  expect(outdatedBy(printed, matrix(party(10, ['salad'])))).toMatchObject({ gone: ['Leek tart'], guests: 1 });
  const bo = { ...ana, key: 'bo', name: 'Bo' };
  const two = outdatedBy(
    printed,
    matrix({ ...event, guests: [...event.guests, { ...event.guests[0]!, ...bo }] }),
  );
  expect(two).toMatchObject({ changed: [], added: ['Bo'] });
});

test('of a paper with some dishes alone the others are not missed', () => {
  const tart = { lines: printed.lines.filter(({ dish }) => dish === 'Leek tart') };
  expect(outdatedBy(tart, matrix(event), true)).toBeUndefined();
  expect(outdatedBy(tart, matrix(event, foods({})), true)).toMatchObject({ changed: ['Leek tart'] });
});

test('another day is at the head of it', () => {
  expect(outdatedBy(printed, matrix({ ...event, date: '2026-11-29' }))).toMatchObject({
    head: true,
    changed: [],
  });
});

test('what is kept of a paper names no guest, and once forgotten has no line of one', () => {
  const lines = kept(now(linesOf(passListSheet(passList(event, read)))));
  expect(lines.lines.filter(({ of }) => of === 'guest').map(({ dish }) => dish)).toEqual(['']);
  expect(forgetInPrint(lines).lines.map(({ of }) => of)).not.toContain('guest');
});
