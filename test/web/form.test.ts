import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseForm, rows, text, texts, valueAt } from '../../src/web/form.js';

test('names of rows, groups and repeats become lists and groups', () => {
  const form = parseForm(
    'name=Pie&lines[2].amount=3&lines[0].amount=1&lines[0].item=leek&tax.rate=20&diets=vegan&diets=nuts&note=a%0D%0Ab',
  );
  expect(form).toEqual({
    name: 'Pie',
    lines: [{ amount: '1', item: 'leek' }, { amount: '3' }],
    tax: { rate: '20' },
    diets: ['vegan', 'nuts'],
    note: 'a\nb',
  });
  expect(rows(form, 'lines')).toHaveLength(2);
  expect(text(form, 'lines[1].amount')).toBe('3');
  expect(texts(form, 'diets')).toEqual(['vegan', 'nuts']);
  expect(texts(form, 'name')).toEqual(['Pie']);
  expect([text(form, 'nothing'), texts(form, 'nothing'), rows(form, 'name')]).toEqual(['', [], []]);
  expect(valueAt(form, 'tax.rate.more')).toBeUndefined();
});

describe('a form is refused', () => {
  test.each([
    ['__proto__.polluted=1'],
    ['a.constructor=1'],
    ['a.prototype.b=1'],
    ['[0]=1'],
    ['.a=1'],
    ['a[=1'],
    ['a[5000]=1'],
    ['a[-1]=1'],
    ['a b=1'],
    ['a.b.c.d.e.f.g=1'],
    [`${'a'.repeat(200)}=1`],
    ['a=1&a.b=2'],
    ['a.b=1&a=2'],
    ['a[0].b=1&a.b=2'],
    ['=1'],
  ])('%s', (body) => {
    expect(() => parseForm(body)).toThrow(/The form sent/);
  });

  test('with more fields than the workbook reads', () => {
    expect(() => parseForm('a=1&'.repeat(30_001))).toThrow('more fields than the workbook reads');
  });
});

test('whatever is sent, nothing but a plain form comes of it', () => {
  const piece = fc.constantFrom(
    'a',
    'b',
    '__proto__',
    'constructor',
    '[0]',
    '[1]',
    '.',
    '=',
    '&',
    'toString',
    '%00',
    '[',
    ']',
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
      try {
        const form = parseForm(pieces.join(''));
        expect(Object.getPrototypeOf(form)).toBe(Object.prototype);
      } catch (error) {
        expect((error as { statusCode?: number }).statusCode).toBe(400);
      }
      expect(({} as Record<string, unknown>).a).toBeUndefined();
    }),
  );
});
