import type { Measure } from './facts/common.js';
import type { Kitchen } from './facts/kitchen.js';
import { share } from './flour.js';
import { readAmount, readTimes } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { baseOf, readUnit } from './quantity/units.js';
import type { Read } from './reading.js';

const refuse = (sentence: string) => ({ sentence });
const cited = (text: string): string =>
  text.trim().length > 40 ? `${text.trim().slice(0, 40)}…` : text.trim();

const examples = { any: '2.5 kg', g: '1.5 kg', ml: '2 l' };

/** An amount with its unit as cooks write it ("2.5 kg", "1½ l", "12 each"); `of` asks for a weight (g) or a volume (ml). */
export const readMeasure = (text: string, of: 'any' | 'g' | 'ml' = 'any'): Read<Measure> => {
  const found = /^((?:[\d\s.,]+[x×*])?[\d\s.,/⁄∕½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞−–—-]+)(\D*)$/iu.exec(text.trim());
  if (!found?.[1]?.trim())
    return refuse(
      `Enter an amount with its unit, such as ${examples[of]}.${text.trim() ? ` You entered ${cited(text)}.` : ''}`,
    );
  const read = readTimes(found[1]);
  if ('sentence' in read) return read;
  if (Rational.parse(read.amount).isZero)
    return refuse(`Enter an amount above zero, such as ${examples[of]}. You entered ${cited(text)}.`);
  const word = found[2]!.trim();
  const meant = word && readUnit(word);
  // A share is measured nowhere but in a line of a recipe.
  const unit = meant === share ? '' : meant;
  if (!unit)
    return refuse(
      word
        ? `Enter a unit such as g, ml or each after the amount. You entered ${cited(text)}.`
        : `Enter the unit too, such as ${cited(text)} ${of === 'ml' ? 'ml or l' : of === 'g' ? 'g or kg' : 'g, ml or each'}.`,
    );
  if (of !== 'any' && baseOf(unit) !== of)
    return refuse(
      `Enter a ${of === 'g' ? 'weight' : 'volume'}, such as ${examples[of]}. You entered ${cited(text)}.`,
    );
  return { value: { amount: read.amount, unit } };
};

const hundred = Rational.of(100);
const ten = Rational.of(10);

type ShareWords = { name: string; zero: string };

/** A share of a weight as exact text of a factor: "72", "72 %" and "0.72" are 0.72; above one only as a factor. */
const readShare = (text: string, { name, zero }: ShareWords): Read<string> => {
  const plain = text.trim();
  const marked = /%$/.test(plain);
  const read = readAmount(plain.replace(/\s*%$/, ''));
  const entered = plain === '' ? '' : ` You entered ${cited(plain)}.`;
  if ('sentence' in read)
    return refuse(`Enter the ${name} as a per cent, such as 72, or as a factor, such as 0.72.${entered}`);
  const value = Rational.parse(read.amount);
  if (value.isZero) return refuse(zero);
  const isFactor = !marked && value.compare(ten) < 0;
  if (!isFactor && value.compare(hundred) > 0) {
    const slipped = value.over(ten);
    const guess = slipped.compare(hundred) <= 0 ? ` Did you mean ${slipped.toString()}?` : '';
    return refuse(
      `${name.charAt(0).toUpperCase()}${name.slice(1)} must be between 1 and 100.${entered}${guess} What swells is entered as a factor, such as ${value.over(hundred).toString()}.`,
    );
  }
  return { value: (isFactor ? value : value.over(hundred)).toString() };
};

/**
 * The edible part of what is bought, as exact text of a factor: "72", "72 %" and "0.72" are 0.72. Above one is typed as
 * a factor, such as 3.05 for what swells; zero and more than all are refused.
 */
export const readEdibleYield = (text: string): Read<string> =>
  readShare(text, {
    name: 'edible yield',
    zero: 'An edible yield of 0 would mean that nothing of it can be eaten. Enter 1 to 100, or leave it empty while it is not known.',
  });

/** What one part weighs once cooked, read in the same way; zero is refused. */
export const readCookedYield = (text: string): Read<string> =>
  readShare(text, {
    name: 'cooked yield',
    zero: 'A cooked yield of 0 would mean that nothing is left of it once cooked. Enter 1 to 100, or take the row out while it is not known.',
  });

