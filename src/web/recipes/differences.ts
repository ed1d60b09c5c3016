import type { Facts } from '../../core/facts/facts.js';
import type { Line, Recipe } from '../../core/facts/recipe.js';
import { type Difference, differences } from '../../core/variant.js';
import { measureInWords, typedAmount } from '../typed.js';

/** What a variant does otherwise than its base, a sentence for each line, step and field. */
export const differencesInWords = (base: Recipe, variant: Recipe, facts: Facts): string[] => {
  const { lines, steps, fields } = differences(base, variant);
  const numbered = (step: { key: string } | undefined, of: Recipe) =>
    `step ${of.steps.findIndex(({ key }) => key === step?.key) + 1}`;
  return [
    ...fields.map((field) => fieldWords[field](base, variant)),
    ...lines.map((line) => lineInWords(line, facts)),
    ...steps.map(({ was, is }) => {
      if (!was) return `New: ${numbered(is, variant)}`;
      return is ? `Changed: ${numbered(is, variant)}` : `Left out: ${numbered(was, base)} of the other`;
    }),
  ];
};

const yieldInWords = ({ yield: makes }: Recipe): string =>
  [
    makes.portions && `${typedAmount(makes.portions)} portions`,
    makes.weight && measureInWords(makes.weight),
    makes.volume && measureInWords(makes.volume),
  ]
    .filter(Boolean)
    .join(', ');

const fieldWords: Record<
  ReturnType<typeof differences>['fields'][number],
  (base: Recipe, variant: Recipe) => string
> = {
  yield: (base, variant) => `Makes ${yieldInWords(variant)} instead of ${yieldInWords(base)}`,
  byPiece: (_, { byPiece }) => (byPiece ? 'Goes by the piece' : 'Does not go by the piece'),
  cookingLoss: (base, variant) =>
    `Loses ${variant.cookingLoss ?? 'not known'} % in cooking instead of ${base.cookingLoss ?? 'not known'} %`,
  cup: () => 'Means another cup',
  keepingDays: (base, variant) =>
    `Keeps ${variant.keepingDays ?? 'not known'} days instead of ${base.keepingDays ?? 'not known'}`,
};

const lineInWords = ({ was, is }: Difference<Line>, facts: Facts): string => {
  if (!was) return `${lineWords(is!, facts)} added`;
  if (!is) return `${lineWords(was, facts)} left out`;
  return `${lineWords(is, facts)} instead of ${lineWords(was, facts)}`;
};

const lineWords = ({ amount, amountTo, unit, item, preparation }: Line, facts: Facts): string => {
  const name =
    'ingredient' in item ? facts.ingredients.get(item.ingredient) : facts.recipes.get(item.component);
  const upper = amountTo ?? amount;
  const from = amountTo === null ? '' : `${typedAmount(amount)}–`;
  const much =
    upper === null
      ? ''
      : `${from}${unit === 'each' ? typedAmount(upper) : measureInWords({ amount: upper, unit })} `;
  return `${much}${name?.name ?? ''}${preparation && `, ${preparation}`}`;
};
