import type { Rules } from '#lib/domain/ingredient.ts'
import type { SourceKey } from './source.ts'
import type { Trait } from './trait.ts'

/** What foods of these names are. Names are in lower case without accents; singular and plural are the same. */
export interface FoodRow {
  readonly names: readonly string[]
  /** What it has by being what it is. */
  readonly has: readonly Trait[]
  /** What many of its kind have: the label says. */
  readonly may: readonly Trait[]
  /** What it may have and a label need not say: its maker knows. */
  readonly hidden: readonly Trait[]
  readonly source: SourceKey
  /** Traits of `may` that these rules exempt, because what is left of the allergen is too little to be declared. */
  readonly exempt?: readonly Rules[]
}

interface More {
  readonly may?: readonly Trait[]
  readonly hidden?: readonly Trait[]
  readonly exempt?: readonly Rules[]
}

const row = (source: SourceKey, names: string, has: readonly Trait[], more: More = {}): FoodRow => ({
  names: names.split(',').map((name) => name.trim()),
  has,
  may: more.may ?? [],
  hidden: more.hidden ?? [],
  source,
  ...(more.exempt ? { exempt: more.exempt } : {}),
})

const CEREALS: readonly FoodRow[] = [
  row(
    'fsa-14',
    'flour,plain flour,self raising flour,bread flour,wheat flour,strong flour,wholemeal flour,wheat,spelt,semolina',
    ['wheat'],
  ),
  row('memory', 'bulgur,bulgur wheat,freekeh,seitan,wheat bran,wheat germ,wheatgerm,khorasan,vital wheat gluten,farro,durum', [
    'wheat',
  ]),
  row('fsa-14', 'couscous,udon,roux', ['wheat']),
  row('fsa-14', 'bread,breadcrumb,baguette,ciabatta,sourdough,toast,crouton,white bread,brown bread', ['wheat'], {
    may: ['milk', 'soya', 'sesame', 'lupin'],
  }),
  row('memory', 'panko,pitta,pita,naan,flatbread,focaccia,wrap,flour tortilla,brioche', ['wheat'], {
    may: ['milk', 'eggs', 'soya', 'sesame'],
  }),
  row('fsa-14', 'bun,burger bun,bread roll,bagel', ['wheat'], { may: ['sesame', 'milk', 'eggs', 'soya'] }),
  row('fsa-14', 'pasta,spaghetti,lasagne,macaroni,tagliatelle,penne,orzo,fusilli,linguine,vermicelli', ['wheat'], {
    may: ['eggs', 'lupin'],
  }),
  row('fsa-14', 'egg pasta,fresh egg pasta,egg noodle,fresh pasta', ['wheat', 'eggs']),
  row('memory', 'gnocchi', ['wheat'], { may: ['eggs', 'milk'] }),
  row('memory', 'noodle', [], { may: ['wheat', 'eggs', 'buckwheat'] }),
  row('memory', 'soba,soba noodle,buckwheat noodle', ['buckwheat'], { may: ['wheat'] }),
  row('memory', 'rice noodle,rice vermicelli,glass noodle,rice paper', []),
  row('fsa-14', 'pastry,shortcrust,shortcrust pastry,puff pastry,filo,filo pastry,phyllo,choux', ['wheat'], {
    may: ['milk', 'eggs', 'lard', 'lupin'],
  }),
  row('fsa-14', 'batter,cake,sponge,sponge cake', ['wheat'], { may: ['eggs', 'milk', 'nuts', 'soya'] }),
  row('memory', 'biscuit,sponge finger,ladyfinger,cracker,cookie,digestive biscuit,wafer,cone', ['wheat'], {
    may: ['milk', 'eggs', 'soya', 'nuts', 'sesame'],
  }),
  row('memory', 'rice cracker,crispbread,corn cracker', [], { may: ['wheat', 'soya', 'sesame', 'milk'] }),
  row('memory', 'tortilla,corn tortilla,taco shell', [], { may: ['wheat'] }),
  row('fsa-14', 'rye,rye flour', ['rye']),
  row('memory', 'rye bread,pumpernickel,rye crispbread', ['rye'], { may: ['wheat', 'milk', 'sesame'] }),
  row('coeliac-uk', 'barley,pearl barley,malt,malt extract,barley malt,malt vinegar,malted milk', ['barley']),
  row('fsa-14', 'oat,rolled oat,porridge oat,oatmeal,oat flour,oat bran,oat milk,oat drink,oat cream', ['oats'], {
    may: ['wheat'],
  }),
  row('memory', 'oatcake', ['oats'], { may: ['wheat', 'milk'] }),
  row('memory', 'granola,muesli', ['oats'], { may: ['wheat', 'nuts', 'milk', 'sesame'] }),
  row('codex-1', 'buckwheat,buckwheat flour', ['buckwheat'], { may: ['wheat'] }),
  row('memory', 'rice flour,gram flour,chickpea flour,potato flour,tapioca flour,polenta,cornmeal,maize flour,flaxseed', [], {
    may: ['wheat'],
  }),
  row('memory', 'cornflour,corn flour,baking powder,suet mix,vegetable suet', [], { may: ['wheat'] }),
  row('eu-1169', 'glucose syrup,dextrose,maltodextrin', [], { may: ['wheat', 'barley'], exempt: ['eu', 'uk'] }),
  row('fsa-14', 'lupin,lupin flour,lupin seed,lupini bean', ['lupin']),
]

