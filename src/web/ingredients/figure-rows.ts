import type { Ingredient } from '../../core/facts/ingredient.js';
import type { Food } from '../../core/foods.js';
import {
  type Departure,
  departuresFrom,
  isOwn,
  lackingOf,
  referenceOf,
  takenFrom,
} from '../../core/own-figures.js';
import { type Html, html, nothing } from '../html.js';
import { typedAmount, typedYield } from '../typed.js';
import { doubtsOf, restOf } from './food-words.js';

export type FigureRow = {
  figure: Html;
  words: string;
  source: string;
  /** What speaks against it: other published figures, or a reason to look. */
  doubts: string[];
  /** What is published where the figure is the cook's own, and the name under which it is taken back. */
  yours: { published: string; item: string; take: string } | undefined;
};
export type FigurePart = {
  rows: FigureRow[];
  /** What the reference has beside, and the ingredient lacks. */
  beside: { name: string; says: string } | undefined;
};

/** Every figure of an ingredient, with where it comes from and what else is published for it. */
export const figurePart = (doc: Ingredient): FigurePart => {
  const food = referenceOf(doc);
  const departures = food ? departuresFrom(food, doc) : [];
  const rows = rowsOf(doc).map(({ at, ...row }) => {
    const departure = departures.find((one) => one.at.toLowerCase() === at.toLowerCase());
    return {
      ...row,
      source: departure && isOwn(row.source) ? '' : row.source,
      doubts: at === 'edibleYield' && food && !doc.notBought ? doubtsOf(food) : [],
      yours: departure && {
        published: publishedInWords(departure),
        item: departure.item,
        take: departure.at,
      },
    };
  });
  return { rows, beside: food && !doc.notBought ? besideOf(food, doc) : undefined };
};

const yieldInWords = (figure: string): string => typedYield(figure).replace(' %', '%');

const publishedInWords = ({ at, published, from }: Departure): string => {
  if (from) return `${yieldInWords(published)} of the ${from} weight`;
  return at === 'edibleYield' ? yieldInWords(published) : `${typedAmount(published)} g`;
};

const besideOf = (food: Food, doc: Ingredient): FigurePart['beside'] => {
  const lacking = lackingOf(food, doc);
  if (lacking.length === 0) return undefined;
  const bare: Ingredient = { ...doc, edibleYield: null, density: null, weights: [], cookedYields: [] };
  const only = lacking.reduce((one, at) => takenFrom(food, one, at), bare);
  const eaten = only.edibleYield ? [`${yieldInWords(only.edibleYield.yield)} eaten`] : [];
  return { name: food.name, says: [...eaten, ...restOf(only).map(({ says }) => says)].join('; ') };
};

type Row = Omit<FigureRow, 'doubts' | 'yours'> & { at: string };

const rowsOf = (doc: Ingredient): Row[] => [
  yieldRow(doc),
  ...(doc.density
    ? [
        {
          at: 'density',
          figure: grams(doc.density.gramsPerMl),
          words: 'is what one ml weighs',
          source: doc.density.source,
        },
      ]
    : []),
  ...doc.weights.map(({ unit, grams: heavy, of, source }) => ({
    at: `weights/${unit}`,
    figure: grams(heavy),
    words: `is one ${unit === 'each' ? 'piece' : unit}, ${of === 'bought' ? 'as bought' : 'the part that is eaten'}`,
    source,
  })),
  ...doc.cookedYields.map(cookedRow),
];

const grams = (amount: string): Html =>
  html`<span class="qty"><b>${typedAmount(amount)}</b><span class="unit">g</span></span>`;

const share = (figure: string): Html => html`<b class="figure small-figure">${figure}</b>`;

const yieldRow = ({ edibleYield, notBought }: Ingredient): Row => {
  const at = 'edibleYield';
  if (!edibleYield)
    return {
      at,
      figure: notBought ? nothing : html`<b class="loud">not known</b>`,
      words: notBought ? 'not bought, so no yield is needed' : 'how much of what is bought is eaten',
      source: '',
    };
  const figure = share(yieldInWords(edibleYield.yield));
  return { at, figure, words: 'of what is bought is eaten', source: edibleYield.source };
};

const cookedRow = ({ name, yield: figure, from, source }: Ingredient['cookedYields'][number]): Row => {
  const typed = yieldInWords(figure);
  const swells = !typed.endsWith('%');
  const weight = { bought: 'the bought weight', prepared: 'the prepared weight' }[from];
  const trim = from === 'bought' ? '; with bone and trim in it, so trim is not taken off again' : '';
  return {
    at: `cookedYields/${name}`,
    figure: share(swells ? `× ${typed}` : typed),
    words: `${swells ? '' : 'of '}${weight} once ${name}${trim}`,
    source,
  };
};
