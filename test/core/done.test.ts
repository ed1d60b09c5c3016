import { describe, expect, test } from 'vitest';
import { doneOf, jobsDone, ticksOf } from '../../src/core/done.js';
import type { Event } from '../../src/core/facts/event.js';
import type { Tick } from '../../src/core/facts/prep-period.js';
import { prepFor } from '../../src/core/prep.js';
import { moreOf, newPeriod, periodOn } from '../../src/core/prep-period.js';
import { jobsOf, prepListSheet } from '../../src/core/sheets/prep-list.js';
import { dish, factsOf, food, party, steps } from './small.js';

const facts = factsOf([dish('stew', '10 portions, 5 kg', ['1 kg leek'], steps({})), food('leek')]);
const one = (adults: number) => party(adults, ['stew']);
const two = (adults: number): Event => ({ ...one(adults), key: 'other', name: 'Other' });

const ticked = (event: string, batches: string | null, more: Partial<Tick> = {}): Tick => ({
  date: '2026-11-28',
  recipe: 'stew',
  step: 's0',
  event,
  batches,
  who: 'Ines',
  at: '2026-11-28T09:00:00Z',
  ...more,
});
const said = (events: Event[], ...ticks: Tick[]) => {
  const [job] = jobsOf(prepFor(events, facts).value);
  const { state, made, left } = doneOf(job!, ticksOf([{ ticks }]));
  return [state, made?.value.toString() ?? '', left?.value.toString() ?? ''];
};

// A batch is ten portions and 5 kg: twenty guests take two batches, 10 kg.
describe('a job is done by the amount that was ticked, not by the tick', () => {
  test('as much as it takes is done, and nothing ticked is open', () => {
    expect(said([one(20)])).toEqual(['open', '', '']);
    expect(said([one(20)], ticked('party', '2'))).toEqual(['done', '10000', '']);
    expect(said([one(20)], ticked('party', '2', { step: null }))).toEqual(['open', '', '']);
    expect(said([one(20)], ticked('party', '2', { date: '2026-11-27' }))).toEqual(['open', '', '']);
  });

  test('four more guests: 10 of 12 kg are made and 2 are still to make; four fewer: it stays done', () => {
    expect(said([one(24)], ticked('party', '2'))).toEqual(['part', '10000', '2000']);
    expect(said([one(16)], ticked('party', '2'))).toEqual(['done', '10000', '']);
  });

  test('what is made for one event is not made for another that joins it', () => {
    expect(said([one(20), two(10)], ticked('party', '2'))).toEqual(['part', '10000', '5000']);
    expect(said([one(20), two(10)], ticked('party', '2'), ticked('other', '1'))).toEqual([
      'done',
      '15000',
      '',
    ]);
    expect(said([one(20)], ticked('other', '9'))).toEqual(['open', '', '']);
  });

  test('an amount not known when it was ticked counts as nothing once it is known', () => {
    expect(said([one(20)], ticked('party', null))).toEqual(['part', '', '10000']);
  });

  test('a sheet says it in exact figures, and the day counts it', () => {
    const { value: days } = prepFor([one(24)], facts);
    const some = ticksOf([{ ticks: [ticked('party', '2')] }]);
    const value = { events: [one(24)], days, facts, ticks: some };
    const [row] = prepListSheet({ value, problems: [] }).tables[0]!.rows;
    expect(row).toMatchObject({ done: 'in part', made: '10000', left: '2000', unit: 'g' });
    expect(jobsDone(days, some)).toBe(0);
    expect(jobsDone(days, ticksOf([{ ticks: [ticked('party', '12/5')] }]))).toBe(1);
  });
});

describe('a period', () => {
  test('is the week of the day it begins with, less the days that others have', () => {
    expect(newPeriod('2026-12-02', [])).toEqual({
      key: 'from-2026-11-30',
      from: '2026-11-30',
      to: '2026-12-06',
    });
    const others = [
      { key: 'a', from: '2026-11-20', to: '2026-11-30' },
      { key: 'from-2026-12-01', from: '2026-12-05', to: '2026-12-08' },
    ];
    const made = newPeriod('2026-12-02', others);
    expect(made).toEqual({ key: 'from-2026-12-01-again', from: '2026-12-01', to: '2026-12-04' });
    expect(periodOn('2026-12-04', [...others, made])).toEqual(made);
    expect(periodOn('2026-12-09', others)).toBeUndefined();
  });

  test('of two amounts of one job the greater counts, and any figure is more than none', () => {
    expect(moreOf('1/3', '0.33')).toBe('1/3');
    expect(moreOf('2', '5/2')).toBe('5/2');
    expect([moreOf(null, '0'), moreOf('0', null), moreOf(null, null)]).toEqual(['0', '0', null]);
  });
});
