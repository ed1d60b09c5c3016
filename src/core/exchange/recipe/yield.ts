import { Rational } from '../../quantity/rational.js';
import { baseOf } from '../../quantity/units.js';
import { headOf } from '../lines/head.js';
import { isMeasuredUnit } from '../lines/measures.js';
import { isWord, tokensOf } from '../lines/tokens.js';
import type { YieldReading } from './draft.js';

export const noYield: YieldReading = {
  text: '',
  portions: null,
  portionsTo: null,
  byPiece: false,
  weight: null,
  volume: null,
};

const lead =
  /^(?:(?:serves?|serving|feeds|makes|yields?|servings?|portions?|recipe (?:serves|makes|yields?)|enough for|for)\b[\s:–-]*)+/i;
const people =
  /^(?:servings?|portions?|people|persons?|guests?|adults?|helpings?|serves|as\b|or\b|hungry|generous(?:ly)?|to\b)/i;

/** Reads what a recipe makes ("Serves 4–6", "Makes 12 rolls", "1.2 kg"), with why it is not sure. */
export const readYield = (text: string): { yield: YieldReading; because: string[] } => {
  const plain = text.replace(/\s+/g, ' ').trim().slice(0, 200);
  const [, whole, serves] = inPortions.exec(plain) ?? [];
  if (!whole || !serves) return readOne(plain);
  const made = readOne(whole).yield;
  const shared = readOne(serves);
  if (!shared.yield.portions) return readOne(plain);
  const { weight, volume } = made;
  return { yield: { ...shared.yield, text: plain, weight, volume }, because: shared.because };
};

/** "Makes 1 loaf (10 slices)", "Makes one cake, serves 8": what is made, and for how many. */
const inPortions =
  /^([^,;(]+)[,;(]\s*((?:serves|feeds|for|about|enough for)\s[^()]*|\d[\d–-]*\s*(?:servings?|portions?|people|slices?|pieces?)[^()]*)\)?\.?$/i;

const readOne = (plain: string): { yield: YieldReading; because: string[] } => {
  const made = /^(?:makes|yields?)/i.test(plain);
  const line = tokensOf(plain.replace(lead, ''));
  const head = headOf(line);
  const counted = head && !(head.unit === 'each' && isWord(line.tokens[0], 'a', 'an') && head.end === 1);
  if (!head?.quantity || head.quantity.isZero || !counted)
    return {
      yield: { ...noYield, text: plain },
      because: plain ? [`"${plain}" is not read as what it makes.`] : [],
    };
  const because = [...head.because];
  if (head.to) because.push('A range of portions is stated; a recipe goes by one of its figures.');
  const amount = head.quantity.toString();
  const unit = head.unit ?? 'each';
  if (isMeasuredUnit(unit) && ['g', 'ml'].includes(baseOf(unit))) {
    const measure = { amount, unit };
    const part = baseOf(unit) === 'g' ? { weight: measure } : { volume: measure };
    return { yield: { ...noYield, text: plain, ...part }, because };
  }
  const rest = plain
    .slice(plain.length - line.text.length + (line.tokens[head.end]?.start ?? line.text.length))
    .trim();
  const byPiece =
    unit === 'each' || unit === 'portion' ? rest !== '' && !people.test(rest) && unit === 'each' : true;
  if (made && rest === '' && unit === 'each')
    because.push('Whether these are portions or pieces is not said.');
  if (byPiece && head.quantity.equals(Rational.one))
    because.push('How many portions one of them gives is not said.');
  return {
    yield: { ...noYield, text: plain, portions: amount, portionsTo: head.to?.toString() ?? null, byPiece },
    because,
  };
};
