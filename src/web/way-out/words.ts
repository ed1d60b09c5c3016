import type { Move, WayOut, WaysOut, Without } from '../../core/way-out/find.js';
import type { Format } from '../format.js';
import { type Html, html } from '../html.js';

/** "3 portions of Hummus, without tahini, for Priya (no nuts) and 2 pescatarian". */
const moveWords = (move: Move, f: Format): Html => {
  const { kind, course, dish, guests, who } = move;
  const portions = f.count(guests, 'portion');
  const what: Record<Move['kind'], Html> = {
    made: html`${portions} of <b>${dish}</b>`,
    variant: html`${portions} of <b>${dish}</b>, a variant you have`,
    other: html`${portions} of <b>${dish}</b>, another dish of yours`,
    more: html`${guests} more of <b>${dish}</b>, kept for them`,
    kept: html`${portions} of <b>${dish}</b> kept back`,
  };
  return html`${course}: ${what[kind]}, for ${f.list(who)}`;
};

/** What a way comes to, in the order in which ways are compared. */
const comesTo = ({ dishes, more, work }: WayOut, f: Format): string => {
  const made = dishes === 0 ? 'No dish more to make' : f.count(dishes, 'dish more', 'dishes more');
  const cost =
    more === undefined
      ? 'what it costs is not known, for a price or a weight is missing'
      : more === 0
        ? 'the food costs the same'
        : `the food costs ${f.money(Math.abs(more))} ${more > 0 ? 'more' : 'less'}`;
  const hands = work === 0 ? 'no more work by the steps’ minutes' : `${f.duration(work)} more work`;
  return `${made}; ${cost}; ${hands}.`;
};

export type WayWords = { comesTo: string; moves: Html[]; cautions: string[] };

/** A way out in words: what it comes to, what moves for whom, and what to mind. */
export const wayWords = (way: WayOut, f: Format): WayWords => ({
  comesTo: comesTo(way, f),
  moves: way.moves.map((move) => moveWords(move, f)),
  cautions: [...new Set(way.moves.flatMap(({ cautions }) => cautions)), ...way.clashes],
});

/** Whom nothing in the library serves, where the labels are in the way, and who has not said what they eat. */
export const openWords = ({ nothing, notAnswered, wishes }: WaysOut, f: Format): string[] => [
  ...nothing.map(nothingWords),
  ...(notAnswered > 0
    ? [
        `${notAnswered === 1 ? '1 guest has' : `${f.number(notAnswered)} guests have`} not answered about diet: no way out counts them as fed.`,
      ]
    : []),
  ...wishes.map(({ who, other }) => `${who}: “${other}” is a wish in their own words, for you to judge.`),
];

const nothingWords = ({ who, course, open }: Without): string =>
  `Nothing in your recipes serves ${who} in the ${course.toLowerCase()} course.${open ? ' What is in some of it is not fully known: reading those labels may show more.' : ''}`;