const SOYA: readonly FoodRow[] = [
  row('fsa-14', 'soy sauce,soya sauce,shoyu,teriyaki,teriyaki sauce', ['soya', 'wheat']),
  row('coeliac-uk', 'tamari', ['soya'], { may: ['wheat'] }),
  row('memory', 'hoisin,hoisin sauce', ['soya', 'wheat'], { may: ['sesame', 'peanuts'] }),
  row('memory', 'miso,miso paste', ['soya'], { may: ['wheat', 'barley', 'fish'] }),
  row('fsa-14', 'soya,soy,tofu,tempeh,edamame,soya mince,soya bean,soybean,soya milk,soya drink,soya cream,soya yogurt', [
    'soya',
  ]),
  row('eu-1169', 'soya oil,soybean oil,vegetable oil', [], { may: ['soya'], exempt: ['eu', 'uk'] }),
  row('memory', 'margarine,vegetable spread,lecithin', [], { may: ['milk', 'soya'] }),
]

const SEA: readonly FoodRow[] = [
  row('fsa-14', 'prawn,shrimp,crab,lobster,scampi,langoustine,crayfish,crab meat', ['crustaceans', 'raw-fish']),
  row('fsa-14', 'shrimp paste,belacan,prawn cracker', ['crustaceans']),
  row('memory', 'surimi,crab stick', ['fish', 'crustaceans'], { may: ['eggs', 'wheat', 'soya'] }),
  row('fsa-14', 'mussel,clam,cockle,oyster,scallop,squid,calamari,octopus,cuttlefish,whelk,snail', ['molluscs', 'raw-fish']),
  row('fsa-14', 'shellfish,seafood', ['crustaceans', 'molluscs', 'raw-fish'], { may: ['fish'] }),
  row('memory', 'squid ink,cuttlefish ink', ['molluscs']),
  row('fsa-14', 'oyster sauce', ['molluscs'], { may: ['wheat', 'soya'] }),
  row('memory', 'oyster mushroom,crab apple', []),
  row(
    'fsa-14',
    'fish,salmon,trout,cod,haddock,mackerel,tuna,sardine,sea bass,seabass,bass,halibut,plaice,monkfish,eel,sole,herring,hake,turbot,white fish,fish fillet',
    ['fish', 'raw-fish'],
  ),
  row('fsa-14', 'anchovy,anchovy paste,anchovy fillet', ['fish']),
  row('nhs-pregnancy', 'smoked salmon,smoked trout,gravlax,cured salmon,cured trout,smoked mackerel,sushi', [
    'fish',
    'cured-fish',
  ]),
  row('nhs-pregnancy', 'swordfish,marlin,shark', ['fish', 'predator-fish']),
  row('fsa-14', 'fish sauce,dashi,caviar,roe,taramasalata,bottarga,bonito flake', ['fish']),
  row('fsa-14', 'worcestershire sauce,worcester sauce,worcestershire style sauce,worcester type sauce', ['fish'], {
    may: ['barley', 'wheat', 'soya'],
  }),
  row('memory', 'brown sauce,steak sauce', [], { may: ['fish', 'barley', 'soya', 'celery'] }),
  row('fsa-14', 'caesar dressing', ['fish', 'eggs', 'milk'], { may: ['mustard'] }),
  row('memory', 'tapenade,puttanesca', [], { may: ['fish'] }),
  row('memory', 'kimchi', [], { may: ['fish', 'crustaceans', 'soya'] }),
  row('memory', 'curry paste,thai curry paste,red curry paste,green curry paste', [], {
    may: ['crustaceans', 'fish', 'mustard', 'celery'],
  }),
]

