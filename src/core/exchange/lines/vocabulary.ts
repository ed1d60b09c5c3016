/** Words that foods are named by. A food with a word that is not here is read all the same, and marked. */
const words = `
abalone acai achiote agar agave ajwain albacore alfalfa allspice almond amaranth amaretto ancho anchovy angelica anise
aniseed annatto apple apricot aquafaba arborio artichoke arugula asafoetida asparagus aubergine avocado bacon bagel
baguette balsamic bamboo banana barbecue barley basil basmati bass batavia batter bay bean beansprout bechamel beef
beer beet beetroot berry bicarb bicarbonate biscuit bison bitter blackberry blackcurrant blueberry boar bok borage
borlotti bouillon bouquet bourbon bran brandy brazil bread breadcrumb breadstick breast bream bresaola brie brine
brioche brisket broccoli broccolini brie broth brownie brussels buckwheat bulgur bulghur bun burger burrata butter
butterbean buttermilk butternut butterscotch cabbage cacao cake camembert campari candy cannellini cantaloupe caper
capsicum caramel caraway cardamom cardoon carrot cashew casing cassava cassia catfish cauliflower caviar cavolo cayenne
celeriac celery cereal chard cheddar cheek cheese cherry chervil chestnut chia chicken chickpea chicory chilli chili
chile chipotle chive chocolate chop chorizo chutney ciabatta cider cilantro cinnamon citron citrus clam clementine
clotted cloves cob cockle cocoa coconut cod coffee cognac cointreau coke cola coley collard conchiglie compote
concentrate condensed confit consomme cookie cordial coriander corn cornbread cornflake cornflour cornichon cornmeal
cornstarch cos cottage couscous crab cracker cranberry crayfish cream creme cremini crepe cress crimini crisp croissant
crouton crumb crumpet crust cube cucumber cumin cuminseed curacao curd currant curry custard cutlet dashi date demerara
digestive dijon dill dogfish doughnut dough dragonfruit dressing dripping duck duckling dulce dumpling edamame eel egg
eggplant elderberry elderflower emmental emmenthal endive escarole espresso essence eggnog extract falafel farfalle
farro fat fennel fenugreek feta fettuccine fig filo fish flageolet flank flax flaxseed floret flour flower fontina
foie fondant frankfurter frangipane fries frisee fruit fudge fusilli galangal gammon ganache garam garlic gelatin
gelatine gem gherkin ghee gin ginger gingerbread glucose gnocchi goat goose gooseberry gorgonzola gouda granola grape
grapefruit grapeseed gravy greens grenadine grits groundnut grouper gruyere guacamole guava guinea guineafowl gum haddock
hake halibut halloumi ham hare haricot harissa hash hazelnut heart herb herring hibiscus hock hoisin hominy honey
honeydew horseradish hotdog houmous hummus ice icing jackfruit jaggery jalapeno jam jelly jerusalem jicama juice
juniper kabanos kale kamut katsu kecap kefir ketchup kidney kielbasa kimchi kingfish kipper kirsch kiwi kiwifruit kohlrabi
kombu korma kumara kumquat ladyfinger lager lamb langoustine lard lardon lasagna lasagne lavender leek lemon lemonade
lemongrass lentil lettuce lime limoncello linguine linguini linseed liqueur liquor liquorice litchi liver loaf lobster
loin lovage lychee macadamia macaroni macaroon mace mackerel madeira malt mandarin mangetout mango manioc maple
margarine marinade marjoram marmalade marmite marrow marrowfat marsala marshmallow marzipan masa masala mascarpone
matzo mayo mayonnaise meal meat meatball medjool melon meringue mesclun milk millet mince mincemeat mint mirin miso
mix mixture molasses monkfish morel mortadella mozzarella muesli muffin mulberry mullet mung mushroom mussel mustard
mutton naan nacho nashi navy neck nectarine nettle nigella noodle nori nougat nut nutmeg nutella oat oatmeal octopus
oil okra olive onion orange orecchiette oregano orgeat orzo oxtail oyster paella pak pancake pancetta paneer panko
panettone papaya pappadum pappardelle paprika parmesan parmigiano parsley parsnip partridge passata passionfruit
passion pasta paste pastrami pastry pate pavlova pawpaw pea peach peanut pear pearl pecan pecorino pectin penne pepper
peppercorn peppermint pepperoni perch pernod persimmon pesto pheasant piccalilli pickle pie pigeon pike pine pineapple
pinto pistachio pita pitta pizza plaice plantain plum polenta pollock pomegranate pomelo pancake popcorn poppadom poppy
poppyseed pork port porcini portobello potato poussin powder prawn preserve pretzel prosciutto provolone prune
pudding puff pulse pumpkin puree purslane quail quark quince quinoa rabbit radicchio radish raisin rapeseed raspberry
redcurrant relish rhubarb rib rice ricotta rigatoni roe roll romaine romanesco romano root roquefort rosemary rosewater
rotini rum rump runner rutabaga rye saffron sage sago sake salad salami salmon salsa salt saltine samphire sardine
satsuma sauce sauerkraut sausage savory scallion scallop schnapps scone sea seabass seafood seaweed seed seitan semolina
sesame shallot shank shellfish sherbet sherry shin shiitake shortbread shortcrust shortening shoulder shrimp sirloin
skate skyr snapper soba soda sole sorbet sorghum sorrel soup sourdough soy soya soybean spaghetti spareribs spearmint
speck spelt spice spinach spirulina sponge spray sprat sprinkles sprout squash squid sriracha stalk starch steak stilton
stock stout strawberry strudel stuffing suet sugar sultana sumac sunflower swede sweet sweetcorn sweetener swordfish
syrup tabasco taco tagliatelle tahini tail taleggio tamari tamarind tangerine tapenade tapioca taro tarragon tart
tartar tea teff tempeh tenderloin tequila teriyaki thigh thyme tilapia toast toffee tofu tomatillo tomato tongue tonic
topside tortellini tortilla tortellini treacle trifle trimmings tripe trout truffle tuna turbot turkey turmeric turnip
udon ugli vanilla veal vegetable vegemite venison verjuice vermicelli vermouth vinaigrette vinegar vodka wafer waffle
wakame walnut wasabi water watercress watermelon rockmelon wheat wheatgerm whelk whey whiskey whisky whitebait whiting wine wing
worcestershire worcester wrap yam yeast yoghurt yogurt yolk yuzu zaatar ziti zucchini drumstick chuck round fillet loins
rind zest peel leaf sprig flake granule kernel nib pod pip shoot stick bone carcass giblet rack joint lollipop wedge
half piece chunk ring strip string slice ball chip bit bar cup egg-white white yolk centre knuckle trotter leg crown
rocket coleslaw slaw tzatziki goujon hollandaise pesto kitchen cooking frying baking eating roasting stewing braising
grilling casserole drinking table cooker jus glace jerk cajun gochujang doubanjiang furikake dukkah piri fajita tikka
tandoori rendang laksa satay chimichurri advocaat prosecco champagne cava merlot riesling ale bovril oxo swiss jack
monterey colby gruyère asiago manchego havarti ricotta neufchatel wensleydale lancashire cheshire caerphilly stracchino
grana padano reggiano jarlsberg edam halva lokum delight sponge-finger fingers amaretti ratafia savoiardi graham oreo
cracknel vol-au-vent blini crostini focaccia chapati paratha roti matzah challah cobnut chufa tigernut pepita hempseed
saltpetre bicarbonate-of-soda tartaric citric acid colouring coloring food flavouring flavoring essence food-colouring
petal rose orange-blossom blossom violet pandan curryleaf kaffir makrut epazote shiso perilla mizuna tatsoi choy sum
choi pak gai lan daikon mooli lotus waterchestnut yautia salsify scorzonera celtuce crosne oca samphire laverbread
bottarga taramasalata rollmop bloater arbroath kedgeree crabmeat crabstick lumpfish caviare clamato tomato-paste
`;

