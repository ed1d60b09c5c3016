import { readFileSync } from 'node:fs';
import { parseWorkbook } from '../core/exchange/workbook.js';
import type { Workbook } from '../core/facts/facts.js';
import { Refusal } from '../store/refusal.js';
import { importWorkbook } from '../store/workbook.js';
import { run, who } from './run.js';

const readWorkbook = (file: string): Workbook => {
  const parsed = parseWorkbook(readText(file));
  if ('workbook' in parsed) return parsed.workbook;
  const shown = parsed.faults.slice(0, 50).map(({ place, sentence }) => `${place}: ${sentence}`);
  const more = parsed.faults.length > 50 ? [`and ${parsed.faults.length - 50} more`] : [];
  throw new Refusal([`${file} was not restored and nothing was changed:`, ...shown, ...more].join('\n'));
};

const readText = (file: string): string => {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new Refusal(`${file} cannot be read (${(error as NodeJS.ErrnoException).code}).`);
  }
};

await run(async ({ db }, { dataDir }) => {
  const file = process.argv[2];
  if (file === undefined) throw new Refusal('Name the workbook file: npm run restore -- FILE');
  const workbook = readWorkbook(file);
  const backup = await importWorkbook(db, workbook, { who, at: new Date(), dataDir });
  const { kitchen, recipes, events } = workbook;
  const kept = backup ? ` What was there before is kept in ${backup}` : '';
  return `${kitchen.name} is restored: ${recipes.length} recipes, ${events.length} events.${kept}`;
});
