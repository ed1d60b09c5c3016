import { bracketAt } from './bracket.js';
import { isDash, isSign, type Token } from './tokens.js';
import { prepared } from './words.js';

/** A stretch between commas, or what stood in a bracket. */
export type Segment = {
  kind: 'text' | 'bracket';
  tokens: Token[];
  /** True when a comma or a dash stands before it. */
  apart: boolean;
};

/** The rest of a line cut at its commas, dashes and brackets; `open` when a bracket never closes. */
export const segmentsOf = (tokens: readonly Token[]): { segments: Segment[]; open: boolean } => {
  const segments: Segment[] = [];
  let text: Token[] = [];
  let open = false;
  let apart = false;
  const flush = () => {
    if (text.length > 0) segments.push({ kind: 'text', tokens: text, apart });
    if (text.length > 0) apart = false;
    text = [];
  };
  for (let i = 0; i < tokens.length; ) {
    const bracket = bracketAt(tokens, i);
    if (bracket) {
      flush();
      if (bracket.inner.length > 0) segments.push({ kind: 'bracket', tokens: bracket.inner, apart });
      apart = false;
      open ||= !bracket.closed;
      i = bracket.end;
      continue;
    }
    if (cuts(tokens, i)) {
      flush();
      apart = true;
    } else if (!isSign(tokens[i], '*', '†', '‡')) text.push(tokens[i]!);
    i++;
  }
  flush();
  return { segments: segments.map(trimmed).filter((one) => one.tokens.length > 0), open };
};

const cuts = (tokens: readonly Token[], at: number): boolean => {
  const token = tokens[at];
  if (isSign(token, ',', ';', ':')) return true;
  const next = tokens[at + 1];
  if (isSign(token, '/') && token!.spaced && next?.spaced && prepared.has(next.low)) return true;
  return isDash(token) && (token!.spaced || at === 0) && (next?.spaced ?? true);
};

/** Full stops and dashes at the edges only join. */
const trimmed = ({ kind, tokens, apart }: Segment): Segment => {
  let start = 0;
  let end = tokens.length;
  while (start < end && (isSign(tokens[start], '.', '…', ')') || isDash(tokens[start]))) start++;
  while (end > start && (isSign(tokens[end - 1], '.', '…', '!', ')') || isDash(tokens[end - 1]))) end--;
  return { kind, tokens: tokens.slice(start, end), apart };
};