/** Words that tell one kind of a food from another. */
const kinds = `
all purpose plain self raising rising strong bread wholemeal wholegrain wholewheat whole grain granary white brown black
red green yellow orange purple pink golden dark light pale blond blonde blue grey milk bitter bittersweet semisweet semi
caster castor granulated icing confectioner powdered superfine demerara muscovado turbinado raw cane palm coconut soft
unsalted salted lightly-salted slightly clarified cultured full half fat reduced low no free nonfat non lowfat skim
skimmed semi-skimmed double single whipping heavy thickened pouring clotted soured sour extra-thick thick thin extra
virgin pure light refined unrefined pressed cold toasted sesame rapeseed canola vegetable corn sunflower peanut avocado
flat leaf curly english french italian spanish greek turkish thai chinese japanese indian mexican american dutch irish
scottish welsh cornish cumberland lincolnshire german danish swedish polish korean vietnamese moroccan lebanese persian
egyptian jerusalem bavarian bombay madras vindaloo cajun creole jamaican caribbean asian continental savoy napa wombok
iceberg romaine little gem cos butterhead oak lollo rosso baby mini new old floury waxy baking king edward maris piper
charlotte desiree russet yukon gold idaho sebago kipfler jersey royal sweet bitter hot mild medium strong mature vintage
sharp aged young spring summer winter savoury spanish vine cherry plum roma san marzano beef beefsteak grape heirloom
heritage sun dried semi-dried oven dry active instant fast action quick easy fresh frozen tinned canned bottled jarred
pickled preserved candied crystallised crystallized glace glacé stem smoked unsmoked streaky back middle gammon green
cured cooking chorizo merguez toulouse lean minute braising stewing chuck rump sirloin ribeye flat iron skirt bavette
porterhouse t-bone tomahawk chateaubriand short spare loin leg neck rack rib shoulder belly cheek knuckle tail ox calf
chicken duck goose turkey wild farmed organic sea river rainbow brown tiger king queen jumbo raw tail-on head-on shell
shells basmati jasmine long short medium grain risotto pudding sushi arborio carnaroli wild puy beluga red split urad
toor moong channa chana dal dhal mung butter broad runner french fine flat helda string wax snow sugar snap garden petits
pois marrowfat black-eyed black-eye eyed eye turtle pinto kidney navy great northern lima fava borlotti flageolet
portobello portobella chestnut button cremini oyster porcini ceps morel shiitake enoki closed open field mixed wood ear
granny smith bramley cox gala fuji pink lady golden delicious cooking eating conference comice williams bosc asian
seville navel blood valencia ruby clementine meyer key persian kaffir lebanese continental telegraph hothouse
kosher table rock flaky flaked flake fine coarse maldon celery onion garlic seasoned seasoning powder ground cracked
peppercorn szechuan sichuan pink cayenne smoked sweet hot birdseye bird's-eye bird scotch bonnet serrano habanero poblano
anaheim thai banana bell romano pointed piquillo pimiento pimento peppadew dijon wholegrain american yellow hot mustard
cream cottage goat goat's goats ewe's ewes sheep's sheep buffalo blue soft hard mature grated parmesan style natural set
plain low-sodium reduced-sodium low-salt reduced-salt salt-reduced unsweetened sweetened condensed evaporated powdered
flavored flavoured unflavored unflavoured vanilla chocolate plain dark couverture cooking drinking dutch-process cocoa
solids percent tomato double-concentrate concentrated triple sieved crushed chopped diced stewed fire-roasted roasted
roast marinated stuffed pitted kalamata nicoise niçoise manzanilla nocellara capers nonpareille artichoke palm water
soda sparkling mineral tonic still tap ice iced spring coconut puffed rolled jumbo pinhead steel steelcut steel-cut
porridge quick-cooking pearl pearled hulled popping sweetcorn creamed mushy processed refried baked ready made ready-made
ready-rolled ready-to-roll ready-to-eat ready-cooked shop bought shop-bought store store-bought readymade homemade
prepared good best quality leftover cold cooked shortcrust puff filo phyllo flaky choux rough hot water sponge lady
finger digestive ginger rich tea amaretti cream plain water oat cracker panko dried day japanese sourdough rye crusty
country farmhouse bloomer ciabatta brioche burger hot dog hamburger english tortilla corn flour pitta naan flat soft
soft-boiled star anise mixed all spice pumpkin pie five-spice seven-spice 5-spice garam ras el hanout herbes de provence
bouquet garni italian-style poultry apple cider rice wine red-wine white-wine sherry balsamic malt distilled spirit
tarragon raspberry ume sushi light dark sweet thick soy oyster fish hoisin chilli bbq barbecue brown tartare mint
cranberry apple redcurrant bread cheese worcestershire tabasco hot bottled marshmallow marmalade seedless rindless
fine-cut thick-cut streaky smoky smokey unbleached bleached stoneground stone-ground gluten gluten-free dairy-free dairy
vegan vegetarian egg-free nut-free sugar-free fat-free low-fat reduced-fat full-fat extra-virgin extra-lean part-skim
part sharp-cheddar all-purpose self-raising self-rising long-grain short-grain medium-grain brown-rice hard hothouse
bone marrow skinless in of with and brine oil springwater syrup juice natural-juice own their light-syrup tomato-sauce
al de la en rapid rise bread-machine machine rapid-rise fast-action quick-acting easy-blend osmotic compressed cultured
sodium lower unsulphured unsulfured blackstrap amber maple runny clear set manuka orange-flower orange-blossom rosewater
flower peanut-butter crunchy smooth chunky creamy stem-ginger long english-style double-cream marsh rind on off high
neutral mild-flavoured light-flavored mild-tasting flavorless flavourless bicarbonate soda's rib-eye sea-salt cumin nut
creme crème fraîche fraiche parma serrano iberico ibérico york wiltshire honey-roast honey glazed spiral deli sandwich
tender tenderstem purple-sprouting sprouting tuscan cavolo nero curly-kale dinosaur lacinato collard mustard-green spring
savoy white-cabbage chinese-leaf pointed hispi sweetheart romanesco rainbow swiss golden candy striped chioggia
nonstick non-stick cooking-spray olive-oil sprayed cup large-flake quail's hen's duck's lamb's calves' pig's ladies'
littleneck cherrystone manila quahog razor green-lip bay diver hand-dived king-size rope-grown unpeeled stone ground
yellow cake angel brownie muffin pancake waffle pizza bread biscuit scone batter red-velvet powder stock-cube cube
breakfast pork-and-beans link links chipolata chipolatas cocktail nuremberg brat bratwurst andouille pepperoni
elbow penne rigate bow tie angel-hair hair shells lasagna egg rice glass vermicelli cellophane ramen udon soba hokkien
birds potato sweet-potato tapioca arrowroot custard semolina cornmeal coarse-ground masa harina gram besan chickpea
almond hazelnut walnut pecan cashew brazil pine pumpkin sunflower poppy chia flax linseed hemp nigella onion-seed
caraway fennel mustard coriander cumin celery-seed cardamom dill fenugreek sesame-seed black-sesame
`;

