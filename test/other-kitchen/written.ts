import type { z } from 'zod';
import type { workbook } from '../../src/core/facts/facts.js';

/** A workbook as written down, before defaults are filled in. */
export type Written = z.input<typeof workbook>;
export type Recipe = Written['recipes'][number];
