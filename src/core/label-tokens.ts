/** A word of a label: as written, as it is compared, where it stands, and whether the label sets it apart. */
export type Token = {
  raw: string;
  /** Folded to one form: lower case, no accents, in the singular. */
  word: string;
  from: number;
  to: number;
  emphasised: boolean;
  /** In bold, not only in capitals. */
  bold: boolean;
  /** Nothing but space or a hyphen stands between it and the word before. */
  joined: boolean;
  /** A line ends between the two. */
  wrapped: boolean;
};

export type LabelWords = { plain: string; tokens: Token[] };

/** Signs that show nothing: where a word may be broken, and where it may not. */
const unseen = /[\u00ad\u200b-\u200d\u2060\ufeff]/g;
const marks = /\*\*|<(\/?)(?:b|strong|u|em|mark)(?:\s[^<>]{0,200})?>|<[a-z/!][^<>]{0,200}>/gi;
const entities: Record<string, string> = { amp: '&', nbsp: ' ', lt: '<', gt: '>', quot: '"', '#39': "'" };

/**
 * A label's text as plain words, each with whether it is emphasised: between ** or in <b>, <strong>, <em>, <u> or
 * <mark>, or in capitals where most of the text is not.
 */
export const labelWords = (text: string): LabelWords => {
  const { plain, bold } = unmarked(text.normalize('NFC').replace(unseen, ''));
  const found = [...plain.matchAll(/[eE][ -]?\d{3,4}\b|[\p{L}\p{N}\p{M}]+(?:['’]\p{L}+)?/gu)];
  const capitals = found.map(([raw]) => inCapitals(raw));
  const lettered = found.filter(([raw]) => /\p{L}{3}/u.test(raw)).length;
  // A label all in capitals sets nothing apart by them.
  const telling = capitals.filter(Boolean).length * 2 <= lettered;
  const tokens = found.map((match, i): Token => {
    const [raw] = match;
    const from = match.index;
    const before = found[i - 1];
    const gap = before ? plain.slice(before.index + before[0].length, from) : '.';
    const isBold = bold.subarray(from, from + raw.length).includes(1);
    return {
      raw,
      word: isSulphiteNumber(plain, from, raw) ? `e${raw}` : folded(raw),
      from,
      to: from + raw.length,
      emphasised: isBold || (telling && capitals[i]!),
      bold: isBold,
      wrapped: gap.includes('\n'),
      joined: /^(?:[ \t]*\n?[ \t]*|[-\u2010-\u2013])$/.test(gap),
    };
  });
  return { plain, tokens };
};

/** Three capitals or more, all of a word or part of one ("soyaLECITHIN"); additive numbers and short signs are none. */
const inCapitals = (raw: string): boolean =>
  /^[\p{Lu}\p{M}'’]{3,}$/u.test(raw) || /\p{Lu}{3}/u.test(raw.replace(/\p{M}/gu, ''));

/** Australian labels give an additive's number alone: "preservative (202, 220)". */
const isSulphiteNumber = (plain: string, from: number, raw: string): boolean =>
  /^22[0-8]$/.test(raw) &&
  /\b(?:preservatives?|antioxidants?)\b[\s:([]{0,3}(?:\d{3}[a-z]?[\s,]{0,3}(?:and |& )?){0,6}$/i.test(
    plain.slice(Math.max(0, from - 60), from),
  );

const unmarked = (text: string): { plain: string; bold: Uint8Array } => {
  const pairs = (text.match(/\*\*/g)?.length ?? 0) & ~1;
  const bold = new Uint8Array(text.length + 1);
  const parts: string[] = [];
  let [length, stars, open, at] = [0, 0, 0, 0];
  const put = (piece: string) => {
    const words = piece.replace(/&(#39|[a-z]{2,4});/g, (all, name) => entities[name] ?? all);
    if (open > 0 || stars % 2 === 1) bold.fill(1, length, length + words.length);
    parts.push(words);
    length += words.length;
  };
  for (const match of text.matchAll(marks)) {
    put(text.slice(at, match.index));
    at = match.index + match[0].length;
    if (match[0] === '**') stars += stars < pairs ? 1 : 0;
    else if (match[1] === '/') open = Math.max(0, open - 1);
    else if (match[1] === '') open += 1;
    else if (/^<\/?(?:br|p|div|li|tr|td)\b/i.test(match[0])) put('\n');
  }
  put(text.slice(at));
  return { plain: parts.join(''), bold };
};

/** "Anchovies" and "anchovy", "Crème" and "creme" compare alike. */
export const folded = (raw: string): string => {
  const plain = raw
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/['’]s$/, '')
    .replace(/^e[ -](?=\d)/, 'e');
  if (/ies$/.test(plain) && plain.length > 4) return `${plain.slice(0, -3)}y`;
  if (/(?:ss|us|is)$/.test(plain)) return plain;
  if (/(?:sh|ch|x)es$/.test(plain)) return plain.slice(0, -2);
  return plain.length > 3 && plain.endsWith('s') ? plain.slice(0, -1) : plain;
};
