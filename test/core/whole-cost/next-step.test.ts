import { expect, test } from 'vitest';
import type { Event } from '../../../src/core/facts/event.js';
import type { Facts } from '../../../src/core/facts/facts.js';
import { headCount } from '../../../src/core/requirements.js';
import { wholeCost } from '../../../src/core/whole-cost/cost-of-party.js';
import { curveOf } from '../../../src/core/whole-cost/curve.js';
import { withHeadCount } from '../../../src/core/whole-cost/head-count.js';
import { nextStep as stepAt } from '../../../src/core/whole-cost/next-step.js';
import { jumpName, jumpWords, nth } from '../../../src/core/whole-cost/step-words.js';
import type { CostView } from '../../../src/core/whole-cost/whole-cost.js';
import { dish, factsOf, food, pack, party, steps } from '../small.js';

// A side of salmon at 28.00 feeds 15; a sauce of 50 g butter each is 12p. One server for every 20 guests, 60.00 each.
const kitchen = factsOf([
  dish('salmon', '15 portions', ['1 side fish'], steps({ minutes: 30 })),
  dish('sauce', '10 portions', ['500 g butter'], steps({ minutes: 20 })),
  food('fish', { ...pack('1 side at 2800'), weights: [{ unit: 'side', grams: '1500' }] }),
  food('butter', pack('250 g at 60')),
]);
const line = (key: string, name: string, by: object) => ({ key, name, kind: 'hands', by });
const serving = line('serving', 'Serving', { rate: 1500, hours: '4', guestsEach: 20 });
const buffet = (guests: number, costs: object[] = [serving]) => party(guests, ['salmon', 'sauce'], { costs });

const nextStep = (event: Event, facts: Facts, view: CostView) =>
  stepAt(curveOf(event, facts, view, { from: 1, to: 70 }).points, headCount(event));

// At 46: four sides; 2.3 kg butter, ten packs. At 45 three sides, 2.25 kg, nine packs: 28.00 + 0.60 less. The 47th takes
// nothing new: 2.35 kg are ten packs. Nearby the 41st brings the third server, 60.00, and the ninth pack, 0.60.
test('one guest fewer saves the fourth side; nearby the third server costs the most', () => {
  const { fewer, more, most } = nextStep(buffet(46), kitchen, 'bought');
  expect([fewer!.more, fewer!.complete]).toEqual([2860, true]);
  expect(fewer!.jumps.map(({ words }) => words)).toEqual([
    'Fish: at 45 guests three sides are enough; the 46th guest needs a fourth.',
    'Butter: at 45 guests nine packs are enough; the 46th guest needs a tenth.',
  ]);
  expect([more!.guests, more!.more, more!.jumps]).toEqual([47, 0, []]);
  expect([most!.guests, most!.more]).toEqual([41, 6060]);
  expect(most!.jumps[0]!.words).toBe(
    'Serving: at 40 guests two people are enough; the 41st guest needs a third.',
  );
  expect(most!.jumps.map(jumpName)).toEqual(['third person, Serving', 'ninth pack, Butter']);
});

// Sixteen come to another party: two sides there, 31 / 15 over both. Of this one's 29 each takes a fifteenth: together
// three sides are enough for 45 of both, and the 30th here needs the fourth.
test('packs bought together are counted over all the events', () => {
  const other = party(16, ['salmon'], { key: 'other' });
  const { points } = curveOf(buffet(29), kitchen, 'bought', { from: 20, to: 40 }, [other]);
  const { more } = stepAt(points, 29);
  expect(more!.jumps.map(({ words }) => words)).toEqual([
    'Fish, bought together: at 29 guests three sides are enough; the 30th guest needs a fourth.',
  ]);
});

test('as used nothing steps but people: a guest is a fifteenth of a side and 12p of butter', () => {
  const { fewer, most } = nextStep(buffet(46), kitchen, 'used');
  expect([fewer!.more, fewer!.jumps]).toEqual([199, []]);
  expect(most!.guests).toBe(41);
  expect(nextStep(buffet(46, []), kitchen, 'used').most).toBeUndefined();
});

test('what it says is what the totals differ by, as far as the curve reaches', () => {
  for (const guests of [1, 2, 15, 46, 69, 70]) {
    const event = buffet(guests);
    const { fewer, more } = nextStep(event, kitchen, 'bought');
    const total = (count: number) => wholeCost(withHeadCount(event, count), kitchen, 'bought').total;
    expect(fewer?.more).toBe(guests === 1 ? undefined : total(guests) - total(guests - 1));
    expect(more?.more).toBe(guests === 70 ? undefined : total(guests + 1) - total(guests));
  }
  const unpriced = factsOf([dish('salmon', '15 portions', ['1 side fish']), food('fish')]);
  expect(nextStep(party(46, ['salmon']), unpriced, 'used').fewer!.complete).toBe(false);
});

// 30 guests are two batches of salmon and three of sauce; the 31st begins a third and a fourth: 30 + 20 minutes more.
test('hours of cooking say which batches are begun; hired lots, and several packs at once, in words', () => {
  const cooking = line('cooking', 'Cooking', { rate: 1200, hours: 'cooking' });
  const glasses = line('glasses', 'Glasses', { step: 700, holds: 30 });
  const { more } = nextStep(buffet(30, [cooking, glasses]), kitchen, 'used');
  expect(more!.jumps.map(({ words }) => words)).toEqual([
    'Cooking: the 31st guest begins a third batch of Salmon and a fourth batch of Sauce, 50 minutes more.',
    'Glasses: at 30 guests one lot is enough; the 31st guest needs a second.',
  ]);
  const rings = line('rings', 'Hob', { rate: 30, hours: 'rings' });
  // No ring is taken: nothing of the hob steps.
  expect(nextStep(buffet(30, [rings]), kitchen, 'used').more!.jumps).toEqual([]);
  const ingredient = kitchen.ingredients.get('butter')!;
  const packs = (from: number, to: number) =>
    jumpWords({ what: { of: 'packs', ingredient, shared: false }, from, to, more: more!.jumps[0]!.more }, 12);
  expect(packs(11, 13)).toBe('Butter: at 11 guests 11 packs are enough; the 12th guest needs two more.');
  expect(packs(10, 11)).toBe('Butter: at 11 guests ten packs are enough; the 12th guest needs an 11th.');
  expect(packs(7, 8)).toBe('Butter: at 11 guests seven packs are enough; the 12th guest needs an eighth.');
  expect(packs(0, 1)).toBe('Butter: the 12th guest needs a first pack.');
  expect(packs(0, 2)).toBe('Butter: the 12th guest needs two packs.');
  expect([1, 2, 3, 4, 11, 12, 13, 21, 111, 122].map(nth).join(' ')).toBe(
    '1st 2nd 3rd 4th 11th 12th 13th 21st 111th 122nd',
  );
});
