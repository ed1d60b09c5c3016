import { Rational } from '../../quantity/rational.js';
import { figureAt } from '../lines/figures.js';
import { table } from '../lines/table.js';
import { isDash, isSign, isWord, type Token } from '../lines/tokens.js';

/** A stretch of time as a method states it, in whole minutes; `longest` for the end of a range. */
export type Duration = {
  minutes: number;
  longest: number | null;
  start: number;
  end: number;
  because: string[];
};

const units = table<number>({
  s: 1,
  sec: 1,
  secs: 1,
  second: 1,
  seconds: 1,
  m: 60,
  min: 60,
  mins: 60,
  minute: 60,
  minutes: 60,
  h: 3600,
  hr: 3600,
  hrs: 3600,
  hour: 3600,
  hours: 3600,
  day: 86_400,
  days: 86_400,
  week: 604_800,
  weeks: 604_800,
});
const longestKept = 100_000;

/** The times of some tokens, in order; times that lie within another ("after 10 minutes") are left out. */
export const durationsIn = (tokens: readonly Token[]): Duration[] => {
  const found: Duration[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const read = durationAt(tokens, at);
    if (!read) continue;
    if (!isWithin(tokens, at)) found.push(read);
    at = read.end - 1;
  }
  return found;
};

/** "after 10 minutes", "every 5 minutes", "keeps for 3 days": not how long the step takes. */
const isWithin = (tokens: readonly Token[], at: number): boolean => {
  const before = tokens.slice(Math.max(0, at - 4), at).map(({ low }) => low);
  if (before.some((word) => ['every', 'after', 'halfway', 'within', 'last', 'final', 'ago'].includes(word)))
    return true;
  return tokens.slice(Math.max(0, at - 6), at).some(({ low }) => /^keeps?$|^kept$|^store[sd]?$/.test(low));
};

const durationAt = (tokens: readonly Token[], at: number): Duration | undefined => {
  if (isWord(tokens[at], 'overnight'))
    return {
      minutes: 480,
      longest: null,
      start: at,
      end: at + 1,
      because: ['Overnight is read as 8 hours.'],
    };
  const figure = figureAt(tokens, at);
  if (!figure) return undefined;
  const first = unitAt(tokens, figure.end);
  if (!first) return undefined;
  let seconds = figure.value.times(Rational.of(first.seconds));
  let longest = figure.to?.times(Rational.of(first.seconds)) ?? null;
  let end = first.end;
  if (isWord(tokens[end], 'and') && isWord(tokens[end + 1], 'a') && isWord(tokens[end + 2], 'half')) {
    seconds = seconds.plus(Rational.of(first.seconds, 2));
    end += 3;
  }
  const more = smallerAt(tokens, end, first.seconds);
  if (more && !figure.to) {
    seconds = seconds.plus(more.seconds);
    end = more.end;
  }
  const to = rangeEnd(tokens, end);
  if (to && !longest && to.seconds.compare(seconds) > 0) {
    longest = to.seconds;
    end = to.end;
  }
  return rounded(tokens, { seconds, longest, start: at, end, because: figure.doubt ? [figure.doubt] : [] });
};

const unitAt = (tokens: readonly Token[], at: number): { seconds: number; end: number } | undefined => {
  const start = isDash(tokens[at]) && !tokens[at]?.spaced ? at + 1 : at;
  const seconds = tokens[start]?.kind === 'word' ? units[tokens[start]!.low] : undefined;
  // A full stop after "min" may end the sentence as well; it is passed over only inside one.
  const stop =
    isSign(tokens[start + 1], '.') && tokens[start + 2] && !/^\p{Lu}/u.test(tokens[start + 2]!.text) ? 1 : 0;
  return seconds ? { seconds, end: start + 1 + stop } : undefined;
};

/** "1 hour 20 minutes", "1 h and 20 min". */
const smallerAt = (tokens: readonly Token[], at: number, larger: number) => {
  const start = isWord(tokens[at], 'and') || isSign(tokens[at], ',') ? at + 1 : at;
  const figure = figureAt(tokens, start);
  const unit = figure && !figure.to ? unitAt(tokens, figure.end) : undefined;
  if (figure && !unit && start === at && larger === units.hour && isBareMinutes(tokens, figure))
    return { seconds: figure.value.times(Rational.of(60)), end: figure.end };
  if (!figure || !unit || unit.seconds >= larger) return undefined;
  return { seconds: figure.value.times(Rational.of(unit.seconds)), end: unit.end };
};

/** "1 hr 20": nothing is counted behind the figure, so that it is minutes. */
const isBareMinutes = (
  tokens: readonly Token[],
  { value, to, end }: { value: Rational; to: unknown; end: number },
) => {
  const next = tokens[end];
  const counted =
    next && next.kind !== 'sign' && !isWord(next, 'at', 'in', 'or', 'until', 'then', 'and', 'on');
  return (
    !to && !counted && !isSign(next, '°', 'º', '%') && value.isWhole && value.compare(Rational.of(60)) < 0
  );
};

/** "45 minutes to 1 hour". */
const rangeEnd = (tokens: readonly Token[], at: number) => {
  if (!isDash(tokens[at]) && !isWord(tokens[at], 'to', 'or')) return undefined;
  const figure = figureAt(tokens, at + 1);
  const unit = figure && unitAt(tokens, figure.end);
  if (!figure || !unit) return undefined;
  const more = smallerAt(tokens, unit.end, unit.seconds);
  const seconds = figure.value.times(Rational.of(unit.seconds));
  return { seconds: more ? seconds.plus(more.seconds) : seconds, end: more?.end ?? unit.end };
};

type InSeconds = {
  seconds: Rational;
  longest: Rational | null;
  start: number;
  end: number;
  because: string[];
};

/** Whole minutes, upwards, so that no time is lost; each side or each pound is said, not reckoned away. */
const rounded = (tokens: readonly Token[], read: InSeconds): Duration | undefined => {
  const sixty = Rational.of(60);
  const minutes = Number(read.seconds.over(sixty).ceil());
  const longest = read.longest ? Number(read.longest.over(sixty).ceil()) : null;
  if (minutes > longestKept || (longest ?? 0) > longestKept) return undefined;
  const because = [...read.because];
  const [a, b] = tokens.slice(read.end, read.end + 2);
  const sides = isWord(a, 'per', 'each') || (isWord(a, 'on') && isWord(b, 'each', 'both', 'the'));
  const sideAt = isWord(a, 'on') ? read.end + 2 : read.end + 1;
  if (sides && isWord(tokens[sideAt], 'side', 'sides')) {
    because.push('The time is for each side: it is read twice.');
    return { ...read, minutes: minutes * 2, longest: longest && longest * 2, because };
  }
  if (isWord(a, 'per', 'for') && (isWord(b, 'every', 'each') || (isWord(a, 'per') && b)))
    because.push('The time turns on the weight or the number.');
  return { ...read, minutes, longest: longest !== null && longest > minutes ? longest : null, because };
};
