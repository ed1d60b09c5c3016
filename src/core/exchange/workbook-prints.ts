import type { Workbook } from '../facts/facts.js';
import type { PrintedLabel } from '../facts/printed-label.js';
import type { PrintedSheet } from '../facts/printed-sheet.js';
import { keepable, meant } from '../rules/refuse.js';

/** Prints with their lines in the one order of the file. */
export const printsInOrder = (prints: readonly PrintedSheet[]): PrintedSheet[] =>
  prints
    .toSorted((a, b) => byText(nameOf(a), nameOf(b)))
    .map((print) => ({ ...print, lines: print.lines.toSorted((a, b) => byText(a.id, b.id)) }));

const nameOf = ({ event, sheet }: PrintedSheet): string => `${event} ${sheet}`;
const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Why prints of papers cannot be kept, each with its place among them. */
export const printFaults = ({ printedSheets, events }: Pick<Workbook, 'printedSheets' | 'events'>) => {
  const faults: { path: string[]; sentence: string }[] = [];
  const there = new Set(events.map(({ key }) => key));
  const seen = new Set<string>();
  for (const [place, print] of printedSheets.entries()) {
    const say = (field: string, sentence: string) => faults.push({ path: [String(place), field], sentence });
    const { event, who, lines } = print;
    if (!there.has(event)) say('event', `There is no event with the key "${event}".${meant(event, there)}`);
    if (seen.has(nameOf(print))) say('sheet', 'This paper of the event stands twice: keep its last print.');
    if (new Set(lines.map(({ id }) => id)).size < lines.length)
      say('lines', 'A line stands twice: name it once.');
    seen.add(nameOf(print));
    keepable({ who, lines }, '', (field, _code, sentence) => say(field, sentence));
  }
  return faults;
};

/** Prints of labels in the one order of the file. */
export const labelsInOrder = (labels: readonly PrintedLabel[]): PrintedLabel[] =>
  labels.toSorted((a, b) => byText(a.recipe, b.recipe));

/** Why prints of labels cannot be kept, each with its place among them. */
export const labelFaults = ({ printedLabels, recipes }: Pick<Workbook, 'printedLabels' | 'recipes'>) => {
  const faults: { path: string[]; sentence: string }[] = [];
  const there = new Set(recipes.map(({ key }) => key));
  const seen = new Set<string>();
  for (const [place, { recipe, who }] of printedLabels.entries()) {
    const say = (field: string, sentence: string) => faults.push({ path: [String(place), field], sentence });
    if (!there.has(recipe))
      say('recipe', `There is no recipe with the key "${recipe}".${meant(recipe, there)}`);
    if (seen.has(recipe)) say('recipe', 'The labels of this recipe stand twice: keep their last print.');
    seen.add(recipe);
    keepable({ who }, '', (field, _code, sentence) => say(field, sentence));
  }
  return faults;
};
