/** Facts that diets turn on. Absent is not known. */
export const traits = [
  'meat',
  'pork',
  'beef',
  'poultry',
  'fish',
  'shellfish',
  'dairy',
  'egg',
  'honey',
  'gelatine',
  'lard',
  'suet',
  'rennet',
  'alcohol',
] as const;
export type Trait = (typeof traits)[number];
