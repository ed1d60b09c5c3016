import { randomBytes } from 'node:crypto';

const signs = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789'; // none that look alike

/** A one-time code to type over, "K7QF-29MP-XH4D": 59 bits. */
export const newCode = (): string => {
  const letters = [...randomBytes(64)].filter((byte) => byte < 248).map((byte) => signs[byte % signs.length]);
  return [0, 4, 8].map((at) => letters.slice(at, at + 4).join('')).join('-');
};
