import { expect, test } from 'vitest';
import { exampleKitchen } from '../world.js';
import { compact } from './by-hand/compact.js';
import { workedByHand } from './by-hand.js';

// shared/example/answers.json is what the formulas of by-hand.ts give for the example as it stands. When the example
// changes on purpose, `npx vitest run test/example -u` writes the new answers; check the worked figures of its README.
test('the answers beside the example are those of the example', async () => {
  const answers = workedByHand(exampleKitchen());
  await expect(compact(answers)).toMatchFileSnapshot('../../shared/example/answers.json');
});
