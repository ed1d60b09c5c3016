import { isRead, type Read, readClock } from '../../core/reading.js';

type Span = { from: string; to: string };

/** "9 to 13, 14:30 to 18", short enough to be read in its field; nothing when off. */
export const hoursText = (spans: readonly Span[]): string =>
  spans.map(({ from, to }) => `${short(from)} to ${short(to)}`).join(', ');

const short = (clock: string): string => clock.replace(/^0(?=\d)/, '').replace(/:00$/, '');

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
    if (to.value <= from.value)
      return { sentence: `Hours that begin at ${from.value} end later than that.${meant(to.value)}` };
    spans.push({ from: from.value, to: to.value });
  }
  return { value: spans };
};

/** "8 to 4" was meant for the afternoon. */
const meant = (clock: string): string => {
  const hour = Number(clock.slice(0, 2));
  return hour > 0 && hour < 12 ? ` Did you mean ${hour + 12}${clock.slice(2)}?` : '';
};
