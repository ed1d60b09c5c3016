import type { Cup } from './facts/kitchen.js';
import { readAmount } from './quantity/amount.js';
import { Rational } from './quantity/rational.js';
import { quantity } from './quantity/units.js';
import { isRead, type Read } from './reading.js';
import { readMeasure } from './reading-measures.js';

const example = 'such as 0.92, or 125 g a cup';

/** Grams in a millilitre, to four places half up, typed as such ("0.92") or as a weight of a measure ("125 g a cup"). */
export const readDensity = (text: string, cup: Cup): Read<string> => {
  const refuse = {
    sentence: `Enter what one ml weighs in g, ${example}. You entered ${text.trim().slice(0, 40)}.`,
  };
  const pair = /^(.+?)\s*(?:\b(?:a|an|per|in)\b|\/(?=\s*[\d.½¼¾]*\s*[a-z])|=)\s*(.+)$/i.exec(text.trim());
  if (!pair) {
    const read = readAmount(text.replace(/\s*g\s*$/i, ''));
    if ('sentence' in read || Rational.parse(read.amount).isZero) return refuse;
    return plausible(Rational.parse(read.amount));
  }
  const weight = readMeasure(pair[1]!, 'g');
  const volume = readMeasure(/^\d/.test(pair[2]!) ? pair[2]! : `1 ${pair[2]}`, 'ml');
  if (!isRead(weight) || !isRead(volume)) return refuse;
  const grams = quantity(Rational.parse(weight.value.amount), weight.value.unit, cup).value;
  const ml = quantity(Rational.parse(volume.value.amount), volume.value.unit, cup).value;
  return plausible(grams.over(ml));
};

const most = Rational.of(5);
const hundredth = Rational.of(1, 100);

const plausible = (density: Rational): Read<string> => {
  if (density.compare(most) <= 0 && density.compare(hundredth) >= 0)
    return { value: Rational.parse(density.toFixed(4)).toString() };
  return {
    sentence: `No food weighs ${density.toFixed(2)} g a ml: water weighs 1. Enter what one ml weighs, ${example}.`,
  };
};
