import { Parser } from 'htmlparser2';

const breaks = new Set('p br li div h1 h2 h3 h4 h5 h6 tr ul ol section article'.split(' '));

/** Words without mark-up: tags go, entities are resolved (twice written ones too), blocks become lines. */
export const plainText = (text: string): string => {
  const once = stripped(text);
  // Recipe data is often escaped once for JSON and once more for the page.
  return /&(?:#\d+|#x[\da-f]+|[a-z]+\d*);|<\/?[a-z][^<>]*>/i.test(once) ? stripped(once) : once;
};

const stripped = (text: string): string => {
  if (!/[<&]/.test(text)) return text.trim();
  const parts: string[] = [];
  const parser = new Parser({
    ontext: (part) => parts.push(part),
    onopentagname: (name) => {
      if (breaks.has(name)) parts.push('\n');
    },
    onclosetag: (name) => {
      if (breaks.has(name) && name !== 'br') parts.push('\n');
    },
  });
  inPieces(parser, text, () => false);
  return parts
    .join('')
    .replace(/[ \t\u00a0]+/g, ' ')
    .replace(/ ?\n ?/g, '\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
};

const piece = 16_384;

/** Feeds a parser piece by piece, so that it can be stopped; true when it came to the end. */
export const inPieces = (parser: Parser, text: string, stopped: () => boolean): boolean => {
  for (let at = 0; at < text.length; at += piece) {
    if (stopped()) return false;
    parser.write(text.slice(at, at + piece));
  }
  parser.end();
  return !stopped();
};
