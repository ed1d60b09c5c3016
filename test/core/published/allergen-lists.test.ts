import { describe, expect, test } from 'vitest';
import published from '../../../shared/allergens.json' with { type: 'json' };
import { allergenIds, allergenList, stateOf } from '../../../src/core/allergens.js';
import { diets } from '../../../src/core/diets.js';
import { mayBeCalledGlutenFree, sulphitesAt, sulphitesCount } from '../../../src/core/edges.js';
import { allergenLists } from '../../../src/core/facts/kitchen.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { food } from '../small.js';

const names = (id: 'eu' | 'us' | 'ca' | 'anz') => allergenList(id).items.map((item) => item.id);
const members = (list: 'eu' | 'us' | 'ca' | 'anz', id: string) =>
  allergenList(list)
    .items.find((item) => item.id === id)!
    .members.toSorted();
const covered = (id: 'eu' | 'us' | 'ca' | 'anz') =>
  new Set(allergenList(id).items.flatMap((item) => item.members));

// Regulation (EU) No 1169/2011, Annex II, as amended by Delegated Regulation (EU) No 78/2014, read in a copy.
describe('Annex II', () => {
  test('fourteen entries in the order of the annex', () => {
    expect(names('eu')).toEqual([
      'gluten',
      'crustaceans',
      'eggs',
      'fish',
      'peanuts',
      'soya',
      'milk',
      'nuts',
      'celery',
      'mustard',
      'sesame',
      'sulphites',
      'lupin',
      'molluscs',
    ]);
    expect(allergenList('eu').items.map((item) => item.clause)).toEqual(
      Array.from({ length: 14 }, (_, i) => `Annex II, ${i + 1}`),
    );
  });

  test('the cereals and the nuts it names; not pine nut, chestnut, coconut or buckwheat', () => {
    expect(members('eu', 'gluten')).toEqual(['barley', 'oats', 'rye', 'triticale', 'wheat']);
    expect(members('eu', 'nuts')).toEqual(
      ['almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'brazil-nut', 'pistachio', 'macadamia'].sort(),
    );
    for (const id of ['pine-nut', 'chestnut', 'coconut', 'buckwheat'])
      expect(covered('eu')).not.toContain(id);
  });

  test('sulphites above 10 mg a kilo or litre, not at 10', () => {
    expect(members('eu', 'sulphites')).toEqual(['sulphites-above-10']);
  });
});

// Federal Food, Drug, and Cosmetic Act, section 201(qq)(1), by the Food Allergen Labeling and Consumer Protection Act of
// 2004 and the FASTER Act of 2021, section 2 (sesame, from 1 January 2023), the second read in full, the first in reports.
test('the nine of the United States, and none of the others', () => {
  expect(names('us').toSorted()).toEqual(
    ['milk', 'eggs', 'fish', 'crustaceans', 'nuts', 'wheat', 'peanuts', 'soya', 'sesame'].sort(),
  );
  for (const id of ['barley', 'rye', 'oats', 'molluscs', 'mustard', 'celery', 'lupin'])
    expect(covered('us')).not.toContain(id);
});

// Canada, Food and Drug Regulations, B.01.010.1: tree nuts with pine nut, mustard, molluscs, sulphites of 10 ppm or more.
test('Canada counts pine nut, mustard and sulphites at 10 ppm', () => {
  expect(members('ca', 'nuts')).toContain('pine-nut');
  expect(members('ca', 'wheat')).toEqual(['triticale', 'wheat']);
  expect(members('ca', 'gluten')).toEqual(['barley', 'oats', 'rye', 'triticale', 'wheat']);
  expect(members('ca', 'sulphites')).toEqual(['sulphites-above-10', 'sulphites-at-10']);
  expect(names('ca')).toEqual(expect.arrayContaining(['mustard', 'molluscs', 'crustaceans', 'sesame']));
});

// Australia New Zealand Food Standards Code, Standard 1.2.3 and Schedule 9: each nut and cereal by its own name.
test('Australia and New Zealand name each tree nut, pine nut too, and each cereal', () => {
  const nuts = 'almond brazil-nut cashew hazelnut macadamia pecan pine-nut pistachio walnut'.split(' ');
  for (const id of [...nuts, 'wheat', 'rye', 'barley', 'oats', 'lupin', 'molluscs'])
    expect(names('anz')).toContain(id);
  expect(members('anz', 'sulphites')).toEqual(['sulphites-above-10', 'sulphites-at-10']);
});

// GS1 code list for allergen types (T4078), an open code list.
test('GS1 codes of the fourteen', () => {
  const codes = Object.fromEntries(allergenList('eu').items.map((item) => [item.id, item.gs1]));
  expect(codes).toEqual({
    gluten: 'AW',
    crustaceans: 'AC',
    eggs: 'AE',
    fish: 'AF',
    peanuts: 'AP',
    soya: 'AY',
    milk: 'AM',
    nuts: 'AN',
    celery: 'BC',
    mustard: 'BM',
    sesame: 'AS',
    sulphites: 'AU',
    lupin: 'NL',
    molluscs: 'UM',
  });
});

// schema.org, RestrictedDiet: eleven members; and ISO 23662:2021, which does not speak of allergens.
test('diets carry the names of schema.org, and vegan or vegetarian is never an allergen claim', () => {
  const eleven =
    'Diabetic GlutenFree Halal Hindu Kosher LowCalorie LowFat LowLactose LowSalt Vegan Vegetarian';
  const known = eleven.split(' ').map((one) => `${one}Diet`);
  for (const { schemaOrg } of diets) if (schemaOrg) expect(known).toContain(schemaOrg);
  const byName = (id: string) => diets.find((diet) => diet.id === id)!;
  expect([byName('vegan').schemaOrg, byName('vegetarian').schemaOrg]).toEqual([
    'VeganDiet',
    'VegetarianDiet',
  ]);
  expect([byName('vegan').kind, byName('vegetarian').kind]).toEqual(['choice', 'choice']);
});

// Regulation (EU) No 828/2014 lets oats of no more than 20 mg/kg gluten be sold as gluten-free; Annex II lists oats.
test('oats sold as gluten-free are still oats', () => {
  const oats = food('oats', { allergens: { gluten: { state: 'free' }, oats: { state: 'contains' } } });
  expect(stateOf(oats, members('eu', 'gluten')).state).toBe('contains');
});

// The same regulations let a claim stand on no more than 20 mg/kg (EU 828/2014) or below 20 ppm (US 21 CFR 101.91): a
// "gluten free" claim on a label says nothing here of wheat, which must be stated by itself or with its group.
test('nothing but what is stated of a cereal or of all of them says that it is free', () => {
  const plain = food('oats', { allergens: { milk: { state: 'free' } } });
  expect(stateOf(plain, members('eu', 'gluten'))).toEqual({ state: 'unknown', unknown: true });
  const said = food('oats', { allergens: { gluten: { state: 'free' } } });
  expect(stateOf(said, members('eu', 'gluten'))).toEqual({ state: 'free', unknown: false });
});

test('every member is a substance that can be stated, every list has its source', () => {
  for (const id of allergenLists) {
    expect(allergenList(id).source).not.toBe('');
    for (const one of covered(id))
      expect(published.substances.map((substance) => substance.id)).toContain(one);
  }
  for (const { members } of published.groups) for (const one of members) expect(allergenIds).toContain(one);
});

// Food and Drug Administration, Questions and Answers Regarding Food Allergens, Edition 5, January 2025, Appendix I.
test('the tree nuts of the United States have pine nut, and not coconut or chestnut', () => {
  expect(members('us', 'nuts')).toEqual(
    'almond brazil-nut cashew hazelnut macadamia pecan pine-nut pistachio walnut'.split(' ').sort(),
  );
  expect(allergenList('us').source).toContain('Edition 5, January 2025, Appendix I');
});

// Regulation (EU) No 1169/2011, Annex II, entries 1, 4, 6, 7 and 8 have exceptions; the others have none.
test('the exceptions of Annex II stand beside their entries', () => {
  const counts = allergenList('eu').items.map((item) => [item.id, item.exceptions?.length ?? 0]);
  expect(Object.fromEntries(counts.filter(([, n]) => n))).toEqual({
    gluten: 4,
    fish: 2,
    soya: 4,
    milk: 2,
    nuts: 1,
  });
  const of = (id: string) =>
    allergenList('eu')
      .items.find((item) => item.id === id)!
      .exceptions!.join();
  expect(of('gluten')).toContain('glucose syrups');
  expect(of('fish')).toContain('isinglass');
  expect(of('soya')).toContain('fully refined soybean oil');
  expect(of('milk')).toContain('whey');
  expect(of('nuts')).toContain('distillates');
});

describe('at the edge', () => {
  const mg = (text: string) => Rational.parse(text);
  // Annex II, 12: more than 10 mg/kg; B.01.010.1: 10 ppm or more; Standard 1.2.3: 10 mg/kg or more; none in the US list.
  test.each([
    ['9.99', false, false, false, undefined],
    ['10', false, true, true, 'sulphites-at-10'],
    ['10.01', true, true, true, 'sulphites-above-10'],
  ])('sulphites at %s mg a kilo', (text, eu, ca, anz, substance) => {
    const lists = (['eu', 'ca', 'anz'] as const).map((id) => sulphitesCount(mg(text), allergenList(id)));
    expect(lists).toEqual([eu, ca, anz]);
    expect(sulphitesCount(mg(text), allergenList('us'))).toBe(false);
    expect(sulphitesAt(mg(text))).toBe(substance);
    // What the substance is covered by is what counts under each list.
    for (const [at, id] of (['eu', 'ca', 'anz'] as const).entries())
      expect(members(id, 'sulphites').includes(substance ?? '')).toBe(lists[at]);
  });
  // EU 828/2014: no more than 20 mg/kg; US 21 CFR 101.91: below 20 ppm.
  test.each([
    ['19.99', true, true],
    ['20', true, false],
    ['20.01', false, false],
  ])('gluten at %s mg a kilo', (text, eu, us) => {
    expect(mayBeCalledGlutenFree(mg(text), allergenList('eu'))).toBe(eu);
    expect(mayBeCalledGlutenFree(mg(text), allergenList('us'))).toBe(us);
  });
});
