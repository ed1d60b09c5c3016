import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { faultsOfWay } from '../../../src/core/way-out/check.js';
import type { Puzzle } from '../../../src/core/way-out/puzzle.js';
import { type Solve, waysByFigures } from '../../../src/core/way-out/ways.js';
import { loadSolver } from '../../../src/way-out/highs.js';
import { bruteForce } from './brute-force.js';

let solve: Solve;
const smallestWays = (puzzle: Puzzle, most = 3) => [...waysByFigures(puzzle, solve, most)];
beforeAll(async () => {
  solve = await loadSolver();
});

const extra = (key: string, work = 0) => ({ key, extra: 1 as const, feeds: null, work });

// Two guests without milk, one without gluten. A bake without either, at 3 a guest, feeds all three as one dish more;
// two bakes, each without one of them, at 1 a guest, would be cheaper and one dish more to make. With the first barred
// the two come next.
test('fewest dishes first, then the next best with others', () => {
  const puzzle: Puzzle = {
    offers: [extra('no milk', 5), extra('no gluten', 5), extra('neither', 20)],
    needs: [
      {
        key: 'milk',
        guests: 2,
        takes: [
          { offer: 0, cost: 100 },
          { offer: 2, cost: 300 },
        ],
      },
      {
        key: 'gluten',
        guests: 1,
        takes: [
          { offer: 1, cost: 100 },
          { offer: 2, cost: 300 },
        ],
      },
    ],
  };
  expect(smallestWays(puzzle).map(({ open, figures }) => ({ open, ...figures }))).toEqual([
    { open: [2], extra: 1, unpriced: 0, cost: 900, work: 20 },
    { open: [0, 1], extra: 2, unpriced: 0, cost: 300, work: 10 },
  ]);
});

// A pie on the menu feeds 2 of the 3 who can eat it; the third gets another dish rather than a share of it.
test('a dish feeds no more than its portions', () => {
  const puzzle: Puzzle = {
    offers: [{ key: 'pie', extra: 0, feeds: 2, work: 0 }, extra('curry')],
    needs: [
      {
        key: 'vegan',
        guests: 3,
        takes: [
          { offer: 0, cost: 0 },
          { offer: 1, cost: 250 },
        ],
      },
    ],
  };
  const [way] = smallestWays(puzzle);
  expect(way).toMatchObject({ open: [1], figures: { extra: 1, cost: 250 } });
  expect(way!.served).toContainEqual({ need: 0, offer: 0, guests: 2 });
});

// A price that is missing is no bargain: the dish that costs 900 comes before the one whose cost nobody knows.
test('what is not known is never free', () => {
  const takes = [
    { offer: 0, cost: null },
    { offer: 1, cost: 900 },
  ];
  const puzzle: Puzzle = {
    offers: [extra('unpriced'), extra('dear')],
    needs: [{ key: 'all', guests: 1, takes }],
  };
  expect(smallestWays(puzzle).map(({ open }) => open)).toEqual([[1], [0]]);
});

test('where some guest can be given nothing there is no way out', () => {
  expect(smallestWays({ offers: [], needs: [] })).toHaveLength(1);
  const full: Puzzle = {
    offers: [{ key: 'pie', extra: 0, feeds: 1, work: 0 }],
    needs: [{ key: 'all', guests: 2, takes: [{ offer: 0, cost: 0 }] }],
  };
  expect(smallestWays(full)).toEqual([]);
});

/** Small puzzles of every shape: dishes on the menu with few portions, dishes besides, costs not known or saved. */
const anyPuzzle: fc.Arbitrary<Puzzle> = fc.integer({ min: 1, max: 5 }).chain((count) =>
  fc.record({
    offers: fc.tuple(
      ...Array.from({ length: count }, (_, at) =>
        fc.record({
          key: fc.constant(`o${at}`),
          extra: fc.constantFrom(0 as const, 1 as const, 1 as const),
          feeds: fc.option(fc.integer({ min: 1, max: 4 }), { nil: null }),
          work: fc.nat(3),
        }),
      ),
    ),
    needs: fc.array(
      fc.record({
        key: fc.constant('n'),
        guests: fc.integer({ min: 1, max: 3 }),
        takes: fc.uniqueArray(
          fc.record({
            offer: fc.nat(count - 1),
            cost: fc.option(fc.integer({ min: -2, max: 6 }), { nil: null, freq: 6 }),
          }),
          { minLength: 1, maxLength: count, selector: ({ offer }) => offer },
        ),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  }),
);

test('the search equals trying everything, and its answers pass the checker, in thousands of small kitchens', () => {
  fc.assert(
    fc.property(anyPuzzle, (puzzle) => {
      const ways = smallestWays(puzzle);
      ways.forEach((way, at) => {
        expect(faultsOfWay(puzzle, way)).toEqual([]);
        expect(way.figures).toEqual(
          bruteForce(
            puzzle,
            ways.slice(0, at).map(({ open }) => open),
          ),
        );
      });
      if (ways.length < 3 && ways.at(-1)?.open.length !== 0)
        expect(
          bruteForce(
            puzzle,
            ways.map(({ open }) => open),
          ),
        ).toBeUndefined();
    }),
    { numRuns: 2000, endOnFailure: true },
  );
}, 180_000);

test('the checker sees what is wrong', () => {
  const puzzle: Puzzle = {
    offers: [{ ...extra('pie', 4), feeds: 2 }, extra('curry')],
    needs: [{ key: 'vegan', guests: 3, takes: [{ offer: 0, cost: 100 }] }],
  };
  const figures = { extra: 1, unpriced: 0, cost: 300, work: 4 };
  const way = { served: [{ need: 0, offer: 0, guests: 3 }], open: [0], figures };
  expect(faultsOfWay(puzzle, way)).toEqual(['offer 0 feeds 2, not 3']);
  expect(faultsOfWay({ ...puzzle, offers: [extra('pie', 4)] }, way)).toEqual([]);
  expect(faultsOfWay(puzzle, { ...way, served: [{ need: 0, offer: 1, guests: 2 }] })).toHaveLength(5);
  expect(faultsOfWay(puzzle, { ...way, open: [] })).toHaveLength(2);
});
