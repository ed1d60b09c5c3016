import { hash, verify } from '@node-rs/argon2';

/** Argon2id with 19 MiB and two passes, the package's own figures; one hash takes some 30 ms. */
export const hashOf = (passphrase: string): Promise<string> => hash(passphrase.normalize('NFKC'));

let nobody: Promise<string> | undefined;

/** Whether a passphrase fits a hash. Without a hash it takes as long and fits none, so that nobody learns names. */
export const fits = async (passphrase: string, kept: string | undefined): Promise<boolean> => {
  nobody ??= hashOf('nobody has this passphrase');
  const right = await verify(kept ?? (await nobody), passphrase.normalize('NFKC'));
  return right && kept !== undefined;
};

const least = 12;
const most = 256;

/** Why a passphrase can't be taken; nothing when it can. */
export const tooWeak = (passphrase: string): string | undefined => {
  const length = [...passphrase].length;
  if (length < least)
    return `Choose a passphrase of at least ${least} characters; four words in a row do well.`;
  if (length > most) return `Choose a passphrase of at most ${most} characters.`;
  return undefined;
};
