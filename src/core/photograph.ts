import type { PhotographType } from './facts/label-photograph.js';

const starts = (bytes: Uint8Array, signs: readonly number[], at = 0): boolean =>
  signs.every((sign, i) => bytes[at + i] === sign);

/** What kind of picture some bytes are by how they begin, whatever they are called; undefined for none of the three. */
export const photographType = (bytes: Uint8Array): PhotographType | undefined => {
  if (starts(bytes, [0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (starts(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png';
  const riff = starts(bytes, [0x52, 0x49, 0x46, 0x46]) && starts(bytes, [0x57, 0x45, 0x42, 0x50], 8);
  return riff ? 'image/webp' : undefined;
};
