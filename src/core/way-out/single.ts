import {
  compareFigures,
  type Figures,
  figuresOf,
  type Need,
  type Puzzle,
  type Served,
  type Take,
} from './puzzle.js';

/** Needs of a part, where nothing is scarce: what each takes is then decided by what is made. */
export type Ample = { puzzle: Puzzle; among: readonly number[] };

/** A part of a puzzle, unless some offer in it feeds only so many. */
export const ampleIn = (puzzle: Puzzle, among: readonly number[]): Ample | undefined => {
  const { offers, needs } = puzzle;
  const scarce = among.some((at) => needs[at]!.takes.some(({ offer }) => offers[offer]!.feeds !== null));
  // What stands on the menu anyway adds no work of its own, so it need not be chosen.
  const worked = among.some((at) =>
    needs[at]!.takes.some(({ offer }) => offers[offer]!.extra === 0 && offers[offer]!.work > 0),
  );
  return scarce || worked ? undefined : { puzzle, among };
};

const cheaper = (a: Take, b: Take): number =>
  (a.cost ?? Number.POSITIVE_INFINITY) - (b.cost ?? Number.POSITIVE_INFINITY) || a.offer - b.offer;

const cheapestOf = ({ takes }: Need, may: (offer: number) => boolean): Take | undefined => {
  let best: Take | undefined;
  for (const take of takes) if (may(take.offer) && (!best || cheaper(take, best) < 0)) best = take;
  return best;
};

/**
 * The best way that makes one dish more at most, by trying each; undefined where one does not do, or where those that do
 * are barred. With none made nothing else is compared, for a way without a dish more comes before any other.
 */
export const byOneDish = (
  { puzzle, among }: Ample,
  barred: readonly (readonly number[])[],
): { served: Served[]; open: number[]; figures: Figures } | undefined => {
  const { offers, needs } = puzzle;
  const lone = new Set(barred.filter(({ length }) => length === 1).map(([at]) => at!));
  const given = (made: number | undefined): Served[] | undefined => {
    const served: Served[] = [];
    for (const need of among) {
      const take = cheapestOf(needs[need]!, (offer) => offer === made || offers[offer]!.extra === 0);
      if (!take) return undefined;
      served.push({ need, offer: take.offer, guests: needs[need]!.guests });
    }
    return served;
  };
  const none = given(undefined);
  if (none)
    return barred.length > 0 ? undefined : { served: none, open: [], figures: figuresOf(puzzle, none) };
  const needy = among.find((at) => needs[at]!.takes.every(({ offer }) => offers[offer]!.extra === 1))!;
  let best: { served: Served[]; open: number[]; figures: Figures } | undefined;
  for (const { offer } of needs[needy]!.takes) {
    const served = lone.has(offer) ? undefined : given(offer);
    if (!served) continue;
    const figures = figuresOf(puzzle, served);
    if (!best || compareFigures(figures, best.figures) < 0) best = { served, open: [offer], figures };
  }
  return best;
};
