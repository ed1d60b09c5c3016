import { holdsFigure } from './tail.js';
import { tokensOf } from './tokens.js';

/** Parts of a dish: in capitals and alone they open a section. */
export const dishParts =
  /^(?:dressing|sauce|filling|topping|pastry|icing|frosting|glaze|marinade|salad|crust|base|garnish|dough|batter|stuffing|(?:topping|filling|garnishe|sauce|dressing)s)$/i;

/** Dishes by their name alone, which a list has as headings too. */
export const dishes =
  /^(?:.* )?(?:cakes?|cupcakes|sponge|curry|soup|stew|pie|meatballs|burgers|patties|dumplings|crumble|streusel|buttercream|ganache|brine|rub|slaw|gravy|mash|ragu|pancakes|biscuits|cookies|muffins)$/i;

const sections =
  /^(?:(?:main |the |dry |wet |other )?ingredients|method|directions|instructions|preparation|equipment|(?:cook's )?notes?|you will need|you'll need|what you need|shopping list)$/i;

const serving = /^to (?:serve|finish|garnish|decorate|assemble|glaze|top|dress|accompany|coat|go with it)$/i;

/**
 * The title of a line that opens a section ("For the sauce:", "TO SERVE", "**Dressing**"), or undefined for any other
 * line. A line with an amount is never one.
 */
export const headingOf = (line: string): string | undefined => {
  const marked = /^#{1,6}\s+(.+?)\s*#*$/.exec(line) ?? /^(?:\*\*|__)?([^*]+?):?(?:\*\*|__):?$/.exec(line);
  const plain = (marked?.[1] ?? line).trim();
  const ends = /[:：]$/.test(plain);
  const title = plain.replace(/[\s:：.]+$/, '').trim();
  if (title === '' || title.length > 60) return undefined;
  const opens =
    marked ||
    ends ||
    serving.test(title) ||
    sections.test(title) ||
    (dishParts.test(title) && title === title.toUpperCase()) ||
    (/^for (?:the|an?|each|your)\s/i.test(title) && !title.includes(','));
  return opens && !holdsFigure(tokensOf(title.replace(/\([^()]*\)$/, ''))) ? title : undefined;
};
