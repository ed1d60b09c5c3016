import { openDatabase } from '../../src/store/database.js';
import { importWorkbook } from '../../src/store/workbook.js';
import { now } from './kitchen/days.js';
import { kitchenOf, sizes } from './kitchen/kitchen.js';

// Run by itself with DATA_DIR, perhaps DATABASE_URL, and EVENTS: puts the kitchen into that database and ends.
const { DATA_DIR = '', DATABASE_URL, EVENTS } = process.env;
const database = await openDatabase({ dataDir: DATA_DIR, databaseUrl: DATABASE_URL });
await importWorkbook(database.db, kitchenOf({ ...sizes, events: Number(EVENTS) }), {
  dataDir: DATA_DIR,
  who: 'bench',
  at: now,
});
await database.close();
