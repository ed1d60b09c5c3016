import { showHeat } from '../../core/quantity/show.js';
import type { Read } from '../../core/reading.js';

/** Heat as one types it in the kitchen's degrees: "180", or "355" where the kitchen reads Fahrenheit. */
export const heatText = (celsius: number, heat: 'C' | 'F'): string =>
  showHeat(celsius, { heat }).split(' ')[0]!;

/** Reads heat as typed, "180", "180 C" or "350°F", in degrees Celsius; a bare figure is in the kitchen's degrees. */
export const readHeat = (text: string, heat: 'C' | 'F', otherwise: number): Read<number> => {
  if (text.trim() === '') return { value: otherwise };
  const found = /^([-−]?\d{1,3})\s*°?\s*([cf])?$/i.exec(text.trim());
  const example = heat === 'C' ? '180' : '355';
  if (!found)
    return {
      sentence: `Enter the heat in degrees, such as ${example}. You entered ${text.trim().slice(0, 40)}.`,
    };
  const degrees = Number(found[1]!.replace('−', '-'));
  const celsius = (found[2]?.toUpperCase() ?? heat) === 'F' ? Math.round(((degrees - 32) * 5) / 9) : degrees;
  if (celsius < -40 || celsius > 500)
    return { sentence: `${degrees}° is no heat of a kitchen. Enter one such as ${example}.` };
  return { value: celsius };
};
