/** The text of a file, and how it was read: as UTF-8 where it is UTF-8, else as Latin-1 (Windows-1252). */
export type Decoded = { text: string; encoding: 'UTF-8' | 'UTF-16' | 'Latin-1' };

/** Reads the bytes of a text file, without its byte order mark; never fails. */
export const decodeText = (bytes: Uint8Array): Decoded => {
  const mark = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : undefined;
  const other = bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : mark;
  if (other) return { text: new TextDecoder(other).decode(bytes), encoding: 'UTF-16' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), encoding: 'Latin-1' };
  }
};
