import { Rational } from '../../quantity/rational.js';
import { figureAt } from '../lines/figures.js';
import { table } from '../lines/table.js';
import { isDash, isSign, isWord, type Token } from '../lines/tokens.js';

/** A heat a method states: whole degrees Celsius, for a fan oven or not, and how it was written. */
export type Heat = {
  celsius: number;
  fan: boolean;
  scale: 'C' | 'F' | 'gas' | 'bare';
  start: number;
  end: number;
};

/** Customary oven heats of the gas marks, as cookers' tables give them. */
const marks = table<number>({
  '1/4': 110,
  '1/2': 120,
  '1': 140,
  '2': 150,
  '3': 170,
  '4': 180,
  '5': 190,
  '6': 200,
  '7': 220,
  '8': 230,
  '9': 240,
});

/** Every heat in some tokens, in order. */
export const heatsIn = (tokens: readonly Token[]): Heat[] => {
  const found: Heat[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const heat = gasAt(tokens, at) ?? degreesAt(tokens, at);
    if (!heat) continue;
    found.push({ ...heat, fan: heat.scale !== 'gas' && isFan(tokens, heat) });
    at = heat.end - 1;
  }
  return found;
};

const gasAt = (tokens: readonly Token[], at: number): Heat | undefined => {
  if (!isWord(tokens[at], 'gas')) return undefined;
  const start = isWord(tokens[at + 1], 'mark', 'no') ? at + 2 : at + 1;
  const figure = figureAt(tokens, start);
  const value = figure && !figure.to ? figure.value : undefined;
  const celsius = value && marks[value.isWhole ? value.toString() : `${value.n}/${value.d}`];
  return celsius ? { celsius, fan: false, scale: 'gas', start: at, end: figure!.end } : undefined;
};

const degreesAt = (tokens: readonly Token[], at: number): Heat | undefined => {
  const token = tokens[at];
  if (token?.kind !== 'figure' || !/^\d{2,3}$/.test(token.text)) return undefined;
  let end = at + 1;
  // "180-200C" and "325 to 350°F": the first figure takes the scale of the second.
  const range = isDash(tokens[end]) || isWord(tokens[end], 'to');
  if (range && tokens[end + 1]?.kind === 'figure') {
    const second = degreesAt(tokens, end + 1);
    return second && second.scale !== 'bare'
      ? { ...second, celsius: inCelsius(Number(token.text), second.scale), start: at }
      : undefined;
  }
  const degrees = isSign(tokens[end], '°', 'º', '˚') || isWord(tokens[end], 'degrees', 'degree', 'deg');
  if (degrees) end++;
  if (isSign(tokens[end], '.') && degrees) end++;
  const scale = isWord(tokens[end], 'c', 'celsius', 'centigrade', 'degc')
    ? 'C'
    : isWord(tokens[end], 'f', 'fahrenheit', 'degf')
      ? 'F'
      : 'bare';
  if (scale === 'bare' && !degrees) return undefined;
  const value = Number(token.text);
  return {
    celsius: inCelsius(value, scale),
    fan: false,
    scale,
    start: at,
    end: scale === 'bare' ? end : end + 1,
  };
};

const inCelsius = (value: number, scale: Heat['scale']): number =>
  scale === 'F' || (scale === 'bare' && value > 260)
    ? Number(Rational.of(5 * (value - 32), 9).round())
    : value;

/** "160C fan", "fan 160C", "(fan-forced)", "fan oven 160C"; in "180C fan 160C" the fan is the second's. */
const isFan = (tokens: readonly Token[], { start, end }: Heat): boolean => {
  const fan = (token: Token | undefined) =>
    /^fan(?:-|$)/.test(token?.low ?? '') || isWord(token, 'convection');
  const behind = isSign(tokens[end], '(') ? end + 1 : end;
  if (fan(tokens[behind]) && tokens[behind + 1]?.kind !== 'figure') return true;
  return fan(isWord(tokens[start - 1], 'oven') ? tokens[start - 2] : tokens[start - 1]);
};

/** The heat an oven is set to: as for an oven without a fan where both stand, in Celsius before other scales. */
export const ovenHeat = (heats: readonly Heat[]): Heat | undefined =>
  heats.find(({ fan, scale }) => !fan && scale === 'C') ??
  heats.find(({ fan, scale }) => !fan && scale === 'gas') ??
  heats.find(({ fan }) => !fan) ??
  heats[0];
