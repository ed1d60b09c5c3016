import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faultsOfWay } from '../../../src/core/way-out/check.js';
import type { Puzzle } from '../../../src/core/way-out/puzzle.js';
import { type Solve, waysByFigures } from '../../../src/core/way-out/ways.js';
import { bruteForce } from './brute-force.js';

/** Where one or two dishes more do, nothing is left to a solver: this one knows of no way. */
const none: Solve = () => undefined;
const ways = (puzzle: Puzzle) => [...waysByFigures(puzzle, none, 3)];
const there = (key: string, feeds: number) => ({ key, extra: 0 as const, feeds, work: 0 });
const dish = (key: string, work = 0) => ({ key, extra: 1 as const, feeds: null, work });

// Two pies and one stew are there for five guests, so two have the curry. Who avoids nuts could have pie or stew and
// saves 400 by it: they have the stew, so that both pies are left to vegans, who save 250 each. One vegan has the curry at
// 250, and who drinks no milk, and could have had the stew, at 100: 350.
test('portions that are there go where they save most, one moving on for another', () => {
  const take = (offer: number, cost: number) => ({ offer, cost });
  const puzzle: Puzzle = {
    offers: [there('pie', 2), there('stew', 1), dish('curry')],
    needs: [
      { key: 'vegan', guests: 3, takes: [take(0, 0), take(2, 250)] },
      { key: 'nuts', guests: 1, takes: [take(0, 0), take(1, 0), take(2, 400)] },
      { key: 'milk', guests: 1, takes: [take(1, 0), take(2, 100)] },
    ],
  };
  const [way] = ways(puzzle);
  expect(way!.figures).toEqual({ extra: 1, unpriced: 0, cost: 350, work: 0 });
  expect(way!.served).toEqual([
    { need: 0, offer: 0, guests: 2 },
    { need: 0, offer: 2, guests: 1 },
    { need: 1, offer: 1, guests: 1 },
    { need: 2, offer: 2, guests: 1 },
  ]);
});

/** Up to two dishes besides and up to three whose portions are there anyway. */
const anyPuzzle: fc.Arbitrary<Puzzle> = fc
  .record({ extras: fc.array(fc.nat(3), { maxLength: 2 }), sizes: fc.array(fc.nat(4), { maxLength: 3 }) })
  .filter(({ extras, sizes }) => extras.length + sizes.length > 0)
  .chain(({ extras, sizes }) => {
    const offers = [
      ...extras.map((work, at) => dish(`d${at}`, work)),
      ...sizes.map((n, at) => there(`s${at}`, n)),
    ];
    const cost = fc.option(fc.integer({ min: -2, max: 6 }), { nil: null, freq: 6 });
    const take = (offer: number) =>
      fc.record({ offer: fc.constant(offer), cost: offer < extras.length ? cost : fc.constant(0) });
    const need = fc.record({
      key: fc.constant('n'),
      guests: fc.integer({ min: 1, max: 3 }),
      takes: fc
        .subarray(
          offers.map((_, at) => at),
          { minLength: 1 },
        )
        .chain((some) => fc.tuple(...some.map(take))),
    });
    return fc.record({
      offers: fc.constant(offers),
      needs: fc.array(need, { minLength: 1, maxLength: 4 }),
    });
  });

test('with portions that are there it equals trying everything, without a solver', () => {
  let shared = 0;
  fc.assert(
    fc.property(anyPuzzle, (puzzle) => {
      const found = ways(puzzle);
      found.forEach((way, at) => {
        expect(faultsOfWay(puzzle, way)).toEqual([]);
        const before = found.slice(0, at).map(({ open }) => open);
        expect(way.figures).toEqual(bruteForce(puzzle, before));
        if (way.open.length > 0 && way.served.some(({ offer }) => !way.open.includes(offer))) shared += 1;
      });
      if (found.length < 3 && found.at(-1)?.open.length !== 0)
        expect(
          bruteForce(
            puzzle,
            found.map(({ open }) => open),
          ),
        ).toBeUndefined();
    }),
    { numRuns: 2000, endOnFailure: true },
  );
  expect(shared).toBeGreaterThan(100);
});
