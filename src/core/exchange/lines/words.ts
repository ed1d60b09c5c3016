import { table } from './table.js';

const set = (...lines: string[]): ReadonlySet<string> => new Set(lines.join(' ').split(' '));

/** How a food is cut or readied; before the food or after it, it is a note. */
export const prepared = set(
  'chopped sliced diced minced grated shredded crushed cubed halved quartered peeled trimmed cored seeded',
  'deseeded stoned pitted boned boneless skinless skinned shelled podded hulled husked shucked zested juiced',
  'squeezed mashed pureed puréed melted softened beaten whisked whipped sifted packed toasted cooked boiled',
  'poached steamed fried grilled roasted baked drained rinsed washed soaked torn picked snipped crumbled flaked',
  'shaved julienned slivered scrubbed thawed defrosted warmed cooled chilled separated divided blanched bruised',
  'smashed split butterflied deveined debearded gutted filleted scaled cleaned pressed strained reserved tied',
  'scored segmented spiralized spiralised riced topped tailed unpeeled undrained unsifted stripped broken',
  'heated scalded reheated caramelized caramelised charred browned seared stemmed destemmed cut sieved wiped',
  'patted pounded flattened pricked unwrapped undrained levelled spooned removed discarded rolled',
  'hard-boiled soft-boiled pre-cooked precooked skin-on bone-in skin-off bone-off de-seeded de-veined de-stoned',
  'finely-chopped roughly-chopped thinly-sliced softish crosswise lengthways lengthwise',
  'uncooked unbaked popped unpopped spatchcocked frenched dissolved',
);

/** What loses weight when it is readied so: whether the amount is before or after makes a difference. */
export const losesWeight = set(
  'peeled trimmed topped cored seeded deseeded stoned pitted boned skinned shelled podded hulled',
  'husked shucked filleted drained cooked boiled roasted steamed stemmed destemmed de-seeded de-veined',
  'de-stoned precooked pre-cooked',
);

export const adverbs = set(
  'finely roughly coarsely thinly thickly freshly lightly very well just firmly loosely tightly nicely evenly',
  'gently diagonally partly partially fully ready too completely neatly carefully',
);

/** What a piece is like without being another food: a note, wherever it stands. */
export const sizes = set(
  'large small medium big medium-sized medium-size large-sized small-sized extra-large jumbo tiny long whole',
  'ripe firm free-range organic unwaxed good-quality day-old stale fat plump good-sized bite-sized bite-size',
  'medium-large large-ish smallish largish medium-ripe overripe over-ripe underripe under-ripe just-ripe unripe room-temperature',
  'store-bought shop-bought hand-hot just-boiled blood-warm med lge lg sm xl thumb-sized thumb-size walnut-sized fist-sized ice-cold tepid lukewarm nice juicy generous heaped',
);

/** Heat and hardness, a note before these foods and part of the name before others ("hot paprika"). */
export const states = set('hot cold warm boiling chilled iced soft soft-set cool');
export const takesState = set(
  'potato potatoes rice pasta noodles spaghetti water milk stock broth butter coffee tea cream vegetables mash custard margarine wine lard shortening',
);

/** Between figure and unit: "2 heaped tbsp", "3 fat cloves". */
export const extents = set(
  'heaped heaping level rounded scant generous good large small medium big fat thick thin short long whole little',
  'full packed medium-sized medium-size large-sized thumb-sized thumb-size bare extra-large healthy slim brimming',
  'flat tiny hefty standard regular sized med lge lg sm xl',
);

/** Before a figure: "about 200 g". */
export const approximations = set(
  'about approx approximately around roughly circa scant generous heaped heaping rounded level good nearly almost',
  'just over under maximum minimum max min ca c',
);

/** What begins a note without a comma before it. */
export const noteBegins = set(
  'for plus with without from until if such like about approx approximately around preferably ideally optional',
  'at cut to including excluding skin-on bone-in unpeeled depending minus alternatively each per',
);

