import { factsOf, ingredientsMark } from './marks.js';

const rule = /^\s*(?:[-=*_~]\s?){3,}$/;

/** A text cut where one recipe ends and another begins: at a ruled line, or before a second list of ingredients. */
export const severalIn = (text: string): string[] => {
  const lines = text.split('\n');
  const starts = new Set<number>();
  let lists = 0;
  lines.forEach((line, at) => {
    if (line.length < 200 && rule.test(line)) {
      starts.add(at);
      lists = 0;
    } else if (ingredientsMark.test(line.trim()) && ++lists > 1) {
      const title = titleAbove(lines, at);
      if (title !== undefined) starts.add(title);
    }
  });
  const cuts = [0, ...[...starts].toSorted((a, b) => a - b), lines.length];
  return cuts
    .slice(1)
    .map((end, at) =>
      lines
        .slice(cuts[at], end)
        .filter((line) => !(line.length < 200 && rule.test(line)))
        .join('\n'),
    )
    .filter((part) => part.trim() !== '');
};

/** The first line of the few that stand, behind a blank one, over a list of ingredients. */
const titleAbove = (lines: readonly string[], at: number): number | undefined => {
  let start = at - 1;
  while (start > 0 && lines[start]!.trim() === '') start--;
  for (let above = start; above > Math.max(0, at - 12); above--) {
    const isFirst = lines[above - 1]!.trim() === '';
    const line = lines[above]!.trim();
    if (isFirst && line !== '' && line.length < 80 && !line.endsWith('.') && !factsOf(line)) return above;
  }
  return undefined;
};
