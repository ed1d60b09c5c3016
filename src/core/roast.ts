import chart from '../../shared/roasting.json' with { type: 'json' };
import type { Ingredient } from './facts/ingredient.js';
import type { Step } from './facts/recipe.js';
import { normalName } from './names.js';
import { Rational } from './quantity/rational.js';
import { inUnit } from './quantity/units.js';
import type { RecipeNeed } from './scaling.js';

const digits = 10n ** 12n;

/** A figure to the power of two thirds, cut off after twelve places. */
export const twoThirds = (value: Rational): Rational => {
  const square = value.times(value).times(Rational.of(digits ** 3n));
  return Rational.of(cubeRoot(square.floor()), digits);
};

/** The whole part of a cube root, by Newton's steps down from above. */
const cubeRoot = (n: bigint): bigint => {
  if (n <= 0n) return 0n;
  let root = 1n << BigInt(Math.ceil(n.toString(2).length / 3));
  for (;;) {
    const next = (2n * root + n / (root * root)) / 3n;
    if (next >= root) return root;
    root = next;
  }
};

/**
 * A guide to how long one piece of another weight roasts: minutes grow as its mass to the power of two thirds, so twice
 * the weight takes 1.587 times as long (AIP Advances 11, 115316, 2021).
 */
export const roastMinutes = (minutes: number, from: Rational, to: Rational): Rational =>
  Rational.of(minutes).times(twoThirds(to.over(from)));

export type ChartRow = { cut: string; least: Rational; most: Rational };

/** What the published chart says of a piece of so many grams, in minutes at its heat; none where it has no such cut. */
export const chartFor = (name: string, grams: Rational): ChartRow[] => {
  const words = normalName(name).split(/[^\p{L}]+/u);
  const pounds = inUnit(grams, 'lb', 'metric');
  const bone = words.some((word) => word === 'boneless' || word === 'boned')
    ? 'out'
    : words.includes('bone') && 'in';
  return chart.rows
    .filter(
      (row) => row.words.every((word) => words.includes(word)) && (!bone || !row.bone || row.bone === bone),
    )
    .filter((row) => !row.pounds || within(pounds, row.pounds as [number, number]))
    .map(({ cut, minutesAPound: [least, most] }) => ({
      cut,
      least: pounds.times(Rational.of(least!)),
      most: pounds.times(Rational.of(most!)),
    }));
};

/** The heat the chart is for, in degrees Fahrenheit. */
export const chartHeat = chart.fahrenheit;

const within = (pounds: Rational, [from, to]: [number, number]): boolean =>
  pounds.compare(Rational.of(from)) >= 0 && pounds.compare(Rational.of(to)) <= 0;

/** How long a roast of another weight may take; a guide beside the minutes of the recipe, which stay as written. */
export type RoastGuide = {
  step: Step;
  number: number;
  ingredient: Ingredient;
  /** Grams of the piece in the recipe and of the one asked for. */
  from: Rational;
  to: Rational;
  least: Rational;
  most: Rational;
  chart: ChartRow[];
};

/**
 * A guide for each step that roasts, where one piece of meat by weight is most of the recipe; none for anything else. For
 * a recipe that is scaled by weight alone: by portions there may be more pieces, and those take no longer.
 */
export const roastGuides = ({ recipe, lines }: RecipeNeed, factor: Rational): RoastGuide[] => {
  const meat = lines.filter(({ ingredient }) => ingredient && isMeat(ingredient));
  const [piece] = meat;
  const weight = piece?.amount && piece.bought;
  if (meat.length !== 1 || !piece?.ingredient || weight?.base !== 'g' || factor.isZero) return [];
  if (piece.line.scales !== 'straight' || !isMost(piece.prepared, lines)) return [];
  const { ingredient } = piece;
  const [from, to] = [weight.value.over(factor), weight.value];
  return recipe.steps.flatMap((step, at) => {
    const { oven, minutes, minutesLongest, words } = step;
    if (!oven || minutes === null || !/\broast/i.test(words)) return [];
    const least = roastMinutes(minutes, from, to);
    const most = roastMinutes(minutesLongest ?? minutes, from, to);
    return [
      { step, number: at + 1, ingredient, from, to, least, most, chart: chartFor(ingredient.name, to) },
    ];
  });
};

const isMeat = ({ traits }: Ingredient): boolean => traits.meat === 'yes' || traits.poultry === 'yes';

const isMost = (part: Rational | undefined, lines: RecipeNeed['lines']): boolean => {
  const all = lines.reduce((sum, { prepared }) => (prepared ? sum.plus(prepared) : sum), Rational.zero);
  return part !== undefined && part.times(Rational.of(2)).compare(all) >= 0;
};
