import { loadWords, panWords } from '../../core/equipment-words.js';
import type { Kitchen } from '../../core/facts/kitchen.js';
import type { Step } from '../../core/facts/recipe.js';
import type { ScaledRecipe, ScaledStep } from '../../core/sheets/scaled-recipe.js';
import { type Format, formatFor } from '../format.js';
import { typedAmount } from '../typed.js';
import type { Starts } from './asked.js';

export type StepRow = {
  number: number;
  minutes: string;
  heat: string;
  words: string;
  about: string;
  starts: string;
};

/** The method, each step with how long it takes, at what heat, and what it needs. */
export const stepRows = ({ steps, facts }: ScaledRecipe, starts: Starts): StepRow[] => {
  const f = formatFor(facts.kitchen);
  const numbers = new Map(steps.map(({ step, number }) => [step.key, number]));
  return steps.map((one) => ({
    number: one.number,
    minutes: minutesOf(one.step, f),
    heat: heatOf(one.step, f),
    words: one.step.words,
    about: aboutStep(one, numbers, facts.kitchen),
    starts: startOf(starts.get(one.step.key), f),
  }));
};

/** "start by Fri 17:40": the latest that service allows. */
const startOf = (start: { date: string; time: string } | undefined, f: Format): string =>
  start ? `start by ${f.dayName(start.date)} ${start.time}` : '';

const minutesOf = ({ minutes, minutesLongest }: Step, f: Format): string => {
  if (minutes === null) return '';
  if (minutesLongest === null || minutesLongest === minutes) return f.duration(minutes);
  return minutesLongest < 60
    ? `${minutes} to ${f.duration(minutesLongest)}`
    : `${f.duration(minutes).replace(/ min$/, minutes < 60 ? ' min' : '')} to ${f.duration(minutesLongest)}`;
};

const heatOf = ({ oven, rings }: Step, f: Format): string => {
  if (oven) return f.heat(oven.heat);
  return rings > 0 ? 'hob' : '';
};

const places = { home: '', venue: 'at the venue', either: 'at home or at the venue' } as const;

const aboutStep = (
  { step, trays, number, pans, shelves, litresOpen }: ScaledStep,
  numbers: ReadonlyMap<string, number>,
  kitchen: Kitchen,
): string => {
  const f = formatFor(kitchen);
  const shelf = step.portionsPerShelf;
  const parts = [
    step.oven && trays !== undefined && `Oven, ${f.count(trays, 'tray')} of ${typedAmount(shelf)} portions`,
    step.oven && trays === undefined && 'Oven',
    shelves && loadWords(shelves, step, kitchen),
    step.rings > 0 && f.count(step.rings, 'ring'),
    pans && panWords(pans, kitchen),
    litresOpen && 'litres in the pan not said',
    step.mixers > 0 && f.count(step.mixers, 'mixer'),
    step.fridgeShelves > 0 && f.count(step.fridgeShelves, 'fridge shelf', 'fridge shelves'),
    step.equipment.length > 0 && `with ${f.list(step.equipment.map((one) => one.toLowerCase()))}`,
    step.attended ? 'hands' : 'looks after itself',
    places[step.where],
    ...step.after.map((after) => afterInWords(after, number, numbers, f)),
    step.daysAhead > 0 && `up to ${f.count(step.daysAhead, 'day')} ahead`,
    step.servedWithin !== null && `served within ${f.duration(step.servedWithin)}`,
  ].filter(Boolean);
  const said = parts.join(', ');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}.`;
};

const afterInWords = (
  { step, least, most }: Step['after'][number],
  number: number,
  numbers: ReadonlyMap<string, number>,
  f: Format,
): string => {
  const gap = [
    least > 0 && `at least ${f.duration(least)}`,
    most !== null && `at most ${f.duration(most)}`,
  ].filter(Boolean);
  const before = numbers.get(step);
  if (before === number - 1 && gap.length === 0) return '';
  return [gap.join(' and '), `after step ${before}`].filter(Boolean).join(' ');
};
