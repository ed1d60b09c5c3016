/** Words that foods are named by. A food with a word that is not here is read all the same, and marked. */
const words = `
abalone acai achiote aduki advocaat adzuki agar agave ajwain albacore ale alfalfa allspice almond
amaranth amaretti amaretto ancho anchovy angelica anise aniseed annatto apple apricot aquafaba arborio
arbroath artichoke arugula asafoetida asiago asparagus au aubergine avocado backstrap bacon bagel
baguette baharat balsamic bamboo banana barbecue barley barramundi basil basmati bass batavia batter bay
bean beansprout bechamel beef beer beet beetroot belacan berry bicarb bicarbonate biscuit bison bitter
blackberry blackcurrant blini bloater blueberry boar bocconcini borage borlotti bottarga bouillon
bouquet bourbon bovril bran brandy brazil bread breadcrumb breadstick bream breast bresaola brie brine
brioche brisket broccoli broccolini broth brownie buckwheat bulghur bulgur bun burger burrata butter
butterbean buttermilk butternut butterscotch cabbage cacao caerphilly cajun cake camembert candy
cannellini cannelloni cantaloupe caper capsicum caramel caraway cardamom cardoon carob carrot case
cashew casing cassava cassia catfish cauliflower cava caviar caviare cavolo cayenne celeriac celery
celtuce cereal challah champagne chapati chard cheddar cheese cherry chervil cheshire chestnut chia
chicken chickpea chicory chile chili chilli chimichurri chip chipotle chive chocolate chop chorizo choy
chuck chufa chutney ciabatta cider cilantro cinnamon citron citrus clam clementine cloves cob cobnut
cockle cocoa coconut cod coffee cognac coke cola colby coleslaw coley collard coloring colouring compote
concentrate confit consomme cookie cordial coriander corn cornbread cornflake cornflour cornichon
cornmeal cornstarch cos cotija cottage courgette couscous crab crabmeat crabstick cracker cracknel
cranberry crayfish cream creme cremini crepe cress crimini crispbread croissant crosne crostini crouton
crumb crumpet crust cube cucumber cumin cuminseed curacao curd currant curry curryleaf custard cutlet
daikon damson dashi date delight demerara digestive dill doenjang dogfish doubanjiang dough doughnut
dragonfruit dressing dripping drumstick duck duckling dukkah dulce dumpling edam edamame eel egg eggnog
eggplant elderberry elderflower emmental emmenthal endive epazote escarole eschalot espresso essence
extract fajita falafel farfalle farro fat fennel fenugreek feta fettuccine fig filo fingers fish
flageolet flake flathead flavoring flavouring flax flaxseed floret flour focaccia foie fondant fontina
fraiche frangipane frankfurter freekeh fries frisee fruit fudge furikake fusilli galangal gammon ganache
garam garbanzo garlic gelatin gelatine gem ghee gherkin giblet gin ginger gingerbread glucose gnocchi
goat gochujang goose gooseberry gorgonzola gouda goujon grana granola grape grapefruit grapeseed gravy
greengage greens grenadine grits groundnut grouper grouse gruyere guacamole guava guineafowl gum haddock
haggis hake halibut halloumi haloumi halva ham hare haricot harissa hash havarti hazelnut hempseed herb
herring hibiscus hoisin hollandaise hominy honey honeydew horseradish hotdog houmous hummus ice icing
jack jackfruit jaggery jalapeno jam jarlsberg jelly jerk jicama juice juniper kabanos kabocha kaffir
kale kamut kangaroo katsu kecap kedgeree kefir kernel ketchup kidney kielbasa kimchi kingfish kipper
kirsch kiwi kiwifruit kohlrabi kombu korma kumara kumquat ladyfinger lager laksa lamb lamington
lancashire langoustine lard lardon lasagna lasagne lavender laverbread leek lemon lemonade lemongrass
lentil lettuce lime limoncello linguine linguini linseed liqueur liquor liquorice litchi liver loaf
lobster lokum lollipop lotus lovage lumpfish lychee macadamia macaroni macaroon mace mackerel madeira
makrut malt manchego mandarin mangetout mango manioc maple margarine marinade marinara marjoram
marmalade marrow marrowfat marsala marshmallow marzipan masa masala mascarpone matcha matzah matzo mayo
mayonnaise meal meat meatball medjool melon meringue merlot mesclun milk millet mince mincemeat mint
mirin miso mix mixture mizuna molasses monkfish mooli morel mortadella mozzarella muesli muffin mulberry
mullet mung mushroom mussel mustard mutton mycoprotein naan nacho nectarine nettle neufchatel nigella
noodle nori nougat nut nutmeg oat oatcake oatmeal oca octopus oil okra olive onion orange orecchiette
oregano orgeat orzo oxtail oyster padano paella pancake pancetta pandan paneer panettone panko papaya
pappadum pappardelle paprika paratha parmesan parmigiano parsley parsnip partridge passata passionfruit
pasta paste pastrami pastry pate pavlova paw pawpaw pea peach peanut pear pearl pecan pecorino pectin
peel penne pepita pepper peppercorn peppermint pepperoni perch perilla persimmon pesto pheasant
piccalilli pickle pie pigeon pike pilchard pine pineapple pinto pistachio pita pitta pizza plaice
plantain plum polenta pollock pomegranate pomelo popcorn poppadom poppy poppyseed porcini pork port
portobello potato poussin powder prawn preserve pretzel prosciutto prosecco provolone prune pudding puff
pulse pumpernickel pumpkin puree purslane quail quark queso quince quinoa rabbit radicchio radish raisin
rapeseed raspberry ratafia ravioli redcurrant reggiano relish rendang rhubarb rib rice ricotta riesling
rigatoni rind rocket rockmelon roe roll rollmop romaine romanesco romano root roquefort rose rosemary
rosewater roti rotini rum runner rusk rutabaga rye saffron sage sago sake salad salami salmon salsa
salsify salt saltine saltpetre sambal samphire sardine satay satsuma sauce sauerkraut sausage savoiardi
savory scallion scallop schnapps scone scorzonera sea seabass seafood seasoning seaweed seed seitan
semolina sesame shallot shellfish sherbet sherry shiitake shin shiso shortbread shortcrust shortening
shrimp silverbeet silverside sirloin skate skyr slaw sloe snapper soba soda sole sorbet sorghum sorrel
soup sourdough soy soya soybean spaghetti spareribs spearmint speck spelt spice spinach spirulina sponge
sprat spray sprinkles sprout spud squash squid sriracha starch steak stilton stock stout stracchino
strawberry strudel stuffing suet sugar sultana sumac sunflower swede sweet sweetcorn sweetener swordfish
syrup taco tagliatelle tahini taleggio tamari tamarind tandoori tangerine tapenade tapioca taramasalata
taro tarragon tart tartar tatsoi tea teff tempeh tenderloin tequila teriyaki thigh thyme tigernut tikka
tilapia toast toffee tofu tomatillo tomato topping topside tortellini tortilla treacle trifle trimmings
tripe trout truffle tuna turbot turkey turmeric turnip tzatziki udon ugli vanilla veal vegetable venison
vent verjuice vermicelli vermouth vinaigrette vinegar violet vodka vol wafer waffle wakame walnut wasabi
water waterchestnut watercress watermelon wensleydale wheat wheatgerm whelk whey whiskey whisky white
whitebait whiting wine wing witlof worcester worcestershire wrap yabby yam yautia yeast yoghurt yogurt
yolk yuzu zaatar zest ziti zucchini
`;

