import { expect, test } from 'vitest';
import { longestLine, readLine } from '../../../../src/core/exchange/lines/read-line.js';
import { readLines } from '../../../../src/core/exchange/lines/read-lines.js';
import { cupSaid } from '../../../../src/core/exchange/lines/whose-measure.js';

const amount = (text: string) => {
  const { quantity, quantityTo, unit } = readLine(text);
  return [quantity, quantityTo, unit];
};

test.each([
  ['¾ cup flour', ['0.75', null, 'cup']],
  ['3/4 cup flour', ['0.75', null, 'cup']],
  ['2/3 cup flour', ['2/3', null, 'cup']],
  ['1 1/2 cups flour', ['1.5', null, 'cup']],
  ['1½ cups flour', ['1.5', null, 'cup']],
  ['1 ½ cups flour', ['1.5', null, 'cup']],
  ['1,5 kg flour', ['1.5', null, 'kg']],
  ['0.75 l milk', ['0.75', null, 'l']],
  ['2–3 carrots', ['2', '3', 'each']],
  ['2 to 3 carrots', ['2', '3', 'each']],
  ['½ dozen eggs', ['6', null, 'each']],
  ['two dozen eggs', ['24', null, 'each']],
  ['1 lb 4 oz flour', ['1.25', null, 'lb']],
  ['a pinch of salt', ['1', null, 'pinch']],
  ['salt to taste', [null, null, null]],
])('%s', (text, read) => {
  expect(amount(text)).toEqual(read);
});

test('packs keep their size apart', () => {
  expect(readLine('2 x 400 g tins tomatoes')).toMatchObject({
    quantity: '2',
    unit: 'tin',
    pack: { amount: '400', unit: 'g' },
  });
  expect(readLine('400g can tomatoes')).toMatchObject({
    quantity: '1',
    unit: 'tin',
    pack: { amount: '400', unit: 'g' },
  });
  expect(readLine('1 (14 oz) can tomatoes')).toMatchObject({
    quantity: '1',
    unit: 'tin',
    pack: { amount: '14', unit: 'oz' },
  });
});

test('prepared or bought follows from the order of the words, and is never sure by that alone', () => {
  expect(readLine('700 g peeled squash')).toMatchObject({
    food: 'squash',
    note: 'peeled',
    stated: 'prepared',
    sure: false,
  });
  expect(readLine('700 g squash, peeled')).toMatchObject({
    food: 'squash',
    note: 'peeled',
    stated: 'bought',
    sure: false,
  });
  expect(readLine('500 g leeks (trimmed weight)')).toMatchObject({ stated: 'prepared', sure: true });
  expect(readLine('2 onions, peeled')).toMatchObject({ stated: 'usual', sure: true });
});

/** Each can be read in more than one way; none is sure, and each says why. */
test.each([
  ['1,500 g flour', /1500 or 1.500/],
  ['50 g butter or margarine', /one food or another/],
  ['salt and pepper', /more than one food/],
  ['2 tbsp oil, plus 1 tbsp for frying', /second amount/],
  ['2 T sugar', /tablespoon/],
  ['4 cloves', /spice/],
  ['1 pound cake', /kind of cake/],
  ['200g/2oz flour', /differ/],
  ['2 blorks', /not known/],
  ['1 carrot, 1 onion', /another food/],
  ['3-2 carrots', /not above/],
  ['2 onions (large', /never closes/],
  ['toString', /does not know/],
  ['large &', /name/],
  ['and / 2 juice', /name/],
])('%s is not sure', (text, why) => {
  const read = readLine(text);
  expect(read.sure).toBe(false);
  expect(read.because.join(' ')).toMatch(why);
});

test('headings, blank lines and sentences are not ingredients', () => {
  expect(readLine('For the sauce:')).toMatchObject({
    kind: 'heading',
    heading: 'For the sauce',
    food: '',
    sure: true,
  });
  expect(readLine('  ')).toMatchObject({ kind: 'empty', sure: true });
  expect(readLine('Preheat the oven to 180C.')).toMatchObject({ kind: 'words', sure: false });
  expect(readLine('x'.repeat(longestLine + 1))).toMatchObject({ kind: 'words', sure: false });
});

test('one answer for each line, and a refusal when there are too many', () => {
  const read = readLines('2 eggs\r\n\r\nsalt\n');
  expect(Array.isArray(read) && read.map(({ kind }) => kind)).toEqual(['line', 'empty', 'line']);
  expect(readLines('2 eggs\n'.repeat(20_001))).toHaveProperty('sentence');
});

test('whose cup or spoon it is belongs to the measure, is asked about, and says which the recipe means', () => {
  for (const [text, unit, food, note] of [
    ['2 US cups sugar', 'cup', 'sugar', 'US'],
    ['1 imperial pint milk', 'pint', 'milk', 'imperial'],
    ['2–3 Australian tablespoons cocoa', 'tbsp', 'cocoa', 'Australian'],
  ]) {
    const read = readLine(text!);
    expect(read, text).toMatchObject({ unit, food, note, sure: false });
  }
  expect(readLine('1 American mustard').unit).toBe('each');
  const said = (...texts: string[]) => cupSaid(texts.map(readLine));
  expect(said('2 US cups sugar', '1 tbsp oil')).toBe('us');
  expect(said('2 Australian tablespoons cocoa')).toBe('australian');
  expect(said('1 tbsp cocoa (20ml tablespoon)')).toBe('australian');
  expect([said('2 cups sugar'), said('2 US cups sugar', '1 metric cup milk'), said('1 US egg')]).toEqual([
    null,
    null,
    null,
  ]);
});

test('a cup of what is cooked is not a cup as bought, so it is asked about', () => {
  expect(readLine('1 cup cooked rice')).toMatchObject({
    food: 'rice',
    note: 'cooked',
    unit: 'cup',
    sure: false,
  });
  expect(readLine('2 cups boiled, mashed potato').sure).toBe(false);
  for (const text of ['1 cup rice', '1 cup rice, cooked', '2 tbsp roasted peanut butter', '4 cooked prawns'])
    expect(readLine(text).because, text).not.toContain(
      'It is measured once cooked; what this kitchen knows of a measure is of it as it is bought.',
    );
});

test('hot, cold and soft behind a food that may be so are notes, as they are before it', () => {
  for (const [text, food, note] of [
    ['1.5 l chicken stock hot', 'chicken stock', 'hot'],
    ['200 g butter soft', 'butter', 'soft'],
    ['100 ml water warm', 'water', 'warm'],
  ])
    expect(readLine(text!), text).toMatchObject({ food, note, sure: true });
});
