import { heldIn, type Meaning, meaningAt, meaningOf } from './label-names.js';
import { type Scope, Scopes } from './label-scopes.js';
import { labelWords, type Token } from './label-tokens.js';

/** Words of a label that led to a mark: as written, how they are meant, and why they count where that is not plain. */
export type Led = { words: string; said: string; emphasised: boolean; why: string };

/** An allergen that a label names, by substance or group, and the words that led there. */
export type Named = { id: string; state: 'contains' | 'may'; led: Led[] };

/** Words that are set aside or that somebody must settle, and why. */
export type Remark = { words: string; why: string };

export type LabelReading = {
  named: Named[];
  /** Emphasised, or listed as an allergen, and not understood; or flour of no grain: the cook settles each. */
  unsettled: Remark[];
  /** Sounds like an allergen and is none, is said to be left out, or leaves open what it is of. */
  aside: Remark[];
};

type Hit = { at: number; length: number; meaning: Meaning };

/**
 * What a label's text names: the allergens in its list, in its "contains" and in its "may contain", each with the words
 * that led there. Words a label sets apart that name no allergen known here are left to settle. It never says that
 * anything is not in it.
 */
export const readLabel = (text: string): LabelReading => {
  const label = labelWords(text);
  const scopes = new Scopes(label);
  const { tokens, plain } = label;
  const scoped = tokens.map((token) => scopes.at(token));
  const named = new Map<string, Named>();
  const unsettled = new Map<string, string>();
  const aside = new Map<string, string>();
  const understood = new Set<number>();
  const open = new Map<string, Meaning & { kind: 'open' }>();
  for (const { at, length, meaning } of hitsIn(tokens)) {
    const scope = scoped[at];
    if (!scope) continue;
    const run = tokens.slice(at, at + length);
    const words = plain.slice(run[0]!.from, run.at(-1)!.to).replace(/\s+/g, ' ');
    const apart = run.some(({ emphasised }) => emphasised);
    const without = scope.mode === 'without' || isLeftOut(tokens, at, length);
    const opened = plain.slice(run.at(-1)!.to).trimStart().startsWith('(');
    if (meaning.kind !== 'named') {
      if (apart || scope.statement) unsettled.set(words, meaning.why);
      else if (meaning.kind === 'aside' || without) aside.set(words, meaning.why);
      else if (!opened) open.set(words, meaning);
    } else if (without && scope.mode !== 'may') {
      if (apart) unsettled.set(words, 'set apart on the label, and said to be left out');
      else aside.set(words, 'said to be left out, so it marks nothing');
    } else
      for (const id of meaning.is) lead(named, id, scope, { words, emphasised: apart, why: meaning.why });
    for (let i = at; i < at + length; i++) understood.add(i);
  }
  // "Flour, water, salt" must not come to be free of wheat by its being read to the end.
  for (const [words, { usual, why }] of open) {
    const told = usual.length === 0 || usual.some((id) => named.get(id)?.state === 'contains');
    (told ? aside : unsettled).set(words, why);
  }
  for (const [at, { raw, word }] of tokens.entries()) {
    const scope = scoped[at];
    if (!scope || scope.mode === 'without' || understood.has(at)) continue;
    if (heldIn(word).some((id) => !named.has(id))) unsettled.set(raw, glued);
  }
  for (const words of notUnderstood(tokens, scoped, understood, plain))
    unsettled.set(words, 'set apart on the label, and no name of an allergen known here');
  return { named: [...named.values()], unsettled: remarks(unsettled), aside: remarks(aside) };
};

/** Why a word that only holds the name of an allergen is left to settle. */
export const glued = 'holds the name of an allergen, and is no word known here';

const remarks = (all: ReadonlyMap<string, string>): Remark[] =>
  [...all].map(([words, why]) => ({ words, why }));

/** Runs of words that mean something, the longest first; within one, a word set apart counts by itself. */
const hitsIn = (tokens: readonly Token[]): Hit[] => {
  const hits: Hit[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const found = meaningAt(tokens, at);
    if (!found) continue;
    const { length, meaning } = found;
    const run = tokens.slice(at, at + length);
    const whole = run.every(({ emphasised }) => emphasised);
    // "Coconut MILK": what the label sets apart, it means.
    const own = whole || length === 1 ? [] : run.flatMap((token, i) => ownHit(token, at + i, meaning));
    hits.push(...own);
    if (own.length === 0 || meaning.kind === 'named') hits.push({ at, length, meaning });
    at += length - 1;
  }
  return hits;
};

