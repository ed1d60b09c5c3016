import { ingredient } from '../../src/core/facts/ingredient.js';
import { create } from '../../src/store/changes.js';
import { openDatabase } from '../../src/store/database.js';

// Adds one ingredient after the other and says each key once its save is acknowledged, until it is killed.
const { db } = await openDatabase({ dataDir: process.argv[2] ?? '' });
const round = process.argv[3] ?? '';
for (let n = 0; ; n += 1) {
  const key = `r${round}-n${n}`;
  const saved = await create(db, 'ingredient', ingredient.parse({ key, name: key }), {
    who: 'writer',
    at: new Date(),
  });
  if (saved.outcome !== 'saved') throw new Error(JSON.stringify(saved));
  process.stdout.write(`${key}\n`);
}