/** Kinds that a word of preparation names together with the food after it: "minced beef", "rolled oats". */
export const kinds = table<ReadonlySet<string>>({
  minced: set('beef pork lamb turkey chicken veal meat venison'),
  rolled: set('oats barley rye spelt wheat jumbo'),
  flaked: set('almonds salt coconut'),
  slivered: set('almonds'),
  blanched: set('almonds hazelnuts'),
  shredded: set('wheat suet coconut'),
  chopped: set('tomatoes tomato'),
  crushed: set('tomatoes pineapple red'),
  split: set('peas lentils red yellow green'),
  cracked: set('wheat'),
  roasted: set('red'),
  whipped: set('topping'),
  cooked: set('ham'),
  steamed: set('pudding'),
  whole: set('milk wheat wholewheat wholemeal grain peeled-tomatoes meal'),
  long: set('grain grain-rice'),
  baked: set('beans'),
  fried: set('onions'),
  seeded: set('bread rolls loaf batch mustard'),
  strained: set('yoghurt yogurt'),
  pressed: set('tofu'),
  cut: set('mixed'),
  medium: set('curry grind sherry rye oatmeal cheddar dry'),
  fat: set('free'),
  firm: set('tofu'),
  jumbo: set('oats rolled'),
  broken: set('rice'),
  washed: set('rind'),
});

/** Kinds that the last word of the food tells: "toasted sesame oil". */
export const kindsOfLast = table<ReadonlySet<string>>({
  baked: set('shell case crust base'),
  toasted: set('oil'),
  roasted: set('oil'),
  medium: set('noodles'),
  crushed: set('flakes'),
});

/** Words that with these may be a kind: "long red chilli", "unbaked pie crust". */
export const mayBeKinds = table<ReadonlySet<string>>({
  long: set('red green'),
  popped: set('popcorn'),
  whipped: set('cream'),
  unbaked: set('pie pastry tart pizza shortcrust'),
});

/** Foods whose words of preparation may mean a product or a state; which, only the cook knows. */
export const eitherKind = set('chopped crushed roasted fried');

/** Parts that are taken of a whole: "juice of 1 lemon". */
export const parts = set(
  'juice zest rind peel leaves seeds flesh florets kernels meat pulp whites white yolks yolk',
);
export const partWords = set(
  'the finely coarsely grated pared strips strip thinly and freshly squeezed chopped only plus fresh sliced shredded',
);

/** Without a figure: "some parsley", "a little oil". */
export const vague = [
  'a little',
  'a few',
  'a bit of',
  'a lot of',
  'a touch of',
  'a hint of',
  'a little bit of',
  'a good few',
  'a bit',
]
  .concat([
    'some',
    'few',
    'several',
    'plenty of',
    'lots of',
    'enough',
    'extra',
    'bit of',
    'loads of',
    'any',
    'more',
  ])
  .map((phrase) => phrase.split(' '));

/** Units that need no figure to be one of: "pinch of salt", "handful rocket". */
export const onesWithoutFigure = set(
  'pinch handful knob dash splash drizzle glug sprig bunch squeeze grating dollop pat piece tin jar packet drop sachet',
  'slosh lug shake trickle fistful dusting wedge bag bottle tub punnet smidgen sprinkle twist grind head slice rasher bulb carton box cup tsp tbsp stick block clove',
);

/** Names that hold an "and" of their own. */
export const joinedNames = [
  'half and half',
  'half-and-half',
  'sweet and sour',
  'salt and vinegar',
  'bread and butter',
  'macaroni and cheese',
  'mac and cheese',
  'cookies and cream',
  'sage and onion',
  'pork and beans',
  'fish and chips',
  'black and white',
  'salt and pepper squid',
];

/** Purposes: "to serve", "to taste". */
export const purposes = set(
  'serve taste garnish finish decorate glaze dust grease fry coat cover fill drizzle brush sprinkle thin bind',
  'thicken spread season dress top moisten loosen line deep-fry make mix scatter accompany',
);
