import fc from 'fast-check';
import { expect, test } from 'vitest';
import { curveSvg, type Drawing } from '../../../src/web/costing/curve-svg.js';

const drawing = (more: Partial<Drawing> = {}): Drawing => ({
  points: [24, 25, 26, 27, 28].map((guests, i) => ({
    guests,
    aGuest: [2000, 1950, 2100, 2050, 2010][i]!,
    jump: guests === 26 ? 'third person, Serving' : undefined,
  })),
  now: { guests: 27, words: '27: £20.50' },
  price: { at: [2600, 2600, 2600, 2600, 2600], words: 'price £26.00' },
  keeps: { at: [1820, 1820, 1820, 1820, 1820], words: 'under £18.20 keeps 30%' },
  money: (minor) => `£${minor / 100}`,
  ...more,
});

const paths = (svg: string, kind: string) => svg.match(new RegExp(`<path class="${kind}" d="([^"]*)"`))![1]!;
const words = (svg: string, kind: string) =>
  [...svg.matchAll(new RegExp(`<text class="${kind}"[^>]*>([^<]*)`, 'g'))].map(([, said]) => said);

test('runs are drawn through, jumps apart, with the words of what jumps', () => {
  const svg = curveSvg(drawing(), 640).markup;
  // Four pieces: one is the jump from 25 to 26, between two runs.
  expect(paths(svg, 'run').match(/M/g)).toHaveLength(2);
  expect(paths(svg, 'run').match(/L/g)).toHaveLength(3);
  expect(paths(svg, 'jump').match(/[ML]/g)).toEqual(['M', 'L']);
  expect(words(svg, 'jump')).toEqual(['26: third person, Serving']);
  expect(words(svg, 'now')).toEqual(['27: £20.50']);
  expect(words(svg, 'price')).toEqual(['price £26.00']);
  expect(words(svg, 'keeps')).toEqual(['under £18.20 keeps 30%']);
});

test('money stands at round sums, guests at both ends', () => {
  const scale = words(curveSvg(drawing(), 640).markup, 'scale');
  expect(scale.filter((one) => one!.startsWith('£'))).toEqual(['£18', '£20', '£22', '£24', '£26']);
  expect(scale.filter((one) => !one!.startsWith('£'))).toEqual(['24', '25', '26', '27', '28']);
});

test('without a price, a floor or the present head-count the curve stands alone', () => {
  const svg = curveSvg(
    drawing({ price: undefined, keeps: undefined, now: { guests: 90, words: '' } }),
    350,
  ).markup;
  expect([words(svg, 'price'), words(svg, 'keeps'), words(svg, 'now')]).toEqual([[], [], []]);
  expect(svg).not.toContain('<circle');
});

test('a name of markup is text, and no style is written into the drawing', () => {
  const points = drawing().points.map((point) => ({ ...point, jump: point.jump && 'x, <script>' }));
  const svg = curveSvg(drawing({ points }), 640).markup;
  expect(svg).toContain('26: x, &lt;script&gt;');
  expect(svg).not.toMatch(/<script|style=|NaN|Infinity/);
});

// A sign is taken as no wider than 7 of the drawing's units, a bold one as 9, and a line of words as 14 high.
const boxes = (svg: string) =>
  [
    ...svg.matchAll(
      /<text class="(jump|now|price|keeps)" x="([^"]+)" y="([^"]+)" text-anchor="(\w+)">([^<]*)/g,
    ),
  ].map(([, kind, x, y, anchor, said]) => {
    const width = said!.length * (kind === 'now' ? 9 : 7);
    const left = Number(x) - (anchor === 'end' ? width : anchor === 'middle' ? width / 2 : 0);
    return { left, right: left + width, top: Number(y) - 12, bottom: Number(y) + 2 };
  });

test('whatever the curve, words stand inside it, no two on one another, and every figure is one', () => {
  const anyDrawing = fc
    .record({
      from: fc.integer({ min: 1, max: 300 }),
      // Either anything at all, or what falls as guests come, with a step here and there.
      falls: fc.boolean(),
      costs: fc.array(fc.record({ cost: fc.nat(500_000), jumps: fc.boolean() }), {
        minLength: 2,
        maxLength: 60,
      }),
      price: fc.nat(500_000),
      now: fc.nat(60),
    })
    .map(({ from, falls, costs, price, now }) =>
      drawing({
        points: costs.map(({ cost, jumps }, i) => ({
          guests: from + i,
          aGuest: falls ? 40_000 / (i + 10) + (i >= 20 ? 400 : 0) : cost,
          jump: falls ? (i === 20 ? 'third person' : undefined) : jumps ? 'second batch' : undefined,
        })),
        now: { guests: from + now, words: `${from + now}: £123.45` },
        price: { at: costs.map(() => price), words: 'price £1,234.00' },
        keeps: { at: costs.map(() => price * 0.7), words: 'under £863.80 keeps 30%' },
      }),
    );
  let most = 0;
  fc.assert(
    fc.property(anyDrawing, fc.constantFrom(350, 640), (drawn, width) => {
      const svg = curveSvg(drawn, width).markup;
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      const all = boxes(svg);
      most = Math.max(most, all.length);
      for (const [i, box] of all.entries()) {
        expect(box.left).toBeGreaterThanOrEqual(0);
        expect(box.right).toBeLessThanOrEqual(width);
        for (const other of all.slice(0, i))
          expect(
            box.left < other.right &&
              other.left < box.right &&
              box.top < other.bottom &&
              other.top < box.bottom,
          ).toBe(false);
      }
    }),
    { numRuns: 300 },
  );
  // The price, what keeps the margin, the present, and what jumps.
  expect(most).toBeGreaterThanOrEqual(4);
});
