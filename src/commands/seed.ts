import { read } from '../store/documents.js';
import { kitchenKey } from '../store/entities/index.js';
import { openExample } from '../store/example.js';
import { Refusal } from '../store/refusal.js';
import { run, who } from './run.js';

await run(async ({ db }, { dataDir }) => {
  if (await read(db, 'kitchen', kitchenKey))
    throw new Refusal('There is a kitchen here already: set DATA_DIR to an empty folder for the example.');
  await openExample(db, { who, at: new Date(), dataDir });
  return 'The example kitchen is open.';
});
