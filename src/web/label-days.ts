import type { Format } from './format.js';

/** "Labels read from Mon 2 Nov 2026 to Wed 4 Nov 2026."; nothing where none was read. */
export const labelWords = (labels: { first: string; last: string } | undefined, f: Format): string => {
  if (!labels) return '';
  return labels.first === labels.last
    ? `Labels read ${f.dateYear(labels.first)}.`
    : `Labels read from ${f.dateYear(labels.first)} to ${f.dateYear(labels.last)}.`;
};
