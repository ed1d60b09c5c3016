import { describe, expect, test } from 'vitest';
import { newKitchen } from '../../src/web/first-run/new-kitchen.js';
import { formatFor } from '../../src/web/format.js';

const pounds = formatFor({ ...newKitchen, locale: 'en-GB', currency: 'GBP' });

describe('money leaves in whole minor units, never rounded', () => {
  test.each([
    ['en-GB', 'GBP', 119_600, '£1,196.00'],
    ['en-GB', 'GBP', -5, '−£0.05'],
    ['en-GB', 'HUF', 119_605, 'HUF 1,196.05'],
    ['ja-JP', 'JPY', 340, '￥340'],
    ['en-GB', 'KWD', 1_234_567, 'KWD 1,234.567'],
    ['en-US', 'USD', 1_000_000_000_000, '$10,000,000,000.00'],
  ])('%s %s %d', (locale, currency, minor, shown) => {
    expect(
      formatFor({ ...newKitchen, locale, currency })
        .money(minor)
        .replaceAll('\u00a0', ' '),
    ).toBe(shown);
  });

  test('and as one types it', () => {
    expect(pounds.plainMoney(340)).toBe('3.40');
    expect(formatFor({ ...newKitchen, currency: 'JPY' }).plainMoney(340)).toBe('340');
  });
});

test('days, times and counts in the kitchen’s own way', () => {
  expect(pounds.date('2026-10-17')).toBe('Sat 17 Oct');
  expect(pounds.dateYear('2026-10-17')).toBe('Sat 17 Oct 2026');
  expect(pounds.weekday('2026-10-17')).toBe('Saturday');
  expect([0, 50, 60, 80, 1500].map((minutes) => pounds.duration(minutes))).toEqual([
    '0 min',
    '50 min',
    '1 h',
    '1 h 20 min',
    '25 h',
  ]);
  expect([pounds.count(1, 'guest'), pounds.count(1200, 'guest'), pounds.count(2, 'box', 'boxes')]).toEqual([
    '1 guest',
    '1,200 guests',
    '2 boxes',
  ]);
  expect([pounds.inWords(3), pounds.inWords(13)]).toEqual(['Three', '13']);
  expect(pounds.percent('29.65')).toBe('29.7%');
  expect(pounds.percent('-1/3')).toBe('−0.3%');
});

test('only the fraction of a measure is set as one', () => {
  expect(pounds.measure({ figure: '2', fraction: '1/2', unit: 'tsp' }).markup).toBe(
    '<span class="qty"><b>2 <span class="fr">1/2</span></b><span class="unit">tsp</span></span>',
  );
  expect(pounds.measure({ figure: '2.15', unit: 'kg' }).markup).toBe(
    '<span class="qty"><b>2.15</b><span class="unit">kg</span></span>',
  );
  expect(pounds.measure({ figure: '3', unit: 'each' }).markup).toBe('<span class="qty"><b>3</b></span>');
  expect(pounds.measure({ figure: '3', unit: 'clove' }).markup).toContain('>cloves<');
});