const NUTS: readonly FoodRow[] = [
  row('fsa-14', 'peanut,groundnut,monkey nut,peanut butter,peanut sauce,groundnut oil,peanut oil', ['peanuts']),
  row('fsa-14', 'satay,satay sauce', ['peanuts'], { may: ['soya', 'wheat', 'crustaceans'] }),
  row('eu-1169', 'almond,ground almond,flaked almond,almond flour,almond butter,almond milk,almond drink', ['almond']),
  row('memory', 'marzipan,almond paste', ['almond'], { may: ['eggs'] }),
  row('memory', 'frangipane', ['almond', 'eggs', 'milk'], { may: ['wheat'] }),
  row('memory', 'amaretti,macaron', ['almond', 'eggs']),
  row('memory', 'almond extract', [], { may: ['almond', 'alcohol'] }),
  row('eu-1169', 'hazelnut,cobnut,filbert,hazelnut oil', ['hazelnut']),
  row('memory', 'gianduja,hazelnut spread,chocolate hazelnut spread', ['hazelnut'], { may: ['milk', 'soya'] }),
  row('eu-1169', 'walnut,walnut oil', ['walnut']),
  row('eu-1169', 'cashew,cashew nut,cashew butter,cashew cream', ['cashew']),
  row('eu-1169', 'pecan,pecan nut', ['pecan']),
  row('eu-1169', 'brazil nut', ['brazil-nut']),
  row('eu-1169', 'pistachio,pistachio nut', ['pistachio']),
  row('eu-1169', 'macadamia,macadamia nut', ['macadamia']),
  row('eu-1169', 'nut,mixed nut,chopped nut,nut butter,nut oil', ['nuts']),
  row('memory', 'praline,romesco', ['nuts'], { may: ['almond', 'hazelnut', 'milk'] }),
  row('memory', 'nougat', ['nuts', 'eggs'], { may: ['almond'] }),
  row('memory', 'baklava', ['nuts', 'wheat'], { may: ['milk'] }),
  row('memory', 'dukkah', ['nuts', 'sesame']),
  row('memory', 'pesto,green pesto,red pesto', ['milk'], { may: ['nuts', 'cashew', 'pine-nut'], hidden: ['rennet'] }),
  row('us-tree-nuts', 'pine nut,pine kernel', ['pine-nut']),
  row('us-tree-nuts', 'chestnut,chestnut flour,chestnut puree', ['chestnut']),
  row('us-tree-nuts', 'coconut,coconut cream,desiccated coconut,coconut oil,coconut flour,coconut butter,coconut water', [
    'coconut',
  ]),
  row('us-tree-nuts', 'coconut milk', ['coconut'], { may: ['sulphites'] }),
  row('memory', 'coconut milk powder', ['coconut'], { may: ['milk'] }),
  row('memory', 'chestnut mushroom,water chestnut,nutmeg,butternut,butternut squash,doughnut peach,tiger nut', []),
  row('fsa-14', 'sesame,sesame seed,tahini,hummus,houmous,halva,zaatar,za atar,gomasio,sesame oil', ['sesame']),
  row('memory', 'falafel', [], { may: ['sesame', 'wheat'] }),
]

const ROOTS_AND_SAUCES: readonly FoodRow[] = [
  row('fsa-14', 'celery,celeriac,celery salt,celery seed,celery leaf', ['celery']),
  row('fsa-14', 'mustard,mustard seed,mustard powder,wholegrain mustard,smooth mustard,piccalilli', ['mustard']),
  row('fsa-14', 'curry powder', [], { may: ['mustard', 'celery', 'wheat'] }),
  row('fsa-14', 'dressing,salad dressing,vinaigrette,marinade', [], {
    may: ['mustard', 'sulphites', 'eggs', 'milk', 'celery', 'fish'],
  }),
  row('memory', 'ketchup,tomato ketchup', [], { may: ['celery', 'sulphites'] }),
  row('memory', 'spice mix,seasoning,mixed spice,ras el hanout,rub', [], { may: ['mustard', 'celery', 'sesame', 'wheat'] }),
  row(
    'fsa-14',
    'dried apricot,raisin,sultana,currant,dried fruit,mixed peel,molasses,pickle,wine vinegar,white wine vinegar,red wine vinegar',
    ['sulphites'],
  ),
  row(
    'memory',
    'cider vinegar,sherry vinegar,balsamic vinegar,vinegar,prune,date,dried fig,caper,gherkin,lemon juice from a bottle',
    [],
    {
      may: ['sulphites'],
    },
  ),
  row('memory', 'rice vinegar,rice wine vinegar', [], { may: ['wheat'] }),
]

