import type { Times } from './draft.js';
import { readDuration } from './iso-duration.js';

/** What a line of a pasted recipe announces, besides ingredients and method themselves. */
export const ingredientsMark =
  /^(?:#+\s*)?(?:\*\*)?(?:the )?(?:ingredients?(?: list)?|you(?:'|’)?(?:ll| will) need|what you(?:'|’)?(?:ll)? need|shopping list)(?: (?:for|serves|makes) [^:]{1,30})?(?:\*\*)?\s*(?::|\([^)]{0,40}\)|$)/i;
export const methodMark =
  /^(?:#+\s*)?(?:\*\*)?(?:the )?(?:method|directions?|instructions?|preparation|steps|procedure|how to make (?:it|them)|what to do|to make)(?:\*\*)?\s*(?::|$)/i;
export const notesMark =
  /^(?:#+\s*)?(?:\*\*)?(?:(?:special )?equipment|notes?|tips?|recipe tips?|recipe notes?|cook(?:'|’)?s (?:notes?|tips?)|storage|to store|make ahead|nutrition(?:al)?(?: information| facts)?)(?:\*\*)?\s*(?::|$)/i;
/** What follows a recipe on a page and is none of it. */
export const endMark =
  /^(?:#+\s*)?(?:\d+ )?(?:comments?|reviews?|leave a (?:comment|reply|review)|related (?:recipes|posts)|you (?:may|might) also like|more recipes|more like this|about (?:me|the author)|(?:lots of )?love|(?:kind |best |warm )?(?:regards|wishes)|cheers|x{1,5}|sent from my .{1,30})\s*(?:\(\d+\))?[:,]?$/i;
/** For how many a list's heading or a title says it is: "Ingredients (serves 4)", "Salad (for 6)". */
export const forHowMany =
  /\(?\b((?:serves|makes|for)\s+(?:\d|an?\b|one|two|four|six|eight|ten|twelve)[^():]*)\)?\s*:?$/i;
/** Furniture of a page between title and list. */
export const furniture =
  /^(?:print|save|share|jump to recipe|rate this recipe|pin|email|add to .{1,20}|\d+ (?:reviews?|ratings?|comments?)|by .{1,40}|us|metric|difficulty.{0,20}|easy|course:.*|cuisine:.*|keywords?:.*|author:.*|calories:.*|(?:from|to|cc|sent|date|subject):.*|[- ]*(?:begin )?forwarded message[-: ]*|[- ]*original message[- ]*|on .{5,80} wrote:|(?:hi|hello|hey|dear)\b.{0,40}[,!]|\d+(?:\.\d)? ?kcal.*)$/i;

const yieldPart =
  /^(?:serves?|makes|yields?|servings?|portions?|feeds|for \d+ (?:people|persons?|guests?))\b/i;
const counted = /^\d[\d\s–-]* (?:servings?|portions?|people)$/i;
const timePart =
  /^(prep(?:aration)?|cook(?:ing)?|bak(?:e|ing)|total|ready in|hands[- ]on|active|time)(?: time)?\s*[:–-]?\s*(?=[\d½¼¾aoh])/i;
/** A time said with a heat is a step of the method: "Bake 12 min at 220°C". */
const heated = /°|\b(?:at|gas)\s+(?:gas|mark|\d)/i;

export type Facts = {
  yieldText: string;
  times: Partial<Times>;
  /** The line says more than these. */
  more: boolean;
};

/** Yield and times that a line states: "Serves 4 | Prep: 20 min | Cook 1 hr"; undefined when it states none. */
export const factsOf = (line: string): Facts | undefined => {
  if (line.length > 200) return undefined;
  const facts: Facts = { yieldText: '', times: {}, more: false };
  let any = false;
  for (const part of line.split(
    /\s*[|•·;]\s*|\.\s+(?=\p{Lu})|\s{3,}|,\s+(?=(?:prep|cook|total|serves|makes|ready)\b)/iu,
  )) {
    const plain = part.replace(/^[*#\s]+|[*\s.]+$/g, '').replace(/^\(([^()]*)\)$/, '$1');
    if (yieldPart.test(plain) || counted.test(plain)) {
      facts.yieldText += facts.yieldText ? `, ${plain}` : plain;
      any = true;
      continue;
    }
    const found = heated.test(plain) ? null : timePart.exec(plain);
    const minutes = found && readDuration(plain.slice(found[0].length));
    if (!found || !minutes) {
      facts.more ||= /\.\s+\p{Lu}/u.test(line) && /\s\S+\s/.test(plain);
      continue;
    }
    facts.times[fieldOf(found[1]!.toLowerCase())] ??= minutes;
    any = true;
  }
  return any ? facts : undefined;
};

const fieldOf = (word: string): keyof Times => {
  if (/^(?:prep|hands|active)/.test(word)) return 'prep';
  return /^(?:total|ready|time)/.test(word) ? 'total' : 'cook';
};
