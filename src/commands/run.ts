import { type Config, readConfig } from '../config.js';
import { type Database, openDatabase } from '../store/database.js';
import { Refusal } from '../store/refusal.js';

/** Who the history says it was. */
export const who = 'a command on this machine';

/** Runs one command on the kitchen's database and prints what it says; a refusal is one sentence and exit code 1. */
export const run = async (
  command: (database: Database, config: Config) => Promise<string>,
): Promise<void> => {
  try {
    const config = readConfig(process.env);
    const database = await openDatabase(config);
    try {
      console.log(await command(database, config));
    } finally {
      await database.close();
    }
  } catch (error) {
    console.error(error instanceof Refusal ? error.message : error);
    process.exitCode = 1;
  }
};