const MILK: readonly FoodRow[] = [
  row(
    'fsa-14',
    'milk,whole milk,milk powder,cream,double cream,single cream,whipping cream,sour cream,buttermilk,whey,casein,lactose',
    ['milk'],
  ),
  row('memory', 'goat milk,goat s milk,goat yogurt,sheep milk,sheep s milk,sheep yogurt', ['milk']),
  row('fsa-14', 'yogurt,yoghurt,creme fraiche,fromage frais,kefir,mascarpone', ['milk']),
  row('efsa-lactose', 'butter,ghee,clarified butter,brown butter', ['milk', 'little-lactose']),
  row('efsa-lactose', 'hard cheese,mature cheese,hard mature cheese,cheddar,comte', ['milk', 'little-lactose'], {
    hidden: ['rennet'],
  }),
  row('memory', 'parmesan,grana,pecorino,gruyere,manchego', ['milk', 'little-lactose', 'rennet'], { may: ['eggs'] }),
  row('fsa-14', 'cheese,mozzarella,feta,ricotta,halloumi,paneer,cream cheese,cottage cheese,quark', ['milk'], {
    hidden: ['rennet'],
  }),
  row('nhs-pregnancy', 'goat cheese,soft cheese,goat s cheese,sheep cheese,sheep s cheese', ['milk'], {
    may: ['mould-cheese', 'unpasteurised'],
    hidden: ['rennet'],
  }),
  row(
    'nhs-pregnancy',
    'brie,camembert,chevre,blue cheese,gorgonzola,roquefort,taleggio,rind washed cheese',
    ['milk', 'mould-cheese'],
    {
      may: ['unpasteurised'],
      hidden: ['rennet'],
    },
  ),
  row('nhs-pregnancy', 'raw milk,unpasteurised milk,unpasteurised cream', ['milk', 'unpasteurised']),
  row('nhs-pregnancy', 'raw milk cheese,unpasteurised cheese', ['milk', 'unpasteurised'], { hidden: ['rennet'] }),
  row('fsa-14', 'chocolate,dark chocolate,chocolate chip,cocoa nib', [], { may: ['milk', 'soya', 'nuts'] }),
  row('fsa-14', 'milk chocolate,white chocolate', ['milk'], { may: ['soya', 'nuts'] }),
  row('memory', 'ice cream', ['milk'], { may: ['eggs', 'nuts', 'wheat', 'soya'], hidden: ['gelatine'] }),
  row('memory', 'caramel,toffee,fudge,caramel sauce,toffee sauce,bechamel,white sauce', ['milk'], { may: ['wheat', 'soya'] }),
  row(
    'memory',
    'butter bean,cocoa butter,shea butter,cream of tartar,cream soda,rice milk,hemp milk,coconut yogurt,apple butter',
    [],
  ),
]

const EGGS: readonly FoodRow[] = [
  row('fsa-14', 'egg,egg yolk,egg white,yolk,hen egg,duck egg,goose egg,quail egg', ['eggs', 'raw-egg']),
  row('fsa-14', 'mayonnaise,aioli,mayo,tartare sauce,remoulade', ['eggs', 'raw-egg'], { may: ['mustard'] }),
  row('fsa-14', 'hollandaise,bearnaise', ['eggs', 'milk', 'raw-egg']),
  row('fsa-14', 'meringue', ['eggs', 'raw-egg']),
  row('fsa-14', 'custard,quiche', ['eggs', 'milk'], { may: ['wheat'] }),
  row('memory', 'custard powder', [], { may: ['milk', 'eggs', 'wheat'] }),
  row('memory', 'salad cream', ['eggs', 'mustard']),
  row('memory', 'lemon curd', ['eggs', 'milk']),
  row('fsa-14', 'mousse', ['eggs', 'raw-egg'], { may: ['milk', 'gelatine'] }),
  row('memory', 'eggplant,egg plant', []),
]

