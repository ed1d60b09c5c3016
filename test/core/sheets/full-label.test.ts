import { describe, expect, it } from 'vitest';
import { fullLabel } from '../../../src/core/sheets/full-label.js';
import { fullLabelSheet } from '../../../src/core/sheets/full-label-sheet.js';
import { ownList, wordsOf } from '../../../src/core/sheets/label-list.js';
import { dish, factsOf, food, labelled } from '../small.js';

/**
 * A tart of 300 g flour, 200 g butter, 500 g custard (bought, with its own list), 60 g water of which the finished 1 kg
 * holds none, and salt to taste. By weight at the time of use (Regulation (EU) No 1169/2011, article 18(1), read in a
 * copy): custard, flour, butter, then what goes in to taste (Annex VII, part A: its sixth row from memory).
 */
const labelText = 'Ingredients: skimmed **milk**, sugar, **wheat** flour, whey. May contain nuts. Keep cool.';
const flour = food('wheat-flour', labelled({ contains: ['wheat'] }));
const butter = food('butter', labelled({ contains: ['milk'] }));
const custard = food('custard', {
  ...labelled({ contains: ['milk', 'wheat'], may: ['hazelnut'] }),
  labelText,
  labelDate: '2026-01-05',
});
const salt = food('salt', labelled());
const water = food('tap-water', { ...labelled(), notBought: true });
const all = [flour, butter, custard, salt, water];
const lines = ['300 g wheat-flour', '200 g butter', '60 g tap-water', '500 g custard', 'taste salt'];
const label = (recipe: ReturnType<typeof dish>, docs: Parameters<typeof factsOf>[0] = all, ways = {}) =>
  fullLabel(recipe, '2026-11-28', factsOf([...docs, recipe], ways));
const words = (...of: Parameters<typeof label>) => wordsOf(label(...of).value.runs);

describe('the full label of food packed ahead', () => {
  it('lists by weight at the time of use, compounds in brackets, allergens in capitals', () => {
    const { value, problems } = label(dish('tart', '1 kg', lines, { keepingDays: 3 }));
    expect(wordsOf(value.runs)).toBe(
      'Custard (skimmed MILK, sugar, WHEAT flour, WHEY), WHEAT flour, BUTTER (MILK), Salt',
    );
    expect(value.runs.filter(({ strong }) => strong).map(({ text }) => text)).toEqual([
      'MILK',
      'WHEAT',
      'WHEY',
      'WHEAT',
      'BUTTER',
      'MILK',
    ]);
    expect([value.complete, value.may, value.useBy]).toEqual([true, ['nuts'], '2026-12-01']);
    expect(problems.map(({ code }) => code)).toEqual(['label-to-taste']);
  });

  it('places water by what is left of it in the finished food: 1 020 g less 1 000 g is 20 g', () => {
    expect(words(dish('tart', '1020 g', lines))).toContain('BUTTER (MILK), Tap water, Salt');
    // Nobody said what it weighs when done, so water stands by the 60 g that go in.
    const { value } = label(dish('tart', '8 portions', ['60 g tap-water', '50 g butter']));
    expect(value.parts.map(({ name, grams }) => [name, grams?.toString()])).toEqual([
      ['Tap water', '60'],
      ['Butter', '50'],
    ]);
  });

  it('expands a component as a compound, and adds up lines of one ingredient', () => {
    const pastry = dish('pastry', '500 g', ['300 g wheat-flour', '200 g butter']);
    const pie = dish('pie', '8 portions', ['250 g @pastry', '100 g butter', '200 g butter']);
    const { value } = fullLabel(pie, '2026-11-28', factsOf([...all, pastry, pie]));
    expect(wordsOf(value.runs)).toBe('BUTTER (MILK), Pastry (WHEAT flour, BUTTER (MILK))');
    expect(value.parts[0]!.grams!.toString()).toBe('300');
  });

  it('names what has no weight, and is not complete', () => {
    const { value, problems } = label(dish('soup', '1 kg', ['2 each butter', '100 g salt']));
    expect(problems[0]!.sentence).toBe(
      'Soup: what Butter weighs is not known, so its place in the list is not.',
    );
    expect([value.complete, value.parts.map(({ name }) => name)]).toEqual([false, ['Salt', 'Butter']]);
  });

  it('says what is not checked, at its place and for the whole', () => {
    const { value } = label(dish('soup', '1 kg', ['100 g stock']), [food('stock')]);
    expect(wordsOf(value.runs)).toBe('Stock (not checked: ask us)');
    expect([value.complete, value.notChecked.map(({ name }) => name)]).toEqual([false, ['Stock']]);
  });

  it('asks for the own list of what is bought made, and never takes one of a pack before', () => {
    const former = food('custard', { ...labelled({ contains: ['milk', 'wheat'] }), labelText });
    const { value, problems } = label(dish('soup', '1 kg', ['100 g custard']), [former]);
    expect(wordsOf(value.runs)).toBe('Custard (WHEAT, MILK)');
    expect([value.complete, problems.map(({ code }) => code)]).toEqual([
      false,
      ['label-list-open', 'label-use-by-open'],
    ]);
  });

  it('names a group where the label does not say which', () => {
    const mix = food('mix', { allergens: { ...labelled().allergens, nuts: { state: 'contains' } } });
    expect(words(dish('soup', '1 kg', ['100 g mix']), [mix])).toBe('Mix (NUTS)'.replace('NUTS', 'TREE NUTS'));
  });

  it('stays bounded in a deep web of components', () => {
    const web = [dish('r0', '100 g', ['100 g butter'])];
    for (let i = 1; i < 30; i++)
      web.push(dish(`r${i}`, '100 g', [`50 g @r${i - 1}`, `40 g salt`, `10 g @r${Math.max(0, i - 2)}`]));
    const { value, problems } = fullLabel(web.at(-1)!, '2026-11-28', factsOf([...all, ...web]));
    expect(wordsOf(value.runs).length).toBeLessThan(13_000);
    expect([value.complete, problems.some(({ code }) => code === 'label-too-long')]).toEqual([false, true]);
  });

  it('gives its words and exact weights as a sheet', () => {
    const sheet = fullLabelSheet(label(dish('tart', '8 portions', ['1/3 g butter', '2 g wheat-flour'])));
    expect(sheet.about.ingredients).toBe('WHEAT flour, BUTTER (MILK)');
    expect(sheet.tables[0]!.rows.map(({ weight }) => weight)).toEqual(['2', '1/3']);
  });
});

describe('the list in a label’s text', () => {
  it.each([
    ['Ingredients: water, salt. Keep cool.', 'water, salt'],
    ['water (1 %), salt; contains milk', 'water (1 %), salt'],
    ['**Ingredients**: sugar,\ncocoa butter. May contain nuts', 'sugar, cocoa butter'],
    ['sugar, store of nothing', 'sugar, store of nothing'],
    ['', ''],
  ])('%s', (text, list) => expect(ownList(text)).toBe(list));
});
