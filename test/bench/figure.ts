/** One figure of the bench, for the page of figures and for the JSON file alike. */
export type Figure = {
  part: string;
  engine: string;
  /** What was measured, "event page", and which figure of it, "p50". */
  of: string;
  what: string;
  value: number;
  unit: 'ms' | 'times' | 'MB' | 'kB' | 'recipes';
  target?: Target & { met: boolean };
};

/** "under" a limit or "at most" a limit. */
export type Target = { rule: 'under' | 'at most'; limit: number };

export const meets = (value: number, target: Target): Target & { met: boolean } => ({
  ...target,
  met: target.rule === 'under' ? value < target.limit : value <= target.limit,
});

/** The figures in lines, those of one thing in one line, a target beside the figure it stands for. */
export const linesOf = (figures: readonly Figure[]): string[] => {
  const lines: string[] = [];
  let before: Figure | undefined;
  for (const figure of figures) {
    const { part, engine, of } = figure;
    if (part !== before?.part || engine !== before.engine) lines.push('', `${part}, ${engine}`);
    if (lines.at(-1) === '' || of !== before?.of || engine !== before.engine)
      lines.push(`  ${of.padEnd(28)}`);
    lines[lines.length - 1] += `  ${said(figure)}`;
    before = figure;
  }
  return lines;
};

const said = ({ what, value, unit, target }: Figure): string => {
  const places = unit === 'times' ? 2 : unit === 'ms' ? 1 : 0;
  const aim = target ? ` (${target.rule} ${target.limit}: ${target.met ? 'met' : 'MISSED'})` : '';
  return `${what} ${value.toFixed(places)}${unit === 'times' ? '' : ` ${unit}`}${aim}`;
};
