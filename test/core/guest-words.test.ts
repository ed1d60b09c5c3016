import { expect, test } from 'vitest';
import { readGuestWords } from '../../src/core/guest-words.js';

const said = (count: number, name: string, diets: string[], other = '') => ({ count, name, diets, other });

test.each([
  ['3 vegetarians', said(3, '', ['vegetarian'])],
  ['2 vegans, no nuts', said(2, '', ['vegan', 'no-nuts'])],
  ['Ana Reed', said(1, 'Ana Reed', [])],
  ['Ana Reed, vegan', said(1, 'Ana Reed', ['vegan'])],
  ['Tom (Coeliac)', said(1, 'Tom', ['coeliac'])],
  ['Tom, coeliac, no gluten', said(1, 'Tom', ['coeliac'], 'no gluten')],
  ['4 people', said(4, '', [])],
  ['Bo, soft food only, No milk', said(1, 'Bo', ['no-milk'], 'soft food only')],
  ['2 on low salt', said(2, '', [], 'on low salt')],
  ['0 vegans', said(1, '', ['vegan'])],
])('%s', (text, wanted) => {
  expect(readGuestWords(text)).toEqual(wanted);
});
