import { type Line, tokensOf } from '../lines/tokens.js';
import { type Duration, durationsIn } from './durations.js';
import { type Heat, heatsIn, ovenHeat } from './heats.js';
import { type Equipment, equipmentIn, type Kind, kindOf, otherHeat, preheats, usesOven } from './kinds.js';
import { isHeading, paragraphsOf, sentencesOf } from './sentences.js';

/** A step as it was read; what a recipe keeps of a step has the same names and units. */
export type StepReading = {
  words: string;
  /** The heading it stands under; empty for none. */
  part: string;
  kind: Kind;
  minutes: number | null;
  minutesLongest: number | null;
  attended: boolean;
  /** Degrees Celsius as for an oven without a fan, unless only the fan's heat is stated. */
  oven: { heat: number; fan: boolean } | null;
  rings: number;
  mixers: number;
  fridgeShelves: number;
  equipment: Equipment[];
  sure: boolean;
  because: string[];
};

/** Longer than any method; beyond it the text is not read. */
export const longestMethod = 200_000;
const longestWords = 2000;
/** Said of every step without a time. */
export const noTime = 'How long it takes is not said.';
const mostSteps = 100;
/** Said of the last step that is read of a method too long to be one. */
export const goesOn = 'The method goes on behind this step, and that is not read.';

type Place = { part: string; heat: Heat | undefined };

/**
 * Reads a method, paragraphs or a numbered list, as steps of one stretch of time each: minutes are whole and rounded
 * up, heat is in whole degrees Celsius. What only follows from the words is marked; what is not said is null. It never
 * throws; what is beyond a hundred steps is not read, and the last one says so.
 */
export const readMethod = (text: string): StepReading[] => {
  const place: Place = { part: '', heat: undefined };
  const steps: StepReading[] = [];
  for (const paragraph of paragraphsOf(text.slice(0, longestMethod))) {
    if (isHeading(paragraph)) {
      place.part = paragraph.replace(/:$/, '');
      continue;
    }
    for (const words of stretchesOf(paragraph)) steps.push(stepOf(words, place));
    if (steps.length > mostSteps) break;
  }
  const kept = steps.slice(0, mostSteps);
  const last = kept.at(-1);
  const whole = steps.length <= mostSteps && text.length <= longestMethod;
  if (last && !whole) kept[kept.length - 1] = { ...last, sure: false, because: [...last.because, goesOn] };
  return kept;
};

/** A paragraph cut so that each stretch holds one time at most; sentences without one lead up to the next. */
const stretchesOf = (paragraph: string): string[] => {
  const stretches: string[] = [];
  let open = '';
  for (const sentence of sentencesOf(paragraph).flatMap(clausesOf)) {
    const joined = open ? `${open} ${sentence}` : sentence;
    const timed = durationsIn(tokensOf(sentence.slice(0, longestWords)).tokens).length > 0;
    if (open && joined.length > longestWords) {
      stretches.push(open);
      open = sentence;
    } else open = joined;
    if (timed) {
      stretches.push(open);
      open = '';
    }
  }
  return [...stretches, ...(open ? [open] : [])].flatMap(inPieces);
};

const inPieces = (words: string): string[] => {
  const pieces: string[] = [];
  for (let at = 0; at < words.length; at += longestWords)
    pieces.push(words.slice(at, at + longestWords).trim());
  return pieces.filter(Boolean);
};

/** "Fry for 5 minutes, then simmer for 20": two stretches when both have a time. */
const clausesOf = (sentence: string): string[] => {
  if (sentence.length > longestWords) return [sentence];
  const parts = sentence.split(/,?\s+(?:and )?then\s+/i);
  const timed = parts.filter((part) => durationsIn(tokensOf(part).tokens).length > 0);
  return parts.length > 1 && timed.length > 1
    ? parts.map((part, at) => (at === 0 ? part : `Then ${part}`))
    : [sentence];
};

const stepOf = (words: string, place: Place): StepReading => {
  const line = tokensOf(words);
  const { kind, attended, because: why } = kindOf(words);
  const because = [...why];
  const time = timeOf(durationsIn(line.tokens), because);
  const oven = ovenOf(words, line, place, because, kind);
  const equipment: Equipment[] = [...(oven ? (['oven'] as const) : []), ...equipmentIn(words)];
  const has = (one: Equipment): number => (equipment.includes(one) ? 1 : 0);
  return {
    words,
    part: place.part,
    kind,
    ...time,
    attended,
    oven,
    rings: oven ? 0 : has('hob'),
    mixers: has('mixer'),
    fridgeShelves: has('fridge'),
    equipment,
    sure: because.length === 0,
    because: [...new Set(because)],
  };
};

const timeOf = (
  times: readonly Duration[],
  because: string[],
): Pick<StepReading, 'minutes' | 'minutesLongest'> => {
  const longest = times.toSorted((a, b) => (b.longest ?? b.minutes) - (a.longest ?? a.minutes))[0];
  if (!longest) {
    because.push(noTime);
    return { minutes: null, minutesLongest: null };
  }
  because.push(...longest.because);
  if (times.length > 1) because.push('Several times are stated: the longest is read.');
  return { minutes: longest.minutes, minutesLongest: longest.longest };
};

/** "heat the oil to 180°C", "until the centre reaches 75°C": the nearest word before says what is so hot. */
const isOfFood = ({ tokens }: Line, at: number): boolean => {
  const before = tokens.slice(Math.max(0, at - 10), at).map(({ low }) => low);
  const food = before.findLastIndex((word) => otherHeat.has(word));
  return food >= 0 && food > before.findLastIndex((word) => ofOven.test(word));
};

const ofOven = /^(?:oven|pre-?heat(?:ed)?|bake|roast|gas|fan)$/;

/** The heat of an oven step, from its own words or from the oven set before; a preheating alone uses none yet. */
const ovenOf = (
  words: string,
  line: Line,
  place: Place,
  because: string[],
  kind: Kind,
): StepReading['oven'] => {
  const heats = heatsIn(line.tokens).filter(({ start }) => !isOfFood(line, start));
  // A braise is said with a heat only where it is done in an oven.
  const baked = usesOven.test(words) || (kind === 'braise' && heats.length > 0);
  const named =
    preheats.test(words) || baked || /\boven\b/i.test(words) || heats.some(({ scale }) => scale === 'gas');
  const own = named ? ovenHeat(heats) : undefined;
  const before = place.heat;
  if (own) place.heat = own;
  if (!baked) return null;
  const heat = own ?? before;
  if (!heat) {
    because.push('The oven is used, and no heat is stated.');
    return null;
  }
  if (!own) because.push('The heat is that of the oven set in a step before.');
  if (heat.scale === 'bare') because.push('Whether degrees are Celsius or Fahrenheit is not said.');
  if (heat.fan) because.push('The heat stated is for a fan oven.');
  return { heat: heat.celsius, fan: heat.fan };
};
