import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const upTo = (folder: string): string =>
  existsSync(join(folder, 'package.json')) ? folder : upTo(dirname(folder));

/** The folder of the workbook's package.json, from the sources and from the compiled files alike. */
export const root = upTo(dirname(fileURLToPath(import.meta.url)));
