import type { Equipment } from './equipment.js';
import type { Kitchen } from './facts/kitchen.js';
import type { Step } from './facts/recipe.js';
import type { PanNeed, PanUse, ShelfNeed } from './pans.js';
import { listed } from './problems.js';
import { exact } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { inWords, showHeat, showQuantity } from './quantity/show.js';
import { chartHeat, type RoastGuide } from './roast.js';
import { type TinsNeeded, tinsInWords } from './tins.js';

const hundred = Rational.of(100);
const thousand = Rational.of(1000);

/** The tins in words, "3 round tins of 23 cm, the last 60% full"; nothing where there are none to name. */
export const tinWords = ({ tins, into }: Equipment): string => {
  if (tins) return ownTins(tins);
  if (into?.deeper.toFixed(2) !== '1.00') return '';
  return `${tinsInWords(into.tin)}, filled as deep as the recipe’s own`;
};

const ownTins = ({ tin, whole, last }: TinsNeeded): string => {
  const all = tinsInWords(tin, whole);
  if (last.equals(Rational.one)) return all;
  const percent = last.times(hundred).toFixed(0);
  const full = percent === '100' ? 'not quite full' : percent === '0' ? 'hardly filled' : `${percent}% full`;
  return whole === 1n ? `${all}, ${full}` : `${all}, the last ${full}`;
};

/** The pans of a step in words: "7.4 L in the 10 L pot", "26 L in 3 goes in the 10 L pot". */
export const panWords = ({ litres, pans, goes }: PanNeed, kitchen: Kitchen): string => {
  const much = inPan(litres, kitchen);
  if (goes === 0n) return `${much} in a pan`;
  const which = listed(pans.map((one) => panName(one, kitchen)));
  return goes === 1n ? `${much} in ${which}` : `${much} in ${goes} goes in ${which}`;
};

/** A pan is chosen by quarts and gallons, not measured out to the teaspoon. */
const inPan = (litres: Rational, kitchen: Kitchen): string => {
  const rounding = kitchen.units === 'us' ? 'prep' : 'recipe';
  return inWords(showQuantity({ value: litres.times(thousand), base: 'ml' }, kitchen, rounding));
};

const panName = ({ pan, count }: PanUse, kitchen: Kitchen): string => {
  const litres = exact(pan.litres);
  const holds = kitchen.units === 'us' ? inPan(litres, kitchen) : `${litres.toString()} L`;
  const name = pan.name.toLowerCase().includes(holds.toLowerCase()) ? pan.name : `${pan.name} (${holds})`;
  return count === 1 ? name : `${count} × ${name}`;
};

/** What a step's shelves mean for the ovens: nothing where one load takes them all. */
export const loadWords = ({ room, loads, place }: ShelfNeed, { oven }: Step, kitchen: Kitchen): string => {
  if (loads === 1) return '';
  if (loads > 1) return `in ${loads} loads of ${room === 1 ? '1 shelf' : `${room} shelves`}`;
  const heat = showHeat(oven!.heat, kitchen);
  return place.ovens.length === 0
    ? `no oven is entered for ${place.name}`
    : `no oven of ${place.name} goes to ${heat}`;
};

/** A guide to a roast of another weight, in sentences, with the cautions that belong to it. */
export const roastWords = (guide: RoastGuide, kitchen: Kitchen): string[] => {
  const { number, ingredient, from, to, least, most, chart } = guide;
  const grams = (value: Rational) => inWords(showQuantity({ value, base: 'g' }, kitchen));
  const own = `Step ${number}: as one piece, ${grams(to)} of ${ingredient.name} instead of ${grams(from)} takes ${span(least, most)}, for time grows with weight to the power two thirds. Two pieces of ${grams(from)} take as long as one.`;
  const published = chart.map(
    (row) =>
      `The US federal chart has ${span(row.least, row.most)} for ${row.cut}, in an oven at ${chartHeat} °F.`,
  );
  return [
    own,
    ...published,
    'A guide only: the minutes of the recipe stay as written. Cook to the figure on your probe, and follow your local food-safety code.',
  ];
};

const span = (least: Rational, most: Rational): string => {
  const [from, to] = [fives(least), fives(most)];
  return from === to ? `about ${clock(from)}` : `about ${clock(from)} to ${clock(to)}`;
};

/** Minutes to the nearest five: a guide is no finer. */
const fives = (minutes: Rational): number => Number(minutes.over(Rational.of(5)).round()) * 5;

const clock = (minutes: number): string => {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
};
