import { isDash, isSign, type Token } from './tokens.js';

/** A unit read at a place of the line: its name, the token after it, and what is in doubt about it. */
export type UnitRead = { unit: string; end: number; doubt?: string };

const spelt = (table: Record<string, string>): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(table).flatMap(([unit, words]) =>
      words.split(' ').map((word): [string, string] => [word, unit]),
    ),
  );

const weights = spelt({
  mg: 'mg milligram milligrams',
  g: 'g gr gm gms grm grms gram grams gramme grammes',
  kg: 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes',
  oz: 'oz ozs ounce ounces',
  lb: 'lb lbs pound pounds',
});

const volumes = spelt({
  ml: 'ml mls cc millilitre millilitres milliliter milliliters',
  cl: 'cl centilitre centilitres centiliter centiliters',
  dl: 'dl decilitre decilitres deciliter deciliters',
  l: 'l lt ltr ltrs litre litres liter liters',
  tsp: 'tsp tsps teasp teaspoon teaspoons teaspoonful teaspoonfuls',
  tbsp: 'tbsp tbsps tbs tbl tbls tblsp tblsps tblspn tb tablespoon tablespoons tablespoonful tablespoonfuls',
  dessertspoon: 'dsp dessertspoon dessertspoons dessertspoonful dessertspoonfuls dstsp',
  cup: 'cup cups c cupful cupfuls',
  'fl-oz': 'floz',
  pint: 'pint pints pt pts',
  quart: 'quart quarts qt qts',
  gallon: 'gallon gallons gal gals',
});

/** What holds a stated size: "400 g tin". */
const containers = spelt({
  tin: 'tin tins can cans',
  jar: 'jar jars',
  bottle: 'bottle bottles',
  packet: 'packet packets pack packs package packages pkg pkgs pkt pkts',
  sachet: 'sachet sachets',
  envelope: 'envelope envelopes',
  bag: 'bag bags',
  box: 'box boxes',
  carton: 'carton cartons',
  container: 'container containers',
  tub: 'tub tubs',
  pot: 'pot pots',
  pouch: 'pouch pouches',
  punnet: 'punnet punnets',
  tray: 'tray trays',
  tube: 'tube tubes',
  block: 'block blocks',
  ball: 'ball balls',
  bar: 'bar bars',
  loaf: 'loaf loaves',
  log: 'log logs',
  wheel: 'wheel wheels',
  stick: 'stick sticks',
  bunch: 'bunch bunches',
  head: 'head heads',
  piece: 'piece pieces',
  slab: 'slab slabs',
  roll: 'roll rolls',
});

const counts = spelt({
  clove: 'clove cloves',
  sprig: 'sprig sprigs',
  stalk: 'stalk stalks',
  rib: 'rib ribs',
  stem: 'stem stems',
  slice: 'slice slices',
  rasher: 'rasher rashers',
  leaf: 'leaf leaves',
  bulb: 'bulb bulbs',
  ear: 'ear ears',
  cob: 'cob cobs',
  sheet: 'sheet sheets',
  fillet: 'fillet fillets filet filets',
  knob: 'knob knobs',
  pat: 'pat pats',
  handful: 'handful handfuls',
  pinch: 'pinch pinches',
  dash: 'dash dashes',
  splash: 'splash splashes',
  drizzle: 'drizzle drizzles',
  glug: 'glug glugs',
  drop: 'drop drops',
  dollop: 'dollop dollops',
  squeeze: 'squeeze squeezes',
  grating: 'grating gratings',
  grind: 'grind grinds grinding grindings',
  twist: 'twist twists',
  smidgen: 'smidgen smidgens',
  sprinkle: 'sprinkle sprinkling sprinkles',
  scoop: 'scoop scoops',
  spoon: 'spoon spoons spoonful spoonfuls',
  glass: 'glass glasses',
  wineglass: 'wineglass wineglasses',
  mug: 'mug mugs',
  shot: 'shot shots',
  strip: 'strip strips',
  spear: 'spear spears',
  square: 'square squares',
  strand: 'strand strands',
  blade: 'blade blades',
  nest: 'nest nests',
  rack: 'rack racks',
  side: 'side sides',
  portion: 'portion portions',
  batch: 'batch batches',
  dozen: 'dozen dozens doz',
  each: 'piecees',
});

