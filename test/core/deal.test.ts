import { describe, expect, test } from 'vitest';
import { coverageOf, coverageProblems } from '../../src/core/coverage.js';
import type { Event } from '../../src/core/facts/event.js';
import { passList } from '../../src/core/sheets/pass-list.js';
import { passListSheet } from '../../src/core/sheets/pass-list-sheet.js';
import { facts, guest, made, supper } from './few-portions.js';

const said = (event: Event) =>
  coverageProblems(event, coverageOf(event, facts)).map(({ sentence }) => sentence);
const atPass = (event: Event) =>
  passListSheet(passList(event, facts)).tables[0]!.rows.map(({ guest: who, gets, may, others }) =>
    [who, gets, may, others].filter((one) => one !== ''),
  );

describe('portions of a plated dish that are kept by name', () => {
  // 6 pies, 2 of them Ana's and Bo's: 4 are left for 5 vegans, so 1 goes without.
  test('go to nobody else', () => {
    const event = supper(
      [made('stew', 44), made('lentil-pie', 6, 'ana', 'bo')],
      guest('ana', 1, 'vegetarian'),
      guest('bo', 1, 'vegan'),
      guest('cy', 5, 'vegan'),
    );
    expect(said(event)).toEqual([
      'Lentil pie is made for 6 adults, 2 of them kept by name for others, and 5 adults need it: 1 goes without.',
    ]);
    expect(coverageOf(event, facts).rows.map(({ courses }) => courses[0]!.has)).toEqual(['yes', 'yes', 'no']);
  });

  test('all of them: nothing is left', () => {
    const event = supper(
      [made('stew', 49), made('lentil-pie', 1, 'ana')],
      guest('ana', 1, 'vegan'),
      guest('bo', 1, 'vegan'),
    );
    expect(said(event)).toEqual([
      'Lentil pie is made for 1 adults, all kept by name for others, and 1 adults needs it: 1 goes without.',
    ]);
  });

  // Dot eats everything, and one pie is kept for her all the same; none is kept for Ed, who could not eat it.
  test('are kept for whoever is named and could eat them', () => {
    const pies = [made('stew', 49), made('lentil-pie', 2, 'dot')];
    const vegans = guest('cy', 2, 'vegan');
    expect(said(supper(pies, guest('dot', 1), vegans))).toHaveLength(1);
    const gratins = [made('stew', 49), made('gratin', 1, 'ed')];
    expect(
      said(supper(gratins, guest('ed', 1, 'vegetarian', 'no-milk'), guest('flo', 1, 'vegetarian'))),
    ).toEqual(['Ed (vegetarian, no milk) has nothing to eat in main.']);
  });
});

describe('at the pass', () => {
  // 6 pies for 6 vegans; the 3 without milk could eat a pie or the stew, so they are told the stew.
  test('a dish that not all who could eat it can have goes to whom it is dealt', () => {
    const event = supper(
      [made('stew', 44), made('lentil-pie', 6)],
      guest('cy', 6, 'vegan'),
      guest('mo', 3, 'no-milk'),
    );
    expect(atPass(event)).toEqual([
      ['Cy', 'Lentil pie'],
      ['Mo', 'Stew', 'Lentil pie'],
    ]);
  });

  test('where there is enough for all who could want it, they choose', () => {
    const event = supper(
      [made('stew', 44), made('lentil-pie', 9)],
      guest('cy', 6, 'vegan'),
      guest('mo', 3, 'no-milk'),
    );
    expect(atPass(event)).toEqual([
      ['Cy', 'Lentil pie'],
      ['Mo', 'Stew; Lentil pie'],
    ]);
  });

  // 7 pies and 2 gratins; 6 vegans take pies, so of 3 vegetarians one gets a pie and two get gratins.
  test('a row of several guests is dealt out among them', () => {
    const event = supper(
      [made('stew', 41), made('lentil-pie', 7), made('gratin', 2)],
      guest('cy', 6, 'vegan'),
      guest('vi', 3, 'vegetarian'),
    );
    expect(atPass(event)).toEqual([
      ['Cy', 'Lentil pie'],
      ['Vi', 'Lentil pie (for 1 of them); Gratin (for 2 of them)'],
    ]);
  });

  test('what is kept for a guest by name is theirs, whoever else could eat it', () => {
    const event = supper(
      [made('lentil-pie', 1, 'vi'), made('gratin', 2)],
      guest('vi', 1, 'vegetarian'),
      guest('wyn', 1, 'vegetarian'),
    );
    expect(atPass(event)).toEqual([
      ['Vi', 'Lentil pie (kept back: by name); Gratin'],
      ['Wyn', 'Gratin', 'Lentil pie'],
    ]);
  });

  // 2 pies, one of them Vi's, so the other is Wyn's if Wyn wants it.
  test('a portion kept for somebody leaves the rest to the others', () => {
    const event = supper(
      [made('gratin', 2), made('lentil-pie', 2, 'vi')],
      guest('vi', 1, 'vegetarian'),
      guest('wyn', 1, 'vegetarian'),
    );
    expect(atPass(event)).toEqual([
      ['Vi', 'Lentil pie (kept back: by name); Gratin'],
      ['Wyn', 'Gratin; Lentil pie'],
    ]);
  });
});
