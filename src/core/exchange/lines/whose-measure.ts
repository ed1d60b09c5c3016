import type { Cup } from '../../facts/kitchen.js';
import { needsCup } from '../../quantity/units.js';
import { joinedMeasureAt } from './bracket.js';
import type { LineReading } from './reading.js';
import type { Token } from './tokens.js';

const systems = new Map<string, Cup>([
  ['us', 'us'],
  ['american', 'us'],
  ['uk', 'imperial'],
  ['british', 'imperial'],
  ['english', 'imperial'],
  ['imperial', 'imperial'],
  ['metric', 'metric'],
  ['australian', 'australian'],
  ['aus', 'australian'],
  ['aussie', 'australian'],
]);

/** The word before a cup, spoon or pint that says whose it is: "US cup", "imperial pints"; undefined where none stands. */
export const whoseMeasure = (tokens: readonly Token[], at: number): string | undefined => {
  const word = tokens[at];
  const measure = word && systems.has(word.low) ? joinedMeasureAt(tokens, at + 1) : undefined;
  return measure && needsCup(measure.unit) ? word?.text : undefined;
};

/** The cups and spoons that the lines of a recipe say they mean; null where none says so, or not all the same. */
export const cupSaid = (lines: readonly LineReading[]): Cup | null => {
  const said = lines
    .filter(({ unit }) => unit !== null && needsCup(unit))
    .map(({ note, unit, quantity }) =>
      // "1 tablespoon (20 ml)" says it as plainly.
      unit === 'tbsp' && quantity === '1' && /\b20 ?ml\b/i.test(note)
        ? 'australian'
        : systems.get(note.split(',')[0]!.trim().toLowerCase()),
    );
  const [one, ...others] = new Set(said.filter((cup) => cup !== undefined));
  return one && others.length === 0 ? one : null;
};
