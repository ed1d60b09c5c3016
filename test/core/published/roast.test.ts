import { expect, test } from 'vitest';
import { Rational } from '../../../src/core/quantity/rational.js';
import { quantity } from '../../../src/core/quantity/units.js';
import { chartFor, chartHeat, roastMinutes, twoThirds } from '../../../src/core/roast.js';

const r = Rational.of;
const pounds = (lb: number) => quantity(r(lb), 'lb', 'metric').value;

// AIP Advances 11, 115316 (2021): roasting time in hours is pounds to the power two thirds over 1.5.
test('8, 12, 16 and 20 lb: 2.667, 3.494, 4.233 and 4.912 h, by the law itself', () => {
  const hours = [8, 12, 16, 20].map((lb) => twoThirds(r(lb)).over(Rational.parse('1.5')).toFixed(3));
  expect(hours).toEqual(['2.667', '3.494', '4.233', '4.912']);
});

// The same, from the 160 minutes of 8 lb: 209.66, 253.98 and 294.72 minutes.
test('from one weight to another, and twice the weight × 1.587', () => {
  const hours = [8, 12, 16, 20].map((lb) => roastMinutes(160, pounds(8), pounds(lb)).over(r(60)).toFixed(3));
  expect(hours).toEqual(['2.667', '3.494', '4.233', '4.912']);
  expect(roastMinutes(1, pounds(3), pounds(6)).toFixed(3)).toBe('1.587');
});

test('a cube comes out whole: eight times the weight takes four times as long', () => {
  expect(roastMinutes(45, r(1000), r(8000)).toString()).toBe('180');
});

// United States, federal meat roasting chart (foodsafety.gov), at 325 °F: minutes a pound.
test('leg of lamb with the bone: 20 to 25 min a pound to 7 lb, 15 to 20 from there; both at 7 lb', () => {
  const said = (lb: number) =>
    chartFor('Leg of lamb', pounds(lb))
      .filter(({ cut }) => cut.includes('bone in'))
      .map(({ least, most }) => [least.toString(), most.toString()]);
  expect(chartHeat).toBe(325);
  expect(said(6)).toEqual([['120', '150']]);
  expect(said(8)).toEqual([['120', '160']]);
  expect(said(7)).toEqual([
    ['140', '175'],
    ['105', '140'],
  ]);
  expect(said(12)).toEqual([]);
});

test('boneless leg of lamb 25 to 30, rib of beef 23 to 25, pork loin 20 to 30 min a pound', () => {
  const said = (name: string) =>
    chartFor(name, pounds(4)).map(({ least, most }) => `${least.toString()} to ${most.toString()}`);
  expect(said('Lamb leg, boneless')).toEqual(['100 to 120']);
  expect(said('Beef rib')).toEqual(['92 to 100']);
  expect(said('Loin of pork')).toEqual(['80 to 120']);
  expect(said('Pork shoulder')).toEqual([]);
});

test('a piece on the bone is not told the minutes of a boned one, nor the other way round', () => {
  const cuts = (name: string, lb: number) => chartFor(name, pounds(lb)).map(({ cut }) => cut);
  for (const name of ['Leg of lamb, on the bone', 'Lamb leg, bone-in']) {
    expect(cuts(name, 8)).toEqual(['leg of lamb, bone in']);
    expect(cuts(name, 13)).toEqual([]);
  }
  expect(cuts('Boned leg of lamb', 8)).toEqual(['leg of lamb, boneless']);
  expect(cuts('Leg of lamb', 8)).toEqual(['leg of lamb, bone in', 'leg of lamb, boneless']);
});
