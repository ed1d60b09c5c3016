import { describe, expect, it } from 'vitest';
import { place } from '../../src/core/facts/place.js';
import { handledWith, handledWords, workDays } from '../../src/core/handled-with.js';
import { dish, factsOf, food, home, labelled, party, steps } from './small.js';

/**
 * Chips and battered cod go through one fryer. Chips contain nothing on the list; the cod contains fish, and wheat by
 * its batter, which is fried with it. So the chips are handled with fish and gluten, and stay free of them as stated.
 */
const fry = (more: object = {}) => steps({ words: 'Fry.', equipment: ['Fryer'], ...more });
const foods = [
  food('potato', labelled()),
  food('cod', labelled({ contains: ['fish'] })),
  food('flour', labelled({ contains: ['wheat'] })),
  food('sauce', {}),
];
const chips = dish('chips', '10 portions', ['1 kg potato'], fry());
const batter = dish('batter', '1 kg', ['500 g flour']);
const cod = dish('battered-cod', '10 portions', ['1 kg cod', '500 g @batter'], fry());
const salad = dish('salad', '10 portions', ['1 kg potato'], steps({ words: 'Cut.', equipment: ['board'] }));
const facts = factsOf([...foods, chips, batter, cod, salad]);
const words = (event: ReturnType<typeof party>, events = [event], given = facts) =>
  handledWith(event, events, given).flatMap(handledWords);

describe('what a dish is handled with', () => {
  it('says each dish that shares a fryer, and what that dish contains', () => {
    expect(words(party(10, ['chips', 'battered-cod', 'salad']))).toEqual([
      'Chips: handled with gluten and fish (shared Fryer with Battered cod)',
      'Battered cod: handled with nothing that is on the list (shared Fryer with Chips)',
    ]);
  });

  it('says it once, however much equipment is shared, and with what', () => {
    const busy = (...equipment: string[]) => steps({ words: 'Do it.', equipment });
    const plate = dish('plate', '10 portions', ['1 kg potato'], busy('Fryer', 'Tongs', 'Board'));
    const fish = dish('fish', '10 portions', ['1 kg cod'], busy('fryer', 'tongs'));
    const bread = dish('bread', '10 portions', ['1 kg flour'], busy('board'));
    const here = factsOf([...foods, plate, fish, bread]);
    expect(words(party(10, ['plate', 'fish', 'bread']), [], here)[0]).toBe(
      'Plate: handled with fish and gluten (shared Fryer and Tongs with Fish; shared Board with Bread)',
    );
    expect(words(party(10, ['plate', 'fish', 'bread']), [], here)).toHaveLength(3);
  });

  it('says nothing where nothing is shared', () => {
    expect(words(party(10, ['chips', 'salad']))).toEqual([]);
  });

  it('counts equipment of components, and leaves out the dish itself', () => {
    const fried = dish('fried-batter', '1 kg', ['500 g flour'], fry());
    const plate = dish('plate', '10 portions', ['1 kg potato', '1 kg @fried-batter'], fry());
    const here = factsOf([...foods, fried, plate, chips]);
    expect(words(party(10, ['plate']), [], here)).toEqual([]);
    expect(words(party(10, ['plate', 'chips']), [], here)[1]).toBe(
      'Chips: handled with gluten (shared Fryer with Plate)',
    );
  });

  it('never takes an unread dish for one with nothing in it', () => {
    const fritters = dish('fritters', '10 portions', ['1 kg sauce'], fry());
    const here = factsOf([...foods, chips, fritters]);
    expect(words(party(10, ['chips', 'fritters']), [], here)[0]).toBe(
      'Chips: handled with what is not known (shared Fryer with Fritters)',
    );
  });

  it('names a may contain apart from a contains', () => {
    const wary = dish('rings', '10 portions', ['1 kg onion'], fry());
    const here = factsOf([...foods, chips, wary, food('onion', labelled({ may: ['milk'] }))]);
    expect(words(party(10, ['chips', 'rings']), [], here)[0]).toBe(
      'Chips: handled with what may contain milk (shared Fryer with Rings)',
    );
  });

  it('looks at other live events of the day, in the same kitchen', () => {
    const own = party(10, ['chips']);
    const other = party(10, ['battered-cod'], { key: 'other', name: 'Other party' });
    expect(words(own, [own, other])).toEqual([
      'Chips: handled with gluten and fish (shared Fryer with Battered cod of Other party)',
    ]);
    expect(words(own, [own, { ...other, state: 'enquiry' }])).toEqual([]);
    expect(words(own, [own, { ...other, date: '2026-11-29' }])).toEqual([]);
  });

  it('keeps the venue’s fryer apart from the home kitchen’s', () => {
    const hall = place.parse({ key: 'hall', name: 'Hall', kind: 'venue' });
    const there = dish('battered-cod', '10 portions', ['1 kg cod'], fry({ where: 'venue' }));
    const here = factsOf([...foods, chips, there], {}, [home, hall]);
    const event = party(10, ['chips', 'battered-cod'], { place: 'hall' });
    expect(words(event, [event], here)).toEqual([]);
  });

  it('is worked on from the earliest step to the last service', () => {
    const early = dish('early', '10 portions', ['1 kg potato'], fry({ daysAhead: 2 }));
    const here = factsOf([...foods, early]);
    expect(workDays(party(10, ['early']), here)).toEqual({ from: '2026-11-26', to: '2026-11-28' });
  });
});
