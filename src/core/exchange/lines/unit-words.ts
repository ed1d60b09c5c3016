const spelt = (table: Record<string, string>): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(table).flatMap(([unit, words]) =>
      words.split(' ').map((word): [string, string] => [word, unit]),
    ),
  );

/** Weights by how they are written. */
export const weights = spelt({
  mg: 'mg milligram milligrams',
  g: 'g gr gm gms grm grms gram grams gramme grammes gramm gramms',
  kg: 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes',
  oz: 'oz ozs ounce ounces',
  lb: 'lb lbs pound pounds',
});

/** Volumes and spoons by how they are written. */
export const volumes = spelt({
  ml: 'ml mls cc millilitre millilitres milliliter milliliters',
  cl: 'cl centilitre centilitres centiliter centiliters',
  dl: 'dl decilitre decilitres deciliter deciliters',
  l: 'l lt ltr ltrs litre litres liter liters',
  tsp: 'tsp tsps tspn tspns teasp teaspoon teaspoons teaspoonful teaspoonfuls',
  tbsp: 'tbsp tbsps tbs tbl tbls tblsp tblsps tblspn tb tablespoon tablespoons tablespoonful tablespoonfuls tbspn tbspns tblespoon tblespoons',
  dessertspoon:
    'dsp dessertspoon dessertspoons dessertspoonful dessertspoonfuls dstsp dssp desertspoon desertspoons',
  cup: 'cup cups c cupful cupfuls',
  'fl-oz': 'floz',
  pint: 'pint pints pt pts',
  quart: 'quart quarts qt qts',
  gallon: 'gallon gallons gal gals',
});

/** What holds a stated size: "400 g tin". */
export const containers = spelt({
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

/** Counts that hold no size of their own. */
export const counts = spelt({
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
  knob: 'knob knobs nob nobs',
  lump: 'lump lumps',
  nut: 'nut',
  slug: 'slug slugs',
  swirl: 'swirl swirls',
  scattering: 'scattering',
  curl: 'curl curls',
  ladle: 'ladle ladles ladleful ladlefuls',
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
  thumb: 'thumb thumbs',
  quantity: 'quantity',
  sleeve: 'sleeve sleeves',
});

/** What a full stop may follow without ending anything. */
export const abbreviated = new Set(
  'mg g gr gm kg oz lb ml cc cl dl l lt ltr tsp teasp tbsp tbs tbl tblsp tb dsp c pt qt gal pkg pkt doz floz'.split(
    ' ',
  ),
);
