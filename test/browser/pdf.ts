import { inflateSync } from 'node:zlib';

type PdfObject = { head: string; stream: string };

/** The words of each page of a PDF as Chromium prints it, without spaces, which it sets by distance. */
export const pagesOf = (pdf: Buffer): string[] => {
  const objects = objectsIn(pdf);
  const at = (reference: string): PdfObject => objects.get(Number.parseInt(reference, 10))!;
  return [...objects.values()]
    .filter(({ head }) => /\/Type\s*\/Page\b/.test(head))
    .map(({ head }) => {
      const fonts = new Map<string, Map<string, string>>();
      for (const [, name, reference] of head.matchAll(/\/(F\d+) (\d+ 0 R)/g)) {
        const unicode = /\/ToUnicode (\d+ 0 R)/.exec(at(reference!).head);
        fonts.set(name!, unicode ? glyphsOf(at(unicode[1]!).stream) : new Map());
      }
      return wordsOf(at(/\/Contents (\d+ 0 R)/.exec(head)![1]!).stream, fonts);
    });
};

const objectsIn = (pdf: Buffer): Map<number, PdfObject> => {
  const text = pdf.toString('latin1');
  const found = new Map<number, PdfObject>();
  for (const { 1: id, 2: body, index } of text.matchAll(/(?:^|\n)(\d+) 0 obj\s*([\s\S]*?)endobj/g)) {
    const [head = '', raw] = body!.split(/stream\r?\n/);
    if (raw === undefined) found.set(Number(id), { head, stream: '' });
    else {
      const from = text.indexOf('stream', index) + 'stream'.length + 1;
      const bytes = pdf.subarray(from, from + Number(/\/Length (\d+)/.exec(head)![1]));
      const isPlain = !head.includes('/FlateDecode');
      const isFont = /\/Length1|\/Subtype\s*\/(Image|Type1C|CIDFontType0C|OpenType)/.test(head);
      found.set(Number(id), {
        head,
        stream: isFont ? '' : (isPlain ? bytes : inflateSync(bytes)).toString('latin1'),
      });
    }
  }
  return found;
};

/** What each code of a font stands for; codes are of two or of four figures. */
const glyphsOf = (cmap: string): Map<string, string> => {
  const glyphs = new Map<string, string>();
  const letters = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, part] of cmap.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, code, to] of part!.matchAll(/<(\w+)> <(\w+)>/g)) glyphs.set(code!, letters(to!));
  for (const [, part] of cmap.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, first, last, to] of part!.matchAll(/<(\w+)> <(\w+)> <(\w{4})>/g)) {
      const from = Number.parseInt(first!, 16);
      for (let n = from; n <= Number.parseInt(last!, 16); n++)
        glyphs.set(
          n.toString(16).toUpperCase().padStart(first!.length, '0'),
          String.fromCharCode(Number.parseInt(to!, 16) + n - from),
        );
    }
  return glyphs;
};

const wordsOf = (content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): string => {
  let font: ReadonlyMap<string, string> = new Map();
  let words = '';
  for (const [, name, hex] of content.matchAll(/\/(F\d+) [\d.]+ Tf|<([0-9A-Fa-f]+)>/g)) {
    if (name) font = fonts.get(name) ?? new Map();
    else {
      const [some = ''] = font.keys();
      const codes = hex!.toUpperCase().match(new RegExp(`.{${some.length || 4}}`, 'g')) ?? [];
      for (const code of codes) words += font.get(code) ?? '';
    }
  }
  return words.replaceAll(/\s/g, '');
};