const abbreviated = new Set(
  'mg g gr gm kg oz lb ml cc cl dl l lt ltr tsp teasp tbsp tbs tbl tblsp tb dsp c pt qt gal pkg pkt doz floz'.split(
    ' ',
  ),
);

/** True for grams, ounces and the like; false for volumes and counts. */
export const isWeight = (unit: string | null): boolean => ['mg', 'g', 'kg', 'oz', 'lb'].includes(unit ?? '');

const measured = new Set([...weights.values(), ...volumes.values()]);
/** True for units of weight or volume. */
export const isMeasuredUnit = (unit: string | null): boolean => unit !== null && measured.has(unit);

const holding = new Set(containers.values());
/** True for what may have a size of its own, such as a tin. */
export const isContainer = (unit: string | null): boolean => unit !== null && holding.has(unit);

/** Products in a container come as they are named: "chopped tomatoes" in a tin is what one buys. */
const shops = new Set(
  'tin jar bottle packet sachet envelope bag box carton container tub pot pouch tray tube'.split(' '),
);
export const isShopPack = (unit: string | null): boolean => unit !== null && shops.has(unit);

const lettersAlone: Record<string, string> = { T: 'tbsp', t: 'tsp', Tb: 'tbsp' };

/** A weight or volume that starts at a token, with its full stop: "g", "fl. oz.", "T". */
export const measureAt = (tokens: readonly Token[], at: number): UnitRead | undefined => {
  const token = tokens[at];
  if (token?.kind !== 'word') return undefined;
  const letter = lettersAlone[token.text];
  if (letter) {
    const doubt =
      token.text === 'Tb'
        ? undefined
        : `${token.text} is read as a ${letter === 'tbsp' ? 'tablespoon' : 'teaspoon'}.`;
    return { unit: letter, end: afterStop(tokens, at + 1), ...(doubt && { doubt }) };
  }
  if (['fl', 'fluid'].includes(token.low)) {
    const next = afterStop(tokens, at + 1);
    const ounce = weights.get(tokens[next]?.low ?? '') === 'oz';
    return ounce ? { unit: 'fl-oz', end: afterStop(tokens, next + 1) } : undefined;
  }
  const unit = weights.get(token.low) ?? volumes.get(token.low);
  if (!unit) return undefined;
  return {
    unit,
    end:
      abbreviated.has(token.low.replace(/s$/, '')) || abbreviated.has(token.low)
        ? afterStop(tokens, at + 1)
        : at + 1,
  };
};

/** A container or a count that starts at a token: "tin", "cloves". */
export const countAt = (tokens: readonly Token[], at: number): UnitRead | undefined => {
  const token = tokens[at];
  if (token?.kind !== 'word') return undefined;
  const unit = containers.get(token.low) ?? counts.get(token.low);
  return unit ? { unit, end: abbreviated.has(token.low) ? afterStop(tokens, at + 1) : at + 1 } : undefined;
};

/** True when the word at a token names more than one: "cloves". */
export const isPlural = (token: Token | undefined): boolean => token?.low.endsWith('s') === true;

const afterStop = (tokens: readonly Token[], at: number): number => (isSign(tokens[at], '.') ? at + 1 : at);

/** A length that starts at a token: "cm", "-inch", '"'. Returns the token after it. */
export const lengthAt = (tokens: readonly Token[], at: number): number | undefined => {
  const start = isDash(tokens[at]) ? at + 1 : at;
  const token = tokens[start];
  if (isSign(token, '"', '”', '″')) return start + 1;
  const isLength = ['cm', 'mm', 'inch', 'inches', 'in', 'centimetre', 'centimetres', 'thumb'].includes(
    token?.low ?? '',
  );
  return isLength && token?.kind === 'word' ? afterStop(tokens, start + 1) : undefined;
};
