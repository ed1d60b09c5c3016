import type { Puzzle, Way } from './puzzle.js';

/**
 * What is wrong with a way out, in sentences for us, checked from the puzzle alone and by no means of the search; empty
 * where every guest has something they can eat, nothing feeds more than it can and the figures add up.
 */
export const faultsOfWay = (puzzle: Puzzle, way: Way): string[] => {
  const faults: string[] = [];
  const fed = new Map<number, number>();
  const eaten = new Map<number, number>();
  let [unpriced, cost] = [0, 0];
  for (const { need, offer, guests } of way.served) {
    const take = puzzle.needs[need]?.takes.find((one) => one.offer === offer);
    if (!take) faults.push(`need ${need} cannot eat offer ${offer}`);
    if (!Number.isInteger(guests) || guests < 1) faults.push(`${guests} guests are no guests`);
    fed.set(need, (fed.get(need) ?? 0) + guests);
    eaten.set(offer, (eaten.get(offer) ?? 0) + guests);
    if (take?.cost === null) unpriced += guests;
    else cost += (take?.cost ?? 0) * guests;
  }
  puzzle.needs.forEach(({ guests }, at) => {
    if (fed.get(at) !== guests) faults.push(`need ${at}: ${fed.get(at) ?? 0} of ${guests} fed`);
  });
  let [extra, work] = [0, 0];
  puzzle.offers.forEach((offer, at) => {
    const guests = eaten.get(at);
    if (guests === undefined) return;
    extra += offer.extra;
    work += offer.work;
    if (offer.feeds !== null && guests > offer.feeds)
      faults.push(`offer ${at} feeds ${offer.feeds}, not ${guests}`);
    if (offer.extra === 1 && !way.open.includes(at)) faults.push(`offer ${at} is eaten and not made`);
  });
  for (const at of way.open) if (!eaten.has(at)) faults.push(`offer ${at} is made and not eaten`);
  const { figures } = way;
  if (
    figures.extra !== extra ||
    figures.unpriced !== unpriced ||
    figures.cost !== cost ||
    figures.work !== work
  )
    faults.push(`the figures are ${extra}, ${unpriced}, ${cost}, ${work}`);
  return faults;
};
