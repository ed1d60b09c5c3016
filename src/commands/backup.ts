import { backUp } from '../store/workbook.js';
import { run } from './run.js';

await run(async ({ db }, { dataDir }) => {
  const file = await backUp(db, dataDir, new Date());
  return file ? `The kitchen is kept in ${file}` : 'There is no kitchen yet, so there is nothing to keep.';
});
