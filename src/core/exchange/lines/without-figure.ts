import { Rational } from '../../quantity/rational.js';
import { extentsEnd } from './count-unit.js';
import { type Head, noHead } from './head.js';
import { countAt, isContainer, isMeasuredUnit, isPlural, measureAt } from './measures.js';
import { isWord, type Line, type Token, wordsOf } from './tokens.js';
import { onesWithoutFigure, vague } from './words.js';

/** An amount in no figures: "some parsley", "a few sprigs of thyme". */
export const vagueOf = (line: Line): Head | undefined => {
  const { tokens } = line;
  const phrase = vague.find((words) => words.every((word, at) => isWord(tokens[at], word)));
  if (!phrase || (phrase[0] === 'extra' && isWord(tokens[1], ...extraKinds))) return undefined;
  const count = countAt(tokens, phrase.length);
  const unit = count && tokens[count.end] && isPlural(tokens[phrase.length]) ? count : undefined;
  const said = phrase.at(-1) === 'of' ? phrase.length - 1 : phrase.length;
  return head({
    unit: unit?.unit ?? null,
    notes: [wordsOf(line, tokens.slice(0, said))],
    end: afterOf(tokens, unit?.end ?? phrase.length),
  });
};

/** "Extra virgin" and the like are kinds, not more of something. */
const extraKinds =
  'virgin large lean mature thick firm fine dry hot light dark strong bitter special small long'.split(' ');

const clear = new Set(
  'pinch handful knob dash splash drizzle glug sprig bunch squeeze grating dollop smidgen twist grind sprinkle slosh lug shake trickle fistful dusting tin jar packet bag tub punnet'.split(
    ' ',
  ),
);

/** One of something, without saying so: "handful of rocket", "thumb-sized piece of ginger". */
export const oneOf = (line: Line): Head | undefined => {
  const { tokens } = line;
  if (isWord(tokens[0], 'dozen', 'doz') && tokens[1])
    return head({ quantity: Rational.of(12), unit: 'each', end: afterOf(tokens, 1) });
  const at = extentsEnd(tokens, 0);
  const unit = countAt(tokens, at) ?? measureAt(tokens, at);
  const next = unit && tokens[unit.end];
  if (!unit || next?.kind !== 'word') return undefined;
  const each = isWord(next, 'each');
  const of = isWord(next, 'of') || each;
  const known = onesWithoutFigure.has(unit.unit);
  if (!known && (!of || unit.unit === 'dozen')) return undefined;
  const garlic = unit.unit === 'clove' && isWord(next, 'garlic');
  if (!of && !garlic && !clear.has(unit.unit) && !isContainer(unit.unit)) return undefined;
  const several = isPlural(tokens[at]) && unit.unit !== 'each';
  const plainly = (of && known) || garlic || clear.has(unit.unit) || (unit.unit === 'piece' && at > 0);
  const because = plainly ? [] : ['No figure is stated: it is read as one.'];
  if (each) because.push('The amount is of each of several foods.');
  if (isMeasuredUnit(unit.unit)) because.push('No figure is stated: it is read as one.');
  return head({
    quantity: several ? null : Rational.one,
    unit: unit.unit,
    notes: [...(at > 0 ? [wordsOf(line, tokens.slice(0, at))] : []), ...(each ? ['each'] : [])],
    because,
    end: afterOf(tokens, unit.end + (each ? 1 : 0)),
  });
};

// Each line gets lists of its own, since notes are added to them.
const head = (part: Partial<Head>): Head => ({ ...noHead, notes: [], because: [], ...part });

const afterOf = (tokens: readonly Token[], at: number): number => (isWord(tokens[at], 'of') ? at + 1 : at);
