import { isRead, type Read, readClock } from '../../core/reading.js';

type Span = { from: string; to: string };

/** "09:00 to 13:00, 14:00 to 18:00"; nothing when off. */
export const hoursText = (spans: readonly Span[]): string =>
  spans.map(({ from, to }) => `${from} to ${to}`).join(', ');

/** Reads hours as written: "9 to 13", "9:00-13:00, 2pm-6pm"; nothing is off. */
export const readHours = (text: string): Read<Span[]> => {
  const spans: Span[] = [];
  for (const part of text.split(/[,;]/)) {
    if (part.trim() === '' || /^off$/i.test(part.trim())) continue;
    const ends = part.split(/\bto\b|[-–—]/);
    const [from, to] = ends.map(readClock);
    if (ends.length !== 2 || !from || !to)
      return {
        sentence: `Enter hours such as 9 to 17, or leave it empty when off. You entered ${part.trim().slice(0, 40)}.`,
      };
    if (!isRead(from)) return from;
    if (!isRead(to)) return to;
    spans.push({ from: from.value, to: to.value });
  }
  return { value: spans };
};
