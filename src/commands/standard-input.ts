import { decodeText } from '../core/exchange/csv/decode.js';

/** What is piped in, as text in UTF-8, UTF-16 or Latin-1; undefined once it is more than `most` bytes, and then no more of it is kept. */
export const standardInput = async (most: number): Promise<string | undefined> => {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of process.stdin) {
    const bytes = Buffer.from(part);
    size += bytes.length;
    if (size > most) return undefined;
    parts.push(bytes);
  }
  return decodeText(Buffer.concat(parts)).text;
};

/** A refusal is one sentence and exit code 1. */
export const refuse = (sentence: string): void => {
  console.error(sentence);
  process.exitCode = 1;
};