const toCelsius = (degrees: number): number =>
  Number(
    Rational.of(degrees - 32)
      .times(Rational.of(5, 9))
      .round(),
  );

/**
 * Degrees Celsius that come from Fahrenheit as ovens in Celsius are set: 350 °F are 177 and set as 180, 425 °F are 218 and
 * set as 220. Below 120, and what a dial may show, stays as it is; so does all where ovens are set in Fahrenheit.
 */
export const asDialled = (celsius: number, { heat }: Pick<Kitchen, 'heat'>): number =>
  heat === 'F' || celsius < 120 || celsius % 5 === 0
    ? celsius
    : Number(Rational.of(celsius, 10).round()) * 10;

const ovens = { C: { least: 30, most: 300 }, F: { least: 85, most: 575 } };

/** An oven's heat typed in the kitchen's degrees, or with °C or °F of its own, in whole degrees Celsius. */
export const readHeat = (text: string, { heat }: Pick<Kitchen, 'heat'>): Read<number> => {
  const example = heat === 'C' ? '180' : '350';
  const found = /^(\d{1,4})\s*(?:°|º|degrees)?\s*([CF])?$/i.exec(text.trim());
  if (!found)
    return refuse(
      `Enter the heat in whole degrees, such as ${example}.${text.trim() ? ` You entered ${cited(text)}.` : ''}`,
    );
  const scale = (found[2]?.toUpperCase() ?? heat) as Kitchen['heat'];
  const degrees = Number(found[1]);
  const { least, most } = ovens[scale];
  if (degrees < least || degrees > most) {
    const slipped = degrees / 10;
    const guess = Number.isInteger(slipped) && slipped >= least && slipped <= most;
    return refuse(
      `An oven's heat must be between ${least} and ${most} °${scale}. You entered ${cited(text)}.${guess ? ` Did you mean ${slipped}?` : ''}`,
    );
  }
  return { value: scale === 'C' ? degrees : asDialled(toCelsius(degrees), { heat }) };
};

/** Degrees Celsius in whole degrees of the kitchen, as `readHeat` reads them back unchanged. */
export const typedHeat = (celsius: number, { heat }: Pick<Kitchen, 'heat'>): string =>
  heat === 'C'
    ? String(celsius)
    : Rational.of(celsius).times(Rational.of(9, 5)).plus(Rational.of(32)).round().toString();

/** How far the heat may be off, typed in the kitchen's degrees, in whole degrees Celsius. */
export const readTolerance = (text: string, { heat }: Pick<Kitchen, 'heat'>): Read<number> => {
  const found = /^(\d{1,3})\s*(?:°|º)?\s*[CF]?$/i.exec(text.trim());
  const most = heat === 'C' ? 100 : 180;
  if (!found || Number(found[1]) > most)
    return refuse(
      `Enter how many degrees it may be off, 0 to ${most}, such as 10. You entered ${cited(text)}.`,
    );
  const degrees = Rational.of(Number(found[1]));
  return { value: heat === 'C' ? Number(found[1]) : Number(degrees.times(Rational.of(5, 9)).round()) };
};

/** The same the other way: degrees Celsius apart in the kitchen's degrees. */
export const typedTolerance = (celsius: number, { heat }: Pick<Kitchen, 'heat'>): string =>
  heat === 'C' ? String(celsius) : Rational.of(celsius).times(Rational.of(9, 5)).round().toString();

/** A stretch of time as cooks write it ("90", "90 min", "1 h 20", "1.5 h") in whole minutes; `what` names it. */
export const readMinutes = (text: string, what: string): Read<number> => {
  const plain = text.trim().toLowerCase();
  const hours =
    /^(\d{1,3})(?:[.,](\d))?\s*h(?:ours?|rs?|r)?\s*(?:(\d{1,2})\s*(?:m|min|mins|minutes)?)?$/.exec(plain);
  if (hours && !(hours[2] && hours[3]))
    return { value: Number(hours[1]) * 60 + Number(hours[2] ?? 0) * 6 + Number(hours[3] ?? 0) };
  const minutes = /^(\d{1,5})\s*(?:m|min|mins|minutes)?$/.exec(plain);
  if (minutes) return { value: Number(minutes[1]) };
  return refuse(
    `Enter ${what} in minutes, such as 35 or 1 h 20.${plain ? ` You entered ${cited(text)}.` : ''}`,
  );
};
