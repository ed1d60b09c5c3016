/** What is piped in, as text; undefined once it is more than `most` bytes, and then no more of it is kept. */
export const standardInput = async (most: number): Promise<string | undefined> => {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of process.stdin) {
    const bytes = Buffer.from(part);
    size += bytes.length;
    if (size > most) return undefined;
    parts.push(bytes);
  }
  return Buffer.concat(parts).toString('utf8');
};

/** A refusal is one sentence and exit code 1. */
export const refuse = (sentence: string): void => {
  console.error(sentence);
  process.exitCode = 1;
};
