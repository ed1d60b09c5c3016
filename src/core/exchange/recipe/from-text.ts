import { isMeasuredUnit } from '../lines/measures.js';
import { readLine } from '../lines/read-line.js';
import { readMethod } from '../method/read-method.js';
import type { RecipeDraft, Source, Times } from './draft.js';
import { sectionsOf } from './from-node.js';
import { endMark, factsOf, forHowMany, furniture, ingredientsMark, methodMark, notesMark } from './marks.js';
import { noYield, readYield } from './yield.js';

type Part = 'top' | 'ingredients' | 'method' | 'notes' | 'end';

/** The lines of a recipe, sorted by what they are. */
type Sorted = Record<Part, string[]> & { yieldText: string; times: Times; guessed: boolean };

/** A draft of one pasted recipe; undefined when the text holds neither ingredients nor method. */
export const fromText = (text: string, source: Source, title = ''): RecipeDraft | undefined => {
  const lines = text.split('\n').map((line) => line.trim());
  const sorted = sort(lines);
  const headings: string[] = [];
  const sections = sectionsOf(joined(sorted.ingredients), headings);
  const steps = readMethod(sorted.method.join('\n'));
  if (sections.every((one) => one.lines.length === 0)) return undefined;
  const top = sorted.top.filter((line) => line !== '' && !furniture.test(line));
  const first = top.find(isTitle) ?? top[0] ?? '';
  const named = title || first.replace(/^[#*\s]+|[*\s:]+$/g, '').replace(label, '');
  const inTitle = named.endsWith(')') && named.length <= 200 ? forHowMany.exec(named) : null;
  const name = inTitle ? named.slice(0, inTitle.index).trim() : named;
  sorted.yieldText ||= inTitle?.[1] ?? '';
  const made = sorted.yieldText
    ? readYield(sorted.yieldText)
    : { yield: noYield, because: ['What it makes is not said.'] };
  const unsure = [
    ...(name ? [] : ['The recipe has no name.']),
    ...made.because,
    ...headings,
    ...(steps.length > 0 ? [] : ['No method was found.']),
    ...(sorted.method.filter(isAmount).length > 1 ? ['Another list may stand in the method.'] : []),
    ...(sorted.guessed ? ['Where the ingredients end and the method begins is not marked.'] : []),
  ];
  const note = [...top, ...sorted.notes]
    .filter((line) => line !== name && line !== '' && (title || line !== first))
    .join('\n');
  return {
    name: name.slice(0, 200),
    source,
    yield: made.yield,
    times: sorted.times,
    sections,
    steps,
    note: note.slice(0, 4000),
    unsure,
  };
};

/** A line of a method that only names an amount: "2kg damsons". */
const isAmount = (line: string): boolean => {
  if (line.length > 60 || !/^[\d½⅓⅔¼¾⅛]/.test(line) || /^\d{1,2}[.)]/.test(line)) return false;
  const read = readLine(line);
  return read.kind === 'line' && isMeasuredUnit(read.unit);
};

/** A title is short and no sentence. */
const isTitle = (line: string): boolean =>
  line.length <= 100 && !/^\p{Ll}|[.,;]$/u.test(line.replace(/^[#*\s]+/, ''));

const label = /^(?:title|name|recipe(?: name)?|dish)\s*[:–-]\s*/i;

const sort = (lines: readonly string[]): Sorted => {
  const sorted: Sorted = {
    top: [],
    ingredients: [],
    method: [],
    notes: [],
    end: [],
    yieldText: '',
    times: { prep: null, cook: null, total: null },
    guessed: false,
  };
  const marked = lines.some((line) => ingredientsMark.test(line));
  let part: Part = 'top';
  lines.forEach((raw, at) => {
    // Bold words of a text in Markdown; a list's bold line may be a heading, so that one stays.
    const line = raw.replace(/\*\*|__/g, '');
    const facts = part === 'method' ? undefined : factsOf(line);
    if (facts) {
      sorted.yieldText ||= facts.yieldText;
      for (const field of ['prep', 'cook', 'total'] as const)
        sorted.times[field] ??= facts.times[field] ?? null;
      if (!facts.more) return;
    }
    const mark = partOf(line, part);
    if (mark) {
      part = mark;
      if (mark === 'ingredients')
        sorted.yieldText ||= forHowMany.exec(line.split(':')[0]!.slice(0, 100))?.[1] ?? '';
      const behind = line.slice(line.indexOf(':') + 1).trim();
      if (line.includes(':') && behind)
        sorted[part].push(...(part === 'ingredients' ? inOneLine(behind) : [behind]));
      return;
    }
    const next = unmarked(lines, at, part, marked);
    if (next !== part && next === 'method') sorted.guessed = true;
    part = next;
    sorted[part].push(part === 'ingredients' ? raw : part === 'method' ? withStop(line) : line);
  });
  return sorted;
};

/** "1 Mix everything." as "1. Mix everything.", so that the figure is not a step's words. */
const withStop = (line: string): string => line.replace(/^(\d{1,2})\s+(?=\p{Lu}\p{Ll})/u, '$1. ');

const partOf = (line: string, part: Part): Part | undefined => {
  if (ingredientsMark.test(line)) return 'ingredients';
  if (methodMark.test(line)) return 'method';
  if (part === 'top') return undefined;
  if (part !== 'ingredients' && endMark.test(line)) return 'end';
  return notesMark.test(line) ? 'notes' : undefined;
};

/** Where nothing marks the parts, the first amount begins the ingredients and the first sentence the method. */
const unmarked = (lines: readonly string[], at: number, part: Part, marked: boolean): Part => {
  const line = lines[at]!;
  if (part === 'top' && !marked && line !== '') return opensList(lines, at) ? 'ingredients' : 'top';
  return part === 'ingredients' && (isInstruction(line) || beginsNumbered(lines, at)) ? 'method' : part;
};

/** "1 Mix everything." with a second below it: numbered steps, whatever stands behind the figure. */
const beginsNumbered = (lines: readonly string[], at: number): boolean => {
  const [, words = ''] = /^1[.):]?\s+(.*)$/.exec(lines[at]!) ?? [];
  const next = lines.slice(at + 1, at + 4).find((line) => line !== '');
  return verbs.test(words) && /[.!]$/.test(words) && /^2[.):]?\s/.test(next ?? '');
};

const opensList = (lines: readonly string[], at: number): boolean => {
  const read = readLine(lines[at]!);
  if (read.kind === 'line') return read.quantity !== null && at > 0;
  const next = lines.slice(at + 1, at + 3).find((line) => line !== '');
  return read.kind === 'heading' && at > 0 && next !== undefined && readLine(next).quantity !== null;
};

const verbs =
  /^(?:(?:step )?\d{1,2}[.):]\s*)?(?:first,? |then |meanwhile,? |next,? |to make the [\p{L} ]{1,30}, )?(?:pre-?heat|heat|mix|stir|add|place|put|bring|pour|combine|whisk|melt|chop|peel|cut|cook|bake|roast|fry|boil|simmer|drain|rinse|wash|season|spread|roll|line|grease|beat|cream|fold|rub|sift|toss|blend|blitz|cover|leave|remove|take|transfer|serve|slice|make|set|turn|warm|soak|in an? |for the [\p{L} ]{1,30}, )\b/iu;

/** A sentence that says what to do rather than what to take. */
const isInstruction = (line: string): boolean => {
  if (line.length < 25) return false;
  const words = line.split(/\s+/).length;
  const read = readLine(line);
  if (verbs.test(line) && words > 4 && (/[.!]/.test(line) || words > 8))
    return read.quantity === null || /^\D/.test(line) || /^\d{1,2}[.)]/.test(line);
  return read.quantity === null && words > 10 && /[.!]\s*$/.test(line);
};

/** "Ingredients: 200 g flour, 2 eggs, salt": commas before an amount part the lines. */
const inOneLine = (text: string): string[] =>
  text
    .split(/;\s*|,\s+(?=[\d½⅓⅔¼¾⅛]|an? |salt\b)/i)
    .map((line) => line.trim())
    .filter(Boolean);

/** A line that only goes on ("and finely chopped" under "2 onions, peeled,") belongs to the one before. */
const joined = (lines: readonly string[]): string[] => {
  const found: string[] = [];
  for (const line of lines) {
    const before = found.at(-1);
    const goesOn =
      before !== undefined &&
      before.length < 300 &&
      before.endsWith(',') &&
      /^\p{Ll}/u.test(line) &&
      readLine(line).quantity === null;
    if (goesOn) found[found.length - 1] = `${before} ${line}`;
    else found.push(line);
  }
  return found;
};
