import type { Food } from '../../core/foods.js';
import { typedPercent, typedYield } from '../typed.js';
import type { Figures } from './figures-form.js';

export type Said = { says: string; source: string };

const apiece = ({ unit, grams }: { unit: string; grams: string }): string =>
  `${grams} g a ${unit === 'each' ? 'piece' : unit}`;

const aMeasure = ({ measured }: Food): string | undefined => {
  if (!measured) return undefined;
  const { amount, grams, text } = measured;
  return amount === '1' ? `${grams} g a ${text}` : `${grams} g for ${amount} ${text}`;
};

/** What a cooked yield says: "roasted: 58.4 % of the bought weight", "steeped: 3.05 times the prepared weight". */
export const cookedInWords = (one: { name: string; yield: string; from: 'bought' | 'prepared' }): string => {
  const share = typedYield(one.yield);
  return `${one.name}: ${share} ${share.endsWith('%') ? 'of' : 'times'} the ${one.from} weight`;
};

/** What the reference says of a food: "44 % eaten; 89 g a piece; 89 g a cup; USDA 11246". */
export const foodInWords = (food: Food): string => {
  const others = food.others?.map((other) => `${typedPercent(other.yield)} %`).join(', ');
  return [
    food.yield && `${typedPercent(food.yield)} % eaten${others ? ` (elsewhere ${others})` : ''}`,
    ...food.weights.slice(0, 2).map(apiece),
    aMeasure(food),
    ...(food.cooked ?? []).slice(0, 2).map(cookedInWords),
    `USDA ${food.item}`,
  ]
    .filter(Boolean)
    .join('; ');
};

/** Figures beside the edible yield, each in words with its source. */
export const restOf = ({ density, weights, cookedYields }: Omit<Figures, 'edibleYield'>): Said[] => [
  ...(density ? [{ says: `${density.gramsPerMl} g a ml`, source: density.source }] : []),
  ...weights.map((one) => ({ says: apiece(one), source: one.source })),
  ...cookedYields.map((one) => ({ says: cookedInWords(one), source: one.source })),
];

/** What speaks against the edible yield of a food: other published figures, and why it is worth a look. */
export const doubtsOf = ({ item, others = [], doubt, yield: share }: Food): string[] => {
  if (!share) return [];
  const own = `${typedPercent(share)}% (USDA ${item})`;
  const theirs = others.map((other) => `${typedPercent(other.yield)}% (${other.source})`);
  return [
    ...(theirs.length > 0 ? [`Published sources disagree: ${[own, ...theirs].join(' or ')}.`] : []),
    ...(doubt ? [`${own} ${doubt}.`] : []),
  ];
};