const RAW: readonly Trait[] = ['raw-meat']
const MEAT: readonly FoodRow[] = [
  row('iso-23662', 'chicken,duck,goose,turkey,poussin,guinea fowl,quail,chicken thigh,chicken breast,chicken wing,chicken leg', [
    'poultry',
    ...RAW,
  ]),
  row('iso-23662', 'meat,beef,steak,veal,lamb,mutton,hogget,brisket,oxtail,mince,goat,marrow', ['meat', ...RAW]),
  row('iso-23662', 'pork,pork belly,pork shoulder,gammon,bacon,lardon,pork fat', ['pork', ...RAW]),
  row('nhs-pregnancy', 'ham,cooked ham', ['pork']),
  row('nhs-pregnancy', 'prosciutto,salami,chorizo,pancetta,parma ham,cured ham,air dried ham,nduja,coppa', [
    'pork',
    'cured-meat',
  ]),
  row('memory', 'sausage,sausage meat,chipolata', ['meat', ...RAW], { may: ['pork', 'wheat', 'sulphites', 'soya', 'milk'] }),
  row('memory', 'sweetbread,kidney,tripe,hot dog,frankfurter,rillette,confit', ['meat']),
  row('memory', 'lamb s lettuce,lamb lettuce,beef tomato,kidney bean,chicken of the wood', []),
  row('memory', 'mincemeat,christmas pudding', [], { may: ['meat', 'alcohol', 'nuts', 'wheat', 'sulphites'] }),
  row('memory', 'black pudding,haggis', ['meat'], { may: ['pork', 'barley', 'oats', 'wheat'] }),
  row('nhs-pregnancy', 'venison,rabbit,hare,pheasant,partridge,grouse,wild boar,pigeon', ['game', 'lead-shot', ...RAW]),
  row('nhs-pregnancy', 'liver,chicken liver,duck liver,calf liver,lamb liver,foie gras', ['liver', ...RAW]),
  row('nhs-pregnancy', 'pate,liver pate,mushroom pate,vegetable pate,terrine', ['pate'], {
    may: ['meat', 'liver', 'milk', 'eggs', 'pork'],
  }),
  row('iso-23662', 'lard', ['lard']),
  row('iso-23662', 'suet,beef suet,dripping,beef dripping,tallow,goose fat,duck fat,chicken fat', ['meat'], { may: ['wheat'] }),
  row('iso-23662', 'gelatine,gelatin,leaf gelatine', ['gelatine']),
  row('memory', 'jelly,jelly cube,marshmallow,gummy', ['gelatine'], { may: ['eggs', 'carmine'] }),
  row('memory', 'redcurrant jelly,mint jelly,quince jelly,apple jelly,vegetable rennet,agar,agar agar,pectin', []),
  row('memory', 'panna cotta', ['milk', 'gelatine']),
  row('iso-23662', 'rennet,animal rennet', ['rennet']),
  row('iso-23662', 'carmine,cochineal', ['carmine']),
  row('memory', 'red food colouring,food colouring,sprinkle', [], { may: ['carmine'], hidden: ['carmine'] }),
  row('iso-23662', 'honey,honeycomb', ['honey']),
  row('at-risk', 'bean sprout,alfalfa,sprouted seed,mung bean sprout', ['sprouts']),
  row('memory', 'brussels sprout,brussel sprout', []),
]

const STOCK: readonly Trait[] = ['celery', 'wheat', 'barley', 'milk', 'soya', 'fish', 'mustard']
const STOCKS: readonly FoodRow[] = [
  row('fsa-14', 'stock,stock cube,stock powder,bouillon,broth,gravy,gravy granule,consomme', [], {
    may: [...STOCK, 'meat', 'poultry'],
  }),
  row('memory', 'soup,jus,demi glace', [], { may: [...STOCK, 'meat'] }),
  row('fsa-14', 'vegetable stock,vegetable stock cube,vegetable bouillon,vegetable broth', [], { may: STOCK }),
  row('fsa-14', 'chicken stock,chicken stock cube,chicken broth,turkey stock,duck stock', ['poultry'], { may: STOCK }),
  row('fsa-14', 'beef stock,beef stock cube,veal stock,lamb stock,meat stock,bone broth,beef broth', ['meat'], { may: STOCK }),
  row('fsa-14', 'fish stock,shellfish stock,fish bouillon', ['fish'], {
    may: ['celery', 'wheat', 'milk', 'crustaceans', 'molluscs'],
  }),
]

