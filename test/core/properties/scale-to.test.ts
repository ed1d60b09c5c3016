import fc from 'fast-check';
import { expect, test } from 'vitest';
import { scalings } from '../../../src/core/facts/recipe.js';
import { batchesFrom } from '../../../src/core/limit.js';
import { pansFor } from '../../../src/core/pans.js';
import { Rational } from '../../../src/core/quantity/rational.js';
import { scaleTo } from '../../../src/core/scale-to.js';
import { scale } from '../../../src/core/scaling.js';
import { batchesForTin, filled, tinsFor } from '../../../src/core/tins.js';
import { anyTin } from '../../arbitraries/tin.js';
import { dish, factsOf, food } from '../small.js';

const part = fc.tuple(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: 1, max: 12 }));
const amount = part.map(([n, d]) => Rational.of(n, d).toString());
const r = Rational.parse;

/** Plums in a pie of its own and in a compote below it, each line scaling in a way of its own. */
const kitchenWith = (own: string, below: string, ownWay: string, wayBelow: string, compote: string) => {
  const docs = [
    dish('pie', '7 portions, 3 kg', [`${own} g plum ${ownWay}`, `${compote} g @compote`]),
    dish('compote', '2 kg', [`${below} g plum bought ${wayBelow}`]),
    food('plum', { edibleYield: { yield: '0.8' }, weights: [{ unit: 'each', grams: '45' }] }),
  ];
  return factsOf(docs);
};

const taken = (facts: ReturnType<typeof factsOf>, factor: Rational): Rational =>
  scale(facts.recipes.get('pie')!, factor, facts)
    .value.flatMap(({ lines }) => lines)
    .reduce(
      (sum, { ingredient, bought }) => (ingredient && bought ? sum.plus(bought.value) : sum),
      Rational.zero,
    );

const way = fc.constantFrom(...scalings.filter((one) => one !== 'taste'));

test('scaled to what is at hand, the recipe takes just that: all of it, or as much as goes in whole', () => {
  fc.assert(
    fc.property(amount, amount, way, way, amount, amount, (own, below, ownWay, wayBelow, compote, have) => {
      const facts = kitchenWith(own, below, ownWay, wayBelow, compote);
      const asked = { have: { amount: have, unit: 'g' }, of: 'plum', as: 'bought' as const };
      const factor = batchesFrom(facts.recipes.get('pie')!, asked, facts);
      const stepped = [ownWay, wayBelow].some((one) => one === 'pieces' || one === 'batch');
      expect(factor instanceof Rational ? 'said' : factor.code).toBe(stepped ? 'not-a-limit' : 'said');
      if (!(factor instanceof Rational)) return;
      expect(taken(facts, factor).toString()).toBe(r(have).toString());
    }),
  );
});

test('by whole ones, as many batches as there is for and no more', () => {
  fc.assert(
    fc.property(amount, fc.constantFrom('pieces', 'batch'), amount, (base, scales, have) => {
      const pie = dish('pie', '7 portions', [`${base} each plum ${scales}`]);
      const facts = factsOf([pie, food('plum')]);
      const asked = { have: { amount: have, unit: 'each' }, of: 'plum', as: 'bought' as const };
      const factor = batchesFrom(pie, asked, facts);
      if (!(factor instanceof Rational)) {
        const least = scales === 'batch' ? r(base) : Rational.one;
        expect(r(have).compare(least)).toBe(-1);
        return;
      }
      const more = factor.times(r('1.000001'));
      expect(taken(facts, factor).compare(r(have))).toBeLessThanOrEqual(0);
      expect(taken(facts, more).compare(r(have))).toBe(1);
    }),
  );
});

test('scaled to a weight, or to portions of a size, it makes that', () => {
  const facts = kitchenWith('100', '100', 'straight', 'straight', '100');
  const pie = facts.recipes.get('pie')!;
  fc.assert(
    fc.property(amount, amount, (total, each) => {
      const asked = { total: { amount: total, unit: 'g' }, portion: { amount: each, unit: 'g' } };
      const { factor, portions } = scaleTo(pie, asked, facts).value;
      expect(factor!.times(r('3000')).toString()).toBe(total);
      const back = scaleTo(pie, { portions: portions!, portion: asked.portion }, facts).value;
      expect(back.factor!.toString()).toBe(factor!.toString());
    }),
  );
});

test('whole batches are the fewest that do, and what is left over is less than one', () => {
  const facts = kitchenWith('100', '100', 'straight', 'straight', '100');
  fc.assert(
    fc.property(amount, (portions) => {
      const asked = { portions: r(portions), wholeBatches: true };
      const { factor, left } = scaleTo(facts.recipes.get('pie')!, asked, facts).value;
      expect([factor!.isWhole, left.sign >= 0, left.compare(Rational.one)]).toEqual([true, true, -1]);
      expect(factor!.minus(left).times(Rational.of(7)).toString()).toBe(portions);
    }),
  );
});

test('from one tin to another and back is once; by tin it stands as deep as in its own', () => {
  fc.assert(
    fc.property(anyTin, anyTin, (own, other) => {
      const factor = batchesForTin(own, other);
      expect(factor.times(batchesForTin(other, own)).toString()).toBe('1');
      expect(filled(own, factor, other).deeper.toString()).toBe('1');
    }),
  );
});

test('whole tins hold what is made, the last of them more than nothing', () => {
  fc.assert(
    fc.property(anyTin, amount, (own, batches) => {
      const { whole, last } = tinsFor(own, r(batches));
      const held = Rational.of(whole).minus(Rational.one).plus(last);
      expect(held.toString()).toBe(r(batches).times(Rational.of(own.count)).toString());
      expect([last.sign, last.compare(Rational.one) <= 0]).toEqual([1, true]);
    }),
  );
});

const anyPans = fc.uniqueArray(fc.record({ litres: amount, count: fc.integer({ min: 1, max: 4 }) }), {
  minLength: 1,
  maxLength: 4,
  selector: ({ litres }) => litres,
});

test('the pans named hold it, and one fewer of the biggest would not', () => {
  fc.assert(
    fc.property(amount, anyPans, (litres, list) => {
      const pans = list.map((one, at) => ({ key: `p${at}`, name: `p${at}`, ...one }));
      const step = { pan: litres } as Parameters<typeof pansFor>[0];
      const found = pansFor(step, Rational.one, { pans } as unknown as Parameters<typeof pansFor>[2])!;
      const each = found.pans.flatMap(({ pan, count }) => Array.from({ length: count }, () => r(pan.litres)));
      const holds = each.reduce((sum, one) => sum.plus(one), Rational.zero);
      expect(holds.times(Rational.of(found.goes)).compare(r(litres))).toBeGreaterThanOrEqual(0);
      const biggest = list
        .flatMap((one) => Array.from({ length: one.count }, () => r(one.litres)))
        .sort((a, b) => b.compare(a));
      const fewer = biggest.slice(0, each.length - 1).reduce((sum, one) => sum.plus(one), Rational.zero);
      if (found.goes === 1n) expect(fewer.compare(r(litres))).toBe(-1);
    }),
  );
});
