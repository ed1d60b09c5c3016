/** What kind of work a step is, for presets of what it asks. */
export type Kind =
  | 'roast'
  | 'bake'
  | 'braise'
  | 'grill'
  | 'simmer'
  | 'boil'
  | 'fry'
  | 'steam'
  | 'chill'
  | 'freeze'
  | 'prove'
  | 'rest'
  | 'soak'
  | 'mix'
  | 'other';

type Rule = { kind: Kind; words: RegExp; attended: boolean };

/** In this order, what is said first in the list wins: a braise in the oven is a braise. */
const rules: Rule[] = [
  {
    kind: 'chill',
    attended: false,
    words: /\b(?:chill(?:ing)?|until chilled|refrigerate|in(?:to)? the fridge|in(?:to)? the refrigerator)\b/i,
  },
  { kind: 'freeze', attended: false, words: /\b(?:freeze|in(?:to)? the freezer)\b/i },
  {
    kind: 'prove',
    attended: false,
    words:
      /\b(?:prove|proof|proving|let (?:it )?rise|leave (?:it )?to rise|until (?:nearly )?doubled|doubled in size|to rise)\b/i,
  },
  { kind: 'soak', attended: false, words: /\b(?:soak|marinate|marinade for|steep|infuse|brine|macerate)\b/i },
  { kind: 'braise', attended: false, words: /\b(?:braise|slow[- ]cook|stew(?= for| gently))\b/i },
  {
    kind: 'grill',
    attended: true,
    words: /\b(?:(?:under|on) (?:the|a) (?:hot )?grill|barbecue|broil|griddle|grill(?= for| until| the))\b/i,
  },
  {
    kind: 'roast',
    attended: false,
    words: /\broast(?:ing)?\b(?! (?:tin|tray|pan|dish|rack|chicken|beef|lamb|pork|potatoes|vegetables))/i,
  },
  {
    kind: 'bake',
    attended: false,
    words: /\b(?:bake|cook in the oven|in the oven|return to the oven|oven for)\b/i,
  },
  { kind: 'simmer', attended: false, words: /\b(?:simmer(?:ing)?|poach|bubble(?: gently)?)\b/i },
  { kind: 'steam', attended: false, words: /\bsteam\b/i },
  { kind: 'boil', attended: false, words: /\b(?:boil|blanch|bring to the boil|bring to a boil)\b/i },
  {
    kind: 'fry',
    attended: true,
    words:
      /\b(?:fry|sauté|saute|sear|brown(?! (?:sugar|rice|bread))|sweat|soften|stir-fry|cook (?:the )?[\p{L} ]{2,40} (?:gently|until))\b/iu,
  },
  {
    kind: 'rest',
    attended: false,
    words: /\b(?:rest(?! of)|cool|stand(?! mixer)|set aside for|leave to set|allow to set)\b/i,
  },
  {
    kind: 'mix',
    attended: true,
    words:
      /\b(?:mix|whisk|beat|knead|cream (?:the|together)|fold|blend|blitz|whizz|stir|toss|combine|rub|roll|chop|slice|peel|dice|grate)\b/i,
  },
];

const watched =
  /\b(?:stirring (?:constantly|continuously|all the time|frequently|often)|keep (?:on )?stirring|whisking|basting (?:often|every)|watching|turning (?:often|frequently))\b/i;
const minded = /\b(?:stirring|turning|basting|shaking|skimming)\b/i;

/** What kind of step some words are, whether somebody stands there, and what is in doubt about that. */
export const kindOf = (words: string): { kind: Kind; attended: boolean; because: string[] } => {
  const rule = rules.find((one) => one.words.test(words));
  if (!rule)
    return { kind: 'other', attended: true, because: ['Whether somebody stands there is not said.'] };
  if (!rule.attended && watched.test(words)) return { kind: rule.kind, attended: true, because: [] };
  const because =
    !rule.attended && minded.test(words)
      ? ['It is looked after now and then: whether somebody stands there is a guess.']
      : [];
  return { kind: rule.kind, attended: rule.attended, because };
};

/** What a step needs besides hands. */
export type Equipment =
  | 'oven'
  | 'hob'
  | 'mixer'
  | 'processor'
  | 'fridge'
  | 'freezer'
  | 'grill'
  | 'microwave'
  | 'fryer';

const tools: [Equipment, RegExp][] = [
  [
    'hob',
    /\b(?:hob|stove(?:top)?|saucepan|frying[- ]pan|skillet|wok|casserole on|(?:in|into) (?:a|the) (?:\p{L}+ ){0,3}pan|simmer|fry|sauté|saute|sear|sweat|over (?:a )?(?:\p{L}+(?: |-)){0,2}heat|(?:to|to a|to the|until) boil(?:ing)?|boil)\b/iu,
  ],
  [
    'mixer',
    /\b(?:(?:stand|electric|food|freestanding|hand|hand-held) mixer|mixer fitted|electric whisk|electric beaters)\b/i,
  ],
  ['processor', /\b(?:food processor|processor|blender|liquidiser|stick blender)\b/i],
  ['fridge', /\b(?:fridge|refrigerat(?:e|or)|chill(?:ed|ing)?)\b/i],
  ['freezer', /\b(?:freezer|freeze)\b/i],
  ['grill', /\b(?:(?:under|on) (?:the|a) (?:\p{L}+ )?grill|barbecue|broiler?|griddle)\b/iu],
  ['microwave', /\bmicrowave\b/i],
  ['fryer', /\b(?:deep[- ]fr(?:y|yer|ied|ying))\b/i],
];

/** The equipment some words name; the oven is judged with its heat, elsewhere. */
export const equipmentIn = (words: string): Equipment[] =>
  tools.filter(([, said]) => said.test(words)).map(([one]) => one);

/** Words that put something into an oven, or heat one up. */
export const preheats =
  /\b(?:pre-?heat|heat (?:the|your) oven|turn on the oven|set (?:the|your) oven|oven (?:on|to))\b/i;
export const usesOven =
  /\b(?:bake|roast(?:ing)?(?! (?:tin|tray|pan|dish|rack|chicken|beef|lamb|pork|potatoes|vegetables))|in(?:to)? (?:(?:the|an?) )?(?:\p{L}+ )?oven|to the oven|oven for)\b/iu;
/** What else may be so hot: oil, sugar, or a probe in the food. */
export const otherHeat: ReadonlySet<string> = new Set(
  'oil fat fryer thermometer probe internal core centre center syrup caramel sugar reaches reads registers water milk'.split(
    ' ',
  ),
);
