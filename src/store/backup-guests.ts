import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { parseWorkbook } from '../core/exchange/workbook.js';
import type { PrintedSheet } from '../core/facts/printed-sheet.js';
import { type AnyEvent, type AnyGuest, type Forgetting, forgetInEvent } from '../core/forget.js';
import { forgetInPrint } from '../core/printed.js';
import { backupFiles, putWhole } from './backups.js';

type FileEvent = AnyEvent & { key: string };
type Content = { events: FileEvent[]; printedSheets?: PrintedSheet[] };

/** What the backups hold of an event's guests, file by file; `guests` is undefined for one that cannot be read. */
export type BackupGuests = { name: string; guests: AnyGuest[] | undefined };

export const guestsInBackups = (dataDir: string, event: string): BackupGuests[] =>
  backupFiles(dataDir).map((file) => {
    const content = contentOf(readFileSync(file, 'utf8'));
    return { name: basename(file), guests: content && guestsOf(content, event) };
  });

const contentOf = (text: string): Content | undefined => {
  try {
    const value = JSON.parse(text);
    return Array.isArray(value?.events) ? value : undefined;
  } catch {
    return undefined;
  }
};

const guestsOf = ({ events }: Content, event: string): AnyGuest[] =>
  events.filter(({ key }) => key === event).flatMap(({ guests }) => guests ?? []);

/**
 * Rewrites every backup that holds one of the guests without what they said, and returns how many files that were. A
 * file that could be restored before can be restored after, and holds everything else as it did.
 */
export const forgetInBackups = (dataDir: string, event: string, forgetting: Forgetting): number => {
  let rewritten = 0;
  for (const file of backupFiles(dataDir)) {
    const before = readFileSync(file, 'utf8');
    const content = contentOf(before);
    if (!content || !tellsOf(content, event, forgetting)) continue;
    const events = content.events.map((one) => (one.key === event ? forgetInEvent(one, forgetting) : one));
    const printedSheets = content.printedSheets?.map((one) =>
      one.event === event ? forgetInPrint(one) : one,
    );
    const text = `${JSON.stringify({ ...content, events, printedSheets }, null, 2)}\n`;
    putWhole(file, text, (back) => restores(back) || !restores(before));
    rewritten += 1;
  }
  return rewritten;
};

const tellsOf = (content: Content, event: string, { keys }: Forgetting): boolean =>
  guestsOf(content, event).some(({ key }) => keys.has(key)) ||
  (content.printedSheets ?? []).some(
    (print) => print.event === event && print.lines.some(({ of }) => of === 'guest'),
  );

const restores = (text: string): boolean => 'workbook' in parseWorkbook(text);