const DRINK: readonly FoodRow[] = [
  row(
    'fsa-14',
    'wine,white wine,red wine,rose wine,dry white wine,dry wine,sparkling wine,champagne,cider,dry cider,perry',
    ['alcohol', 'sulphites'],
    { may: ['eggs', 'milk'], hidden: ['isinglass'] },
  ),
  row('memory', 'sherry,port,madeira,marsala,vermouth,rice wine,shaoxing wine,cream sherry', ['alcohol'], {
    may: ['sulphites', 'wheat'],
    hidden: ['isinglass'],
  }),
  row('coeliac-uk', 'beer,lager,stout,ale', ['alcohol', 'barley'], { may: ['wheat', 'sulphites'], hidden: ['isinglass'] }),
  row('codex-24', 'brandy,rum,vodka,gin,whisky,whiskey,liqueur,bourbon,calvados,kirsch,cognac,tequila,grappa,mirin,sake,spirit', [
    'alcohol',
  ]),
  row('memory', 'amaretto', ['alcohol'], { may: ['almond'] }),
  row('memory', 'mead', ['alcohol', 'honey', 'sulphites']),
  row('codex-24', 'vanilla extract,vanilla essence', ['alcohol']),
  row('memory', 'ginger beer,root beer,ginger ale,ginger wine cordial,wine gum', [], { may: ['gelatine', 'alcohol'] }),
]

/**
 * The map from a food's name to what it has: the FSA's leaflet of the 14 allergens where the row says so, otherwise the source beside it;
 * rows from memory are well known and unsourced. A start for the eye that reads the label, never instead of it.
 */
export const FOOD_ROWS: readonly FoodRow[] = [
  ...CEREALS,
  ...SOYA,
  ...SEA,
  ...NUTS,
  ...ROOTS_AND_SAUCES,
  ...MILK,
  ...EGGS,
  ...MEAT,
  ...STOCKS,
  ...DRINK,
]

/**
 * Foods that are one thing and nothing else when their name says no more: what is not in their name is not in them. Our own list, common
 * practice, no source. Ground spices, tins, mixes and what is often dusted or dipped are not on it.
 */
export const PLAIN_FOODS: readonly string[] = [
  ...'water,ice,salt,sea salt,table salt,sugar,caster sugar,granulated sugar,demerara sugar,brown sugar,muscovado sugar'.split(
    ',',
  ),
  ...'olive oil,rapeseed oil,sunflower oil,rice,white rice,long grain white rice,long grain rice,basmati rice,brown rice'.split(
    ',',
  ),
  ...'potato,new potato,sweet potato,carrot,parsnip,beetroot,swede,turnip,radish,leek,onion,red onion,spring onion,shallot,garlic,garlic clove,clove of garlic'.split(
    ',',
  ),
  ...'cabbage,red cabbage,white cabbage,savoy cabbage,kale,spinach,chard,lettuce,rocket,watercress,chicory,radicchio,endive,pak choi'.split(
    ',',
  ),
  ...'broccoli,cauliflower,brussels sprout,fennel,fennel bulb,asparagus,artichoke,mushroom,chestnut mushroom,oyster mushroom'.split(
    ',',
  ),
  ...'aubergine,courgette,pepper,red pepper,green pepper,tomato,cherry tomato,plum tomato,squash,butternut squash,pumpkin,cucumber,sweetcorn'.split(
    ',',
  ),
  ...'green bean,runner bean,french bean,broad bean,pea,sugar snap,okra,avocado,chilli,red chilli,green chilli,ginger'.split(','),
  ...'apple,pear,quince,plum,cherry,peach,nectarine,apricot,rhubarb,fig,strawberry,raspberry,blackberry,blueberry,gooseberry,redcurrant'.split(
    ',',
  ),
  ...'banana,mango,pineapple,melon,watermelon,grape,orange,lemon,lime,grapefruit,pomegranate,kiwi'.split(','),
  ...'egg,hen egg,duck egg,chicken,chicken thigh,chicken breast,chicken leg,duck,turkey,beef,steak,lamb,pork,pork belly,venison'.split(
    ',',
  ),
  ...'salmon,trout,cod,haddock,mackerel,sea bass,celery,celeriac,milk,whole milk,butter,cream,double cream,single cream'.split(
    ',',
  ),
  ...'whipping cream,sweetcorn,cinnamon stick,black peppercorn,peppercorn'.split(','),
  ...'parsley,flat parsley,coriander,basil,mint,tarragon,chervil,dill,chive,sage,rosemary,thyme,thyme sprig,oregano,marjoram,bay leaf,bay leave,bay'.split(
    ',',
  ),
]