const accents = /\p{M}/gu;

/** A word as it is compared: lower case, no accents. */
const plain = (word: string): string =>
  word.toLowerCase().normalize('NFD').replace(accents, '').replace(/'s$/, '');

/** The word, and what it may be the plural of. */
const forms = (word: string): string[] => {
  const low = plain(word);
  if (low.length < 4 || !low.endsWith('s') || low.endsWith('ss')) return [low];
  const stem = low.slice(0, -1);
  const longer = low.endsWith('es') ? [low.slice(0, -2)] : [];
  const changed = low.endsWith('ies')
    ? [`${low.slice(0, -3)}y`]
    : low.endsWith('ves')
      ? [`${low.slice(0, -3)}f`]
      : [];
  return [low, stem, ...longer, ...changed];
};

const listed = (text: string): ReadonlySet<string> =>
  new Set(
    text
      .split(/\s+/)
      .filter(Boolean)
      .flatMap((word) => [plain(word), ...word.split('-').map(plain)]),
  );

const names = listed(words);
const all = new Set([...names, ...listed(kinds)]);

const among = (list: ReadonlySet<string>, word: string): boolean =>
  forms(word).some((form) => list.has(form));

/** True when a word is one that foods and their kinds are named by. */
export const isFoodWord = (word: string): boolean =>
  among(all, word) || word.split('-').every((part) => part !== '' && among(all, part));

/** True when a word names a food by itself, not only a kind of one. */
export const isFoodName = (word: string): boolean =>
  among(names, word) || among(names, word.slice(word.lastIndexOf('-') + 1));
