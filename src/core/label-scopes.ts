import { meaningOf } from './label-names.js';
import type { LabelWords, Token } from './label-tokens.js';

/** How a word on a label is meant: as an ingredient, in a "contains", in a "may contain", or as what is left out. */
export type Mode = 'list' | 'contains' | 'may' | 'without';

/**
 * `statement`: a "contains" that opens its sentence, so that all it lists is meant as allergens. `opening`: a word of
 * the very phrase that opens a statement, as in "made with milk in a factory that".
 */
export type Scope = { mode: Mode; said: string; statement: boolean; opening?: boolean };

type Trigger = Scope & { from: number; to: number };

const place =
  '(?:factory|facility|plant|bakery|premises|site|kitchen|environment|lines?|equipment|machinery|area)';
const openings: [Mode, RegExp][] = [
  [
    'may',
    /\b(?:may|might|could|can) (?:also |still |possibly )?(?:contain|include|have)\b(?: traces?\b(?: of\b)?)?/gi,
  ],
  ['may', /\b(?:possible |may be )?traces?\b(?: of)?/gi],
  [
    'may',
    new RegExp(
      // "Made in our kitchen with butter" says what is in it; only what else is there may be.
      String.raw`\b(?:made|produced|manufactured|packed|packaged|prepared|processed|baked)\b[^.\n]{0,60}?\b${place}\b(?: (?:that|which|where|also|we|is|are|as|used|shared|for|to)\b(?: (?:also|we|is|are|used|shared|for|to|with|as)\b){0,3}(?: (?:handles?|handling|contains?|uses?|process(?:es)?|stores?|have|has))?| (?:handles?|handling|contains?|containing|process(?:es|ing)?|stor(?:es|ing)))`,
      'gi',
    ),
  ],
  ['may', new RegExp(String.raw`\b(?:shared|same) ${place}\b`, 'gi')],
  ['may', /\b(?:not|un) ?suitable for\b|\bnot free (?:from|of)\b/gi],
  ['may', /\b(?:cannot|can not|can['’]t|not) (?:be )?guaranteed?\b/gi],
  ['may', /\b(?:cross[- ](?:contact|contamination)|risk of)\b/gi],
  ['without', /(?<!not )(?<!un)\bsuitable for\b/gi],
  ['without', /\b(?:free (?:from|of)|(?:does|do) not contain|contains? no|made without|without)\b/gi],
  ['contains', /\bcontains?\b(?! no\b)(?!:? *(?:less|no more|\d|one or more|2%))/gi],
  ['list', /\bingredients?\b *:|\bcontains?:? (?:less|no more|\d|one or more)/gi],
];

/** The usual sentence that says where allergens are to be seen; what it names is no ingredient. */
const advice =
  /\b(?:for allergens?|allergens?|allergy (?:advice|information)|allergen (?:advice|information))\b[:,]? *(?:for allergens?,? *)?(?:including cereals containing gluten,? *)?(?:please )?(?:see )?(?:the )?(?:ingredients? )?(?:are )?(?:listed |shown |printed |highlighted |marked |given )?in (?:bold|capitals|capital letters|upper ?case|red|italics)\b/gi;

type Spread = Trigger & { end: number };

/** Where a label's words change their meaning, so that each word can be asked how it is meant. */
export class Scopes {
  private readonly scopes: readonly Spread[];
  private readonly asides: readonly [number, number][];

  constructor({ plain, tokens }: LabelWords) {
    const ends = sentenceEnds(plain);
    this.scopes = openings
      .flatMap(([mode, said]) => [...plain.matchAll(said)].map((match) => triggerOf(mode, plain, match)))
      .sort((a, b) => a.from - b.from || b.to - a.to)
      .filter(outside)
      .map((trigger) => ({ ...trigger, end: endOf(trigger, plain, ends, tokens) }));
    this.asides = [...plain.matchAll(advice)].map(({ index, 0: all }) => [index, index + all.length]);
  }

  /** How a word is meant; undefined in the sentence that only says where to look. */
  at({ from }: Token): Scope | undefined {
    if (this.asides.some(([start, end]) => from >= start && from < end)) return undefined;
    let scope: Spread | undefined;
    for (const one of this.scopes) {
      if (one.from > from) break;
      if (from < one.to) return { mode: 'list', said: '', statement: false, opening: true };
      // What may be in it is never taken back by a "free from" in the same breath.
      if (from < one.end && !(one.mode === 'without' && scope?.mode === 'may' && from < scope.end))
        scope = one;
    }
    return scope && from < scope.end ? scope : { mode: 'list', said: '', statement: false };
  }
}

const triggerOf = (mode: Mode, plain: string, { index, 0: all }: RegExpMatchArray): Trigger => ({
  mode,
  from: index!,
  to: index! + all.length,
  said: all.replace(/\s+/g, ' ').slice(0, 60),
  statement: mode === 'contains' && isOpening(plain, index!),
});

/** A trigger within the words of an earlier one says nothing of its own. */
const outside = ({ from }: Trigger, at: number, all: readonly Trigger[]): boolean => {
  for (let i = at - 1; i >= 0 && i > at - 8; i--) if (all[i]!.to > from) return false;
  return true;
};

const longest = 200;

/**
 * A statement ends with its sentence or its bracket, whichever comes first; "free from" within a list with the next
 * comma, and before a colon: "free from gluten: rice flour, milk". One that ends too soon only ever makes a label say
 * more.
 */
const endOf = (
  trigger: Trigger,
  plain: string,
  ends: readonly number[],
  tokens: readonly Token[],
): number => {
  const { mode, to } = trigger;
  const sentence = ends.find((one) => one >= to) ?? plain.length;
  const end = mode === 'without' ? Math.min(sentence, to + longest) : sentence;
  const opens = mode !== 'without' || isList(trigger, sentence, plain, tokens);
  let depth = 0;
  for (let at = to; at < end; at++) {
    const sign = plain[at]!;
    if (sign === '(' || sign === '[') depth += 1;
    if (sign === ')' || sign === ']') depth -= 1;
    if (depth < 0 || (!opens && /[,;]/.test(sign))) return at;
    if (mode === 'without' && sign === ':' && /\w/.test(plain.slice(to, at))) return at;
    if (mode === 'without' && turns.test(plain.slice(at, at + 12))) return at;
  }
  return end;
};

/** "Free from colours, made with milk": what follows is in it again. */
const turns = /^\b(?:with|but|using|made|ingredients?)\b/i;

/** "Free from milk, eggs and nuts" lists what is left out; "free from colours, whole milk" does not go on. */
const isList = ({ from, to }: Trigger, end: number, plain: string, tokens: readonly Token[]): boolean => {
  if (!isOpening(plain, from) || end - to > longest) return false;
  const comma = plain.slice(to, end).search(/[,;]/);
  const first = comma < 0 ? end : to + comma;
  return tokens.some((token) => token.from >= to && token.from < first && meaningOf(token)?.kind === 'named');
};

/** Whether a sentence begins there. */
const isOpening = (plain: string, from: number): boolean =>
  /(?:^|[.!?;:\n])\s*$/.test(plain.slice(Math.max(0, from - 20), from));
/** Ends of sentences: a full stop before a space, and a line that does not run on. */
const sentenceEnds = (plain: string): number[] => {
  const ends: number[] = [];
  for (const { index, 0: sign } of plain.matchAll(/[.!?;](?=\s|$)|\n/g)) {
    const before = sign === '\n' ? plain.slice(Math.max(0, index - 12), index) : '';
    const runsOn = sign === '\n' && /(?:[,:(&]|\b(?:and|or|of|from|contains?))[ \t]*$/i.test(before);
    if (!runsOn) ends.push(index);
  }
  return ends;
};
