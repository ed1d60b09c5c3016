import { tokensOf } from '../lines/tokens.js';
import { durationsIn } from '../method/durations.js';

const iso =
  /^P(?:(\d{1,4}(?:[.,]\d{1,6})?)W)?(?:(\d{1,4}(?:[.,]\d{1,6})?)D)?(?:T(?:(\d{1,6}(?:[.,]\d{1,6})?)H)?(?:(\d{1,7}(?:[.,]\d{1,6})?)M)?(?:(\d{1,9}(?:[.,]\d{1,6})?)S)?)?$/i;

const longest = 100_000;

/** An ISO 8601 duration, or a time in words, as whole minutes rounded up; null when it is neither, or nothing. */
export const readDuration = (text: string): number | null => {
  const plain = text.trim();
  if (plain.length > 60) return null;
  const found = iso.exec(plain);
  if (!found) return inWords(plain);
  const [weeks, days, hours, minutes, seconds] = found
    .slice(1)
    .map((part) => Number((part ?? '0').replace(',', '.')));
  const all = weeks! * 10_080 + days! * 1440 + hours! * 60 + minutes! + seconds! / 60;
  // A float's last digit must not add a minute.
  const whole = Math.ceil(Number(all.toFixed(6)));
  return whole > 0 && whole <= longest ? whole : null;
};

const inWords = (text: string): number | null => {
  const bare = /^\d{1,5}$/.test(text) ? `${text} minutes` : text;
  const [first] = durationsIn(tokensOf(bare).tokens);
  return first && first.minutes > 0 ? first.minutes : null;
};

/** Whole minutes as an ISO 8601 duration: 80 is PT1H20M. */
export const isoDuration = (minutes: number): string => {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `PT${rest}M`;
  return rest === 0 ? `PT${hours}H` : `PT${hours}H${rest}M`;
};
