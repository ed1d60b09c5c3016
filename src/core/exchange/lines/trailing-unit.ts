import { countAt } from './measures.js';
import { table } from './table.js';
import { isWord, type Token } from './tokens.js';

/** Counts that stand behind their food: "4 garlic cloves", "2 celery sticks", "3 thyme sprigs". */
const behind = table<ReadonlySet<string> | 'any'>({
  clove: new Set(['garlic']),
  stick: new Set(['celery', 'rhubarb', 'lemongrass']),
  stalk: new Set(['celery', 'rhubarb', 'lemongrass', 'broccoli']),
  rib: new Set(['celery']),
  rasher: new Set(['bacon']),
  sprig: 'any',
  tin: 'any',
  packet: 'any',
  sachet: 'any',
  jar: 'any',
  carton: 'any',
  tub: 'any',
  punnet: 'any',
  leaf: new Set(
    'basil mint sage gelatine gelatin lettuce cabbage parsley coriander spinach oregano tarragon chard kale cilantro marjoram'.split(
      ' ',
    ),
  ),
  sheet: new Set('filo phyllo pastry lasagne lasagna gelatine gelatin nori'.split(' ')),
  slice: new Set('bread lemon lime bacon ham cheese prosciutto pancetta'.split(' ')),
});

/** The unit at the end of a food that is counted, with how many tokens it takes. */
export const trailingUnit = (food: readonly Token[]): { unit: string; length: number } | undefined => {
  const at = food.length - 1;
  if (at < 1) return undefined;
  const count = countAt(food, at);
  const after = count && behind[count.unit];
  if (!count || !after) return undefined;
  return after === 'any' || isWord(food[at - 1], ...after) ? { unit: count.unit, length: 1 } : undefined;
};
