/** The text of a file, and how it was read: as UTF-8 where it is UTF-8, else as Latin-1 (Windows-1252). */
export type Decoded = { text: string; encoding: 'UTF-8' | 'UTF-16' | 'Latin-1' };

/** What Windows-1252 has where Latin-1 has controls, from 0x80 on; the decoder of some versions of Node leaves these out. */
const windows =
  '\u20ac\x81\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\x8d\u017d\x8f\x90\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\x9d\u017e\u0178';

const fromLatin = (bytes: Uint8Array): string =>
  new TextDecoder('latin1')
    .decode(bytes)
    .replace(/[\x80-\x9f]/g, (sign) => windows[sign.charCodeAt(0) - 0x80] ?? sign);

/** Reads the bytes of a text file, without its byte order mark; never fails. */
export const decodeText = (bytes: Uint8Array): Decoded => {
  const mark = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : undefined;
  const other = bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : mark;
  if (other) return { text: new TextDecoder(other).decode(bytes), encoding: 'UTF-16' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: fromLatin(bytes), encoding: 'Latin-1' };
  }
};
