import { figureAt } from './figures.js';
import { isSign, type Line, wordsOf } from './tokens.js';

const leads =
  /^(?:optional(?: \p{L}+)?|to (?:serve|garnish|finish|decorate|glaze)|for (?:the )?[\p{L} ]{2,30}|garnish|topping|filling|sauce|dressing|plus)$/iu;

/** "Optional: 1 tbsp capers", "For the filling: 200 g ricotta": words before a colon that say what the line is for. */
export const leadOf = (line: Line): { note: string; end: number } => {
  const at = line.tokens.slice(0, 7).findIndex((token) => isSign(token, ':'));
  if (at < 1 || at === line.tokens.length - 1) return { note: '', end: 0 };
  const note = wordsOf(line, line.tokens.slice(0, at));
  const plain =
    leads.test(note) && !line.tokens.slice(0, at).some((_, place) => figureAt(line.tokens, place));
  return plain ? { note, end: at + 1 } : { note: '', end: 0 };
};