/** Words that tell one kind of a food from another. */
const kinds = `
acid acorn acting action active aged al all amber american anaheim andouille angel arrowroot asian
assorted baby back bag baking ball bar barbecued barn base bavarian bavette bbq beefsteak bell belly
beluga besan best bird bird's birdseye bit bite bittersweet black blackstrap bleached blend blond blonde
blood bloomer blossom blue boiled bok bombay bone bonnet bosc boston bottled bought bow braising bramley
brat bratwurst breakfast bred brewed broad brown brussels buffalo bulb butterhead button calf calves'
candied cane canned canola carcass caribbean carnaroli casserole caster castor caught cellophane centre
ceps chana channa charlotte chateaubriand cheek cherrystone chinese chioggia chipolata choc choi chopped
choux chump chunk chunky citric clarified clear closed clotted coarse cocktail cold cold-pressed
coloring colouring comice compressed concentrated conchiglie condensed confectioner conference
continental cooker cooking corned cornfed cornish country couverture cox cracked creamed creamy creole
crisp crown crunchy crusty crystallised crystallized cultured cumberland cured curly cut dairy dal
danish dark de deli delicious dente desiccated desiree dessert dhal dijon dinosaur distilled dived diver
double dried drinking dry dutch ear easy eat eating edward egyptian elbow en english enoki evaporated
ewe extra eye eyed farmed farmhouse fashioned fast fava fed field fillet fine finger fire firm five
flaked flaky flank flat flavored flavoring flavorless flavoured flavouring flavourless floury flower
food fowl free french fresco fresh frozen frying fuji full gai gala galia garden garni german giant
glace glass glazed globe gluten gold golden good graham grain gram granary granny granulated granule
grass great greek green grey grilling ground grown guajillo guinea habanero hair half hamburger hand
hanout hard harina head heart heavy heirloom helda hemp hen herbes heritage high hispi hock hokkien
home-made homemade hot hothouse iberico iceberg iced idaho indian instant irish iron italian jamaican
japanese jarred jasmine jersey jerusalem joint jumbo jus kalamata ketjap key king kipfler kitchen
knuckle korean kosher la lacinato ladies' laid lan leaf lean lebanese leftover leg leicester light
lightly lima lincolnshire line link lip little littleneck live loin lollo long low lower lowfat lump
machine made madras malthouse manila manuka manzanilla marinated maris marsh marzano mature medium
merguez mexican meyer micro microwave middle mignonette mild mineral mini minute mixed monterey moong
moroccan muscovado mushy napa nashi natural navel navy neck nero nest neutral new nib nicoise boil
nocellara non nonfat nonpareille nonstick northern nuremberg oak old open organic osmotic outdoor oven
ox pak pale palm parma part passion pearled persian petal petits phyllo pickled piece pig pimento
pimiento pinhead pink pip piper piquillo piri plain poblano pod pointed pois pole polish pontiac popped
popping porridge porterhouse portobella pot poultry pouring powdered prepared preserved process
processed provence puffed pure purple purpose puy quahog quality queen quick quill rabe rack rainbow
raising ramen ranch range rapid ras raw razor ready readymade reared red reduced refined refried ribeye
rich rigate rindless ring ripened rise rising risotto river roast roasting rock rolled roma rope rosso
rotisserie rough round royal ruby rump runny russet salted san sandwich savoury savoy scotch scottish
seasoned seasoning sebago seedless self semi semisweet serrano set seven seville shank sharp shaving
sheep sheet shell shoot shop short shoulder sichuan side silken single size skim skimmed skirt slice
slightly smith smoked smokey smoky smooth snap snow sockeye sodium soft solids sour sourced soured
spanish spare sparkling spiral spirit spit sprayed sprig spring springwater sprouting sr stalk star
steel steelcut stem stewed stewing stick still stone stoneground store strand streaky string strip
striped strong stuffed style sum summer sun superfine sushi sustainably swedish sweetened sweetheart
swiss szechuan table tail tap tartare tartaric tasting tasty telegraph tender thai thick thickened thin
thread tie tiger tinned tip tomahawk tongue tonic toor toulouse tri triple trotter turbinado turkish
turtle tuscan ume unbaked unbleached unflavored unflavoured unrefined unsalted unsmoked unsulfured
unsulphured unsweetened urad valencia veg vegan vegetarian velvet vietnamese vindaloo vine vintage
virgin wax waxy wedge welsh whipping whole wholegrain wholemeal wholewheat wild williams wiltshire
winter wombok wood yellow yellowfin york young yukon
`;

const accents = /\p{M}/gu;
const isAscii = /^[ -~]*$/;

/** A word as it is compared: lower case, no accents. */
const plain = (word: string): string => {
  const low = word.toLowerCase().replace(/'s$/, '');
  return isAscii.test(low) ? low : low.normalize('NFD').replace(accents, '');
};

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

/** Inside a name with hyphens only: "ready-to-eat", "tail-on". */
const joiners = new Set('to on off in of and the no per'.split(' '));

/** True when a word is one that foods and their kinds are named by. */
export const isFoodWord = (word: string): boolean =>
  among(all, word) ||
  (word.includes('-') &&
    word.split('-').every((part) => part !== '' && (among(all, part) || joiners.has(part))));

/** True when a word names a food by itself, not only a kind of one. */
export const isFoodName = (word: string): boolean =>
  among(names, word) || among(names, word.slice(word.lastIndexOf('-') + 1));
