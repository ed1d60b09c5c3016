import { expect, test } from 'vitest';
import { readGuestWords } from '../../src/core/guest-words.js';

const said = (count: number, name: string, diets: string[], other = '') => ({ count, name, diets, other });

test.each([
  ['3 vegetarians', said(3, '', ['vegetarian'])],
  ['2 vegans, no nuts', said(2, '', ['vegan', 'no-nuts'])],
  ['Ana Reed', said(1, 'Ana Reed', [])],
  ['Ana Reed, vegan', said(1, 'Ana Reed', ['vegan'])],
  ['Tom (Coeliac)', said(1, 'Tom', ['coeliac'])],
  ['Tom, coeliac, no gluten', said(1, 'Tom', ['coeliac'])],
  ['2 gluten-free', said(2, '', ['coeliac'])],
  ['Greta, tree nuts', said(1, 'Greta', ['no-nuts'])],
  ['Ines, allergic to shellfish', said(1, 'Ines', ['no-crustaceans', 'no-molluscs'])],
  ['Wim, dairy free, egg allergy', said(1, 'Wim', ['no-milk', 'no-eggs'])],
  ['Joss, hates onions', said(1, 'Joss', [], 'hates onions')],
  ['Ada, lactose free', said(1, 'Ada', [], 'lactose free')],
  ['4 people', said(4, '', [])],
  ['Bo, soft food only, No milk', said(1, 'Bo', ['no-milk'], 'soft food only')],
  ['2 on low salt', said(2, '', [], 'on low salt')],
  ['Pip no nuts', said(1, 'Pip', ['no-nuts'])],
  ['Rowan Teague vegan', said(1, 'Rowan Teague', ['vegan'])],
  ['vegan', said(1, '', ['vegan'])],
  ['Ines: gluten free', said(1, 'Ines', ['coeliac'])],
  ['Pip – nut allergy', said(1, 'Pip', ['no-nuts'])],
  ['Bo tree nut allergy', said(1, 'Bo', ['no-nuts'])],
  ['Pip allergic to kiwi', said(1, 'Pip', [], 'allergic to kiwi')],
  ['Ada lactose free', said(1, 'Ada', [], 'lactose free')],
  ['Ana Fish', said(1, 'Ana Fish', [])],
  ['Dot hates onions, vegan', said(1, 'Dot', ['vegan'], 'hates onions')],
  ['Kim coeliac disease', said(1, 'Kim', [], 'coeliac disease')],
  ['Kim nut-allergic', said(1, 'Kim', [], 'nut-allergic')],
  ['Kim nuts+milk', said(1, 'Kim', [], 'nuts+milk')],
  ['Kim lactose-intolerant', said(1, 'Kim', [], 'lactose-intolerant')],
  ['Kim diabetic', said(1, 'Kim', [], 'diabetic')],
  ['Kim/nuts', said(1, '', [], 'Kim/nuts')],
  ['vegan Kim', said(1, '', [], 'vegan Kim')],
  ['ana fish', said(1, 'ana', ['no-fish'])],
  ['Pip dairy!', said(1, 'Pip', [], 'dairy!')],
  ['Two vegans, no nuts', said(2, '', ['vegan', 'no-nuts'])],
  ['Seven Askerby, vegan', said(1, 'Seven Askerby', ['vegan'])],
  ['0 vegans', said(1, '', ['vegan'])],
])('%s', (text, wanted) => {
  expect(readGuestWords(text)).toEqual(wanted);
});
