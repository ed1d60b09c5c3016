import { PGlite } from '@electric-sql/pglite';
import { pg_trgm } from '@electric-sql/pglite/contrib/pg_trgm';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { foods, namesOf } from '../../src/core/foods.js';
import { similarity, trigrams } from '../../src/core/trigrams.js';

// PostgreSQL manual, appendix F, pg_trgm, "Trigram (or Trigraph) Concepts": the trigrams of "cat" and of "foo|bar".
test('a word has two blanks before it and one after', () => {
  expect([...trigrams('cat')]).toEqual(['  c', ' ca', 'cat', 'at ']);
  expect([...trigrams('foo|bar')]).toEqual(['  f', ' fo', 'foo', 'oo ', '  b', ' ba', 'bar', 'ar ']);
});

// The same, "Functions and Operators": similarity('word', 'words') is 0.571429; and similarity('word', 'two words'),
// 4 shared of 11 in all, is 0.36.
test('the likeness is what is shared of all there is', () => {
  expect(similarity('word', 'words')).toBeCloseTo(0.571429, 6);
  expect(similarity('word', 'two words')).toBeCloseTo(4 / 11, 9);
  expect(similarity('', '')).toBe(0);
  expect(similarity('Word', 'wORD')).toBe(1);
});

let database: PGlite;
beforeAll(async () => {
  database = new PGlite({ extensions: { pg_trgm } });
  await database.exec('create extension pg_trgm');
});
afterAll(() => database.close());

test('PostgreSQL itself finds every name of the reference as like to what is typed as we do', async () => {
  const names = foods.flatMap(namesOf).filter((name) => /^[\x20-\x7e]+$/.test(name));
  for (const typed of ['plain flower', 'courgettes', 'spring onion', 'zuchini', "confectioner's sug"]) {
    const { rows } = await database.query<{ name: string; alike: number }>(
      'select name, similarity(name, $1) as alike from unnest($2::text[]) as name',
      [typed, names],
    );
    expect(rows).toHaveLength(names.length);
    for (const { name, alike } of rows) expect(similarity(name, typed), name).toBeCloseTo(alike, 5);
  }
});
