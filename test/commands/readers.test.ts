import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';

/** The commands as they are compiled, fed from standard input. */
const run = (command: string, input: string) => {
  const begun = performance.now();
  const { stdout, stderr, status } = spawnSync('node', [`dist/src/commands/${command}.js`], {
    input,
    encoding: 'utf8',
    maxBuffer: 100_000_000,
  });
  return { stdout, stderr, status, seconds: (performance.now() - begun) / 1000 };
};

test('read-lines prints one answer for each line', () => {
  const { stdout, status } = run(
    'read-lines',
    '2 x 400 g tins chopped tomatoes\n\njuice of 1 lemon\ntwo dozen eggs',
  );
  const [tins, blank, lemon, eggs] = stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(status).toBe(0);
  expect(tins).toMatchObject({
    quantity: '2',
    quantityTo: null,
    unit: 'tin',
    food: 'chopped tomatoes',
    pack: { amount: '400', unit: 'g' },
    sure: true,
  });
  expect(blank).toMatchObject({ kind: 'empty', quantity: null });
  expect(lemon).toMatchObject({ quantity: '1', unit: 'each', food: 'lemon', note: 'juice' });
  expect(eggs).toMatchObject({ quantity: '24', unit: 'each', food: 'eggs' });
});

test('read-recipe prints the drafts it found', () => {
  const { stdout, status } = run(
    'read-recipe',
    'Tart\nServes 6\nIngredients\n3 eggs\nMethod\nBake at 180C for 35 minutes.',
  );
  expect(status).toBe(0);
  expect(JSON.parse(stdout)).toMatchObject([
    { name: 'Tart', source: 'text', yield: { portions: '6' }, steps: [{ minutes: 35, oven: { heat: 180 } }] },
  ]);
});

test.each([
  ['read-lines', '2 eggs\n'.repeat(1_500_000)],
  ['read-recipe', '2 eggs\n'.repeat(1_500_000)],
  ['read-recipe', 'Hello'],
])('%s refuses what is too much or no recipe, in a sentence', (command, input) => {
  const { stdout, stderr, status, seconds } = run(command, input);
  console.log(`${command}, ${(input.length / 1e6).toFixed(1)} MB: refused in ${seconds.toFixed(2)} s`);
  expect([stdout, status]).toEqual(['', 1]);
  expect(stderr.trim()).toMatch(/^[A-Z][^\n]+\.$/);
});