const ownHit = (token: Token, at: number, of: Meaning): Hit[] => {
  const meaning = token.emphasised ? meaningOf(token) : undefined;
  if (meaning?.kind !== 'named' || meaning.is.every((id) => of.is.some((one) => one === id))) return [];
  return [{ at, length: 1, meaning }];
};

/** "milk-free", "nut free", "no added milk", "non-dairy"; but "not milk-free" is not, and "free range" and "free from" say nothing of what is before. */
const isLeftOut = (tokens: readonly Token[], at: number, length: number): boolean => {
  const [after, then] = [tokens[at + length], tokens[at + length + 1]];
  if (/^not$|n['’]t$/.test(tokens[at - 1]?.word ?? '') && tokens[at]!.joined) return false;
  if (
    after?.word === 'free' &&
    after.joined &&
    !after.wrapped &&
    !(then?.joined && /^(?:range|from|of|flowing|run)$/.test(then.word))
  )
    return true;
  const [before, first] = [tokens[at - 1], tokens[at - 2]];
  if (!tokens[at]!.joined || tokens[at]!.wrapped || !before) return false;
  if (/^(?:no|non|zero)$/.test(before.word)) return true;
  return before.word === 'added' && before.joined && first?.word === 'no';
};

const mostWords = 6;

const lead = (named: Map<string, Named>, id: string, { mode, said }: Scope, led: Omit<Led, 'said'>): void => {
  const state = mode === 'may' ? 'may' : 'contains';
  const before = named.get(id);
  const entry: Led = { ...led, said: mode === 'list' ? '' : said };
  if (!before || (before.state === 'may' && state === 'contains')) named.set(id, { id, state, led: [entry] });
  else if (before.state === state && before.led.length < mostWords)
    if (before.led.every(({ words }) => words.toLowerCase() !== led.words.toLowerCase()))
      before.led.push(entry);
};

/** Words that stand on labels in bold or in a "contains" and name no food. */
const plainWords = new Set(
  'ingredient ingredients contain contains containing may also trace traces of and or with from the a an in for see allergy allergen allergens advice information warning note product may not suitable bold capitals above highlighted nutrition nutritional storage store best before use by keep refrigerated organic vegan vegetarian gluten free no added warnings produced made caffeine phenylalanine source liquorice licorice sweetener sugar alcohol naturally occurring less than total net weight this is are other'.split(
    ' ',
  ),
);
const isPlain = ({ word }: Token): boolean => plainWords.has(word) || /^[\d.]+$/.test(word);
const links = /^(?:and|or)$/;

/** What the label sets apart or lists as allergens, run by run, where no word of the run was understood. */
const notUnderstood = (
  tokens: readonly Token[],
  scoped: readonly (Scope | undefined)[],
  understood: ReadonlySet<number>,
  plain: string,
): string[] => {
  const found: string[] = [];
  let run: number[] = [];
  const close = () => {
    const [first, last] = [tokens[run[0] ?? -1], tokens[run.at(-1) ?? -1]];
    const told = run.some((at) => understood.has(at));
    const words = run.map((at) => tokens[at]!).filter((token) => !isPlain(token));
    const short = words.every(({ raw, bold }) => raw.length <= 3 && !bold) && !scoped[run[0]!]?.statement;
    if (first && last && !told && words.length > 0 && !short)
      found.push(plain.slice(first.from, last.to).replace(/\s+/g, ' ').slice(0, 80));
    run = [];
  };
  for (const [at, token] of tokens.entries()) {
    const scope = scoped[at];
    const counts =
      scope && !scope.opening && scope.mode !== 'without' && (token.emphasised || scope.statement);
    if (!counts || !token.joined || links.test(token.word)) close();
    if (counts && !links.test(token.word)) run.push(at);
  }
  close();
  return [...new Set(found)];
};

/** Where a text names allergens as ingredients, and which; `plain` is the text without its marks, which places count in. */
export const namesIn = (
  text: string,
): { plain: string; names: { from: number; to: number; is: readonly string[]; why: string }[] } => {
  const label = labelWords(text);
  const { tokens, plain } = label;
  const names = hitsIn(tokens).flatMap(({ at, length, meaning }) => {
    if (meaning.kind !== 'named' || isLeftOut(tokens, at, length)) return [];
    const run = tokens.slice(at, at + length);
    // Of "wheat flour" the wheat alone.
    const telling = run.filter((token) => meaningOf(token)?.is.some((id) => meaning.is.includes(id)));
    const [first, last] = telling.length === 1 ? [telling[0]!, telling[0]!] : [run[0]!, run.at(-1)!];
    return [{ from: first.from, to: last.to, is: meaning.is, why: meaning.why }];
  });
  return { plain, names };
};
