import { normalName } from './names.js';
import type { Read } from './reading.js';

const most = 10;
const longest = 60;

/** Pieces of equipment as they are typed, "fryer, tray": each once, up to ten; between semicolons where one has a comma. */
export const readEquipment = (text: string): Read<string[]> => {
  const parts = text.split(text.includes(';') ? ';' : ',').map((part) => part.replace(/\s+/g, ' ').trim());
  const named = parts.filter((part) => part !== '');
  const value = named.filter(
    (part, at) => named.findIndex((one) => normalName(one) === normalName(part)) === at,
  );
  const long = value.find((part) => part.length > longest);
  if (long)
    return {
      sentence: `Name equipment in at most ${longest} signs, such as fryer. You entered ${long.slice(0, 40)}….`,
    };
  if (value.length > most)
    return { sentence: `A step names up to ten pieces of equipment. You entered ${value.length}.` };
  return { value };
};

/** Equipment as it is typed, so that it reads back the same. */
export const typedEquipment = (equipment: readonly string[]): string => {
  if (!equipment.some((one) => one.includes(','))) return equipment.join(', ');
  return equipment.length === 1 ? `${equipment[0]};` : equipment.join('; ');
};
