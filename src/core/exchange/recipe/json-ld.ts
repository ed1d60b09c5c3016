import { isType, type Node, nodesIn, type Value } from './nodes.js';

/** The recipes of a block of JSON-LD with all nodes they may refer to; undefined when it can't be read as JSON. */
export const recipeNodes = (text: string): { recipes: Node[]; all: Node[] } | undefined => {
  const value = readJson(text);
  if (value === undefined) return undefined;
  const all = nodesIn(value);
  return { recipes: all.filter((node) => isType(node, 'Recipe')), all };
};

const parsed = (text: string): Value | undefined => {
  try {
    return JSON.parse(text) as Value;
  } catch {
    return undefined;
  }
};

/** JSON as pages hold it: comments round it, a semicolon behind it, line breaks inside its words, commas too many. */
export const readJson = (text: string): Value | undefined => {
  const bare = unwrapped(text);
  return parsed(bare) ?? parsed(mended(bare));
};

/** Recipe data begins at its first bracket and ends at its last, whatever comment stands round it. */
const unwrapped = (text: string): string => {
  const braces = [text.indexOf('{'), text.indexOf('[')].filter((at) => at >= 0);
  if (braces.length === 0) return text;
  // A comment such as <![CDATA[ has brackets of its own, and the data an opening brace behind them.
  const start = text.slice(0, 40).includes('CDATA') ? Math.max(text.indexOf('{'), 0) : Math.min(...braces);
  const end = text[start] === '{' ? text.lastIndexOf('}') : text.lastIndexOf(']');
  return end > start ? text.slice(start, end + 1) : text;
};

const escapes: Record<string, string> = { '\n': '\\n', '\r': '\\r', '\t': '\\t' };

/** Escapes raw control characters inside strings and drops commas before a closing bracket; in one pass. */
const mended = (text: string): string => {
  const out: string[] = [];
  let start = 0;
  let quoted = false;
  const put = (end: number, instead: string) => {
    out.push(text.slice(start, end), instead);
    start = end + 1;
  };
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]!;
    if (quoted && sign === '\\') at++;
    else if (sign === '"') quoted = !quoted;
    else if (quoted && sign < ' ') put(at, escapes[sign] ?? '');
    else if (!quoted && sign === ',' && closesNext(text, at + 1)) put(at, '');
  }
  return [...out, text.slice(start)].join('');
};

const closesNext = (text: string, at: number): boolean => {
  let next = at;
  while (next < text.length && ' \n\r\t'.includes(text[next]!)) next++;
  return text[next] === '}' || text[next] === ']';
};
