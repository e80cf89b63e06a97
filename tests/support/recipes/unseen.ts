import type { RecipeCase } from './case.ts'

/**
 * Fourteen recipes in many hands, written with their reading before the reader saw them, after those of held-out.ts had been mended. At
 * first sight: 94 of 105 lines, 78 of 104 times and heats; of 26 things not right 12 were not flagged. Then the reader was mended by what
 * they showed, so by now they are ordinary cases; two readings were written anew on reflection.
 */
export const UNSEEN: readonly RecipeCase[] = [
  {
    name: 'pork belly, terse',
    text: `belly pork w fennel (6)

1.8 kg belly, scored
2 tbsp fennel seed
3 onions, quartered
300 ml cider
salt

night before: salt skin, leave uncovered in fridge
oven 220. 30 mins
turn down to 160, cider + onions in, 2½ hrs
rest 20 mins somewhere warm
`,
    title: 'belly pork w fennel',
    yields: '6',
    ingredients: ['9/5 kg | belly', '2 tbsp | fennel seed', '3 | onions', '300 ml | cider', '- | salt'],
    steps: [[], ['oven 220', 'takes 30'], ['oven 160', 'takes 150'], ['rest 20']],
  },
  {
    name: 'kedgeree, cookbook prose',
    text: `A Gentle Kedgeree

Enough for four hungry people

350g undyed smoked haddock
250g long-grain rice
4 eggs
60g butter
1 large onion, finely chopped
1 heaped tsp mild curry powder
a 5cm piece of ginger, peeled and grated
juice of 2 lemons
a generous pinch of turmeric
small bunch of parsley, chopped

Put the haddock in a shallow pan, cover with cold water and bring it slowly to a simmer. Turn off the heat, put on a lid and let it sit for ten minutes or so. Keep the water.

Lower the eggs into boiling water and give them exactly seven minutes, then cool them under the tap.

Soften the onion in the butter for a good 8 minutes, until it is golden at the edges. Stir in the ginger, curry powder and turmeric and cook for 2 minutes more. Add the rice, turn it about in the butter for a minute, then pour on 600ml of the haddock water. Cover and cook over the lowest heat for 12–14 minutes. Take it off the heat and leave it, still covered, for another five.

Flake in the fish, add the lemon juice and parsley, and put the quartered eggs on top.
`,
    title: 'A Gentle Kedgeree',
    yields: '4',
    ingredients: [
      '350 g | undyed smoked haddock',
      '250 g | long-grain rice',
      '4 | eggs',
      '60 g | butter',
      '1 large | onion',
      '1 tsp | mild curry powder',
      '1 piece | ginger',
      '2 | juice of lemons',
      '1 pinch | turmeric',
      '1 small bunch | parsley',
    ],
    steps: [['rest 10'], ['takes 7'], ['takes 8', 'takes 2', 'takes 1', 'takes 12..14', 'rest 5'], []],
  },
  {
    name: 'short ribs, American',
    text: `Braised Short Ribs with Plum
Serves 6–8
Active time: 40 minutes
Total time: 4 hours

INGREDIENTS

5 lb bone-in beef short ribs (about 10)
1 tablespoon kosher salt
2 Tbsp neutral oil
2 cups dry red wine
3 cups low-sodium beef stock
1 (28-oz) can whole plum tomatoes
8 garlic cloves, smashed
1½ lb plums, pitted
2 sprigs thyme
¼ cup packed brown sugar

DIRECTIONS

Season ribs with salt and let stand at room temperature for 1 hour.

Heat oven to 325°F. Heat oil in a Dutch oven over medium-high. Working in batches, brown ribs until deeply colored, about 4 minutes per side. Transfer to a plate.

Add wine and boil until reduced by half, 6 to 8 minutes. Add stock, tomatoes, garlic and thyme, return the ribs, cover and braise in the oven for 2½ to 3 hours, until fork-tender.

Meanwhile toss plums with sugar. Roast on a sheet pan for the last 30 minutes.

Let ribs rest in the liquid 15 minutes. Skim the fat. DO AHEAD: Ribs can be braised up to 3 days ahead. Reheat, covered, at 300°F for 45 minutes.
`,
    title: 'Braised Short Ribs with Plum',
    yields: '6..8',
    ingredients: [
      '5 lb | bone-in beef short ribs',
      '1 tbsp | kosher salt',
      '2 tbsp | neutral oil',
      '2 cup | dry red wine',
      '3 cup | low-sodium beef stock',
      '1 can / 28 oz | whole plum tomatoes',
      '8 | garlic cloves',
      '3/2 lb | plums',
      '2 sprig | thyme',
      '1/4 cup | packed brown sugar',
    ],
    steps: [
      ['rest 60'],
      ['oven 162.8', 'takes 8'],
      ['takes 6..8', 'takes 150..180'],
      ['mark 30'],
      ['rest 15', 'ahead ..4320', 'oven 148.9', 'takes 45'],
    ],
  },
  {
    name: 'treacle tart, British with gas marks',
    text: `TREACLE TART

Serves eight

For the pastry:
8 oz plain flour
4 oz cold butter, diced
1 egg yolk
2–3 tablespoons iced water

For the filling:
1 lb 2 oz golden syrup
5 oz fresh white breadcrumbs
finely grated zest of 1 lemon
1 tablespoon lemon juice
1/4 pint double cream

1. Rub the butter into the flour. Add the yolk and enough water to bring it together. Wrap and rest in the fridge for at least half an hour.
2. Roll out and line a 9 in loose-bottomed tin. Chill again for 20 minutes. Heat the oven to gas mark 5, 190°C.
3. Bake blind for 15 minutes, take out the beans and give it 5 minutes more.
4. Warm the syrup, stir in the crumbs, zest, juice and cream and let the mixture stand for 10 mins. Pour into the case.
5. Lower the oven to gas 3 (160°C) and bake the tart for 35 to 40 minutes, till just set with a slight wobble. Leave in the tin for a quarter of an hour before turning out.
`,
    title: 'TREACLE TART',
    yields: '8',
    ingredients: [
      '8 oz | plain flour',
      '4 oz | cold butter',
      '1 | egg yolk',
      '2..3 tbsp | iced water',
      '9/8 lb | golden syrup',
      '5 oz | fresh white breadcrumbs',
      '1 | finely grated zest of lemon',
      '1 tbsp | lemon juice',
      '1/4 pint | double cream',
    ],
    steps: [
      ['chill 30..'],
      ['chill 20', 'oven 190'],
      ['takes 15', 'takes 5'],
      ['rest 10'],
      ['oven 160', 'takes 35..40', 'rest 15'],
    ],
  },
  {
    name: 'barramundi, Australian',
    text: `Barbecued barramundi with macadamia crumb
SERVES 4 // PREP 20 MIN // COOK 15 MIN

4 x 180g barramundi fillets, skin on
1/2 cup (70g) macadamias
1 tbs olive oil
1 long red chilli, deseeded
2 limes, halved
2 bunches broccolini
1 tsp sea salt flakes

Preheat barbecue hotplate on high. Meanwhile, preheat oven to 180°C (160°C fan-forced).

Spread macadamias over a tray and roast for 6–8 mins or until golden. Cool for 5 mins, then chop with the chilli.

Brush fish with oil. Cook, skin-side down, for 4 mins, then turn and cook for a further 2–3 mins or until just cooked through. Rest for 2 mins.

Blanch broccolini in boiling water for 90 seconds. Serve with the fish, crumb and limes.
`,
    title: 'Barbecued barramundi with macadamia crumb',
    yields: '4',
    ingredients: [
      '4 / 180 g | barramundi fillets',
      '1/2 cup | macadamias',
      '1 tbsp | olive oil',
      '1 | long red chilli',
      '2 | limes',
      '2 bunch | broccolini',
      '1 tsp | sea salt flakes',
    ],
    steps: [['oven 180'], ['takes 6..8', 'cool 5'], ['takes 4', 'takes 2..3', 'rest 2'], ['takes 1.5']],
  },
  {
    name: 'red cabbage, continental commas',
    decimal: ',',
    text: `Red cabbage with apples

For 6 persons

1,2 kg red cabbage
2 apples (Boskoop), in pieces
1 onion
0,75 dl red wine vinegar
2,5 dl apple juice
3 cloves
1 bay leaf
40 g goose fat
1 tbsp redcurrant jelly

Preparation

1. Slice the cabbage finely, mix with the vinegar and 1,5 tsp salt and leave to marinate for 2 hours, better overnight.
2. Fry the onion in the goose fat for 5 min. Add the cabbage, apples, juice and spices.
3. Braise covered in the oven at 150 °C top and bottom heat for approx. 1,5 hours, stirring every half hour.
4. Stir in the jelly. Tastes best after standing 1 day; reheat for 20 min over low heat.
`,
    title: 'Red cabbage with apples',
    yields: '6',
    ingredients: [
      '6/5 kg | red cabbage',
      '2 | apples',
      '1 | onion',
      '3/4 dl | red wine vinegar',
      '5/2 dl | apple juice',
      '3 | cloves',
      '1 | bay leaf',
      '40 g | goose fat',
      '1 tbsp | redcurrant jelly',
    ],
    steps: [['marinate 120', 'marinate 480..960'], ['takes 5'], ['oven 150', 'takes 90', 'every 30'], ['rest 1440', 'takes 20']],
  },
  {
    name: 'dal, graph of a page',
    text: JSON.stringify({
      '@context': 'https://schema.org',
      '@graph': [
        { '@type': 'WebSite', name: 'A kitchen' },
        { '@type': ['BreadcrumbList'], itemListElement: [{ '@type': 'ListItem', position: 1, name: 'Home' }] },
        {
          '@type': ['Recipe', 'NewsArticle'],
          name: 'Smoky black dal',
          image: ['https://example.org/1.jpg', { '@type': 'ImageObject', url: 'https://example.org/2.jpg' }],
          recipeYield: ['4', '4 servings'],
          prepTime: 'PT15M',
          cookTime: 'PT3H',
          suitableForDiet: 'https://schema.org/VegetarianDiet',
          recipeIngredient: [
            '200g whole black lentils',
            '1 x 400g tin kidney beans, drained and rinsed',
            '2 tbsp ghee',
            '1 onion, finely chopped',
            '3cm piece ginger, grated',
            '2 tsp ground cumin',
            '100ml double cream, plus extra to serve',
          ],
          recipeInstructions: [
            {
              '@type': 'HowToSection',
              name: 'Lentils',
              itemListElement: [
                { '@type': 'HowToStep', text: 'Soak the lentils in cold water overnight, then drain.' },
                {
                  '@type': 'HowToStep',
                  text: 'Cover with 1.5 litres water, bring to the boil and simmer for 50 mins-1 hr until soft.',
                },
              ],
            },
            {
              '@type': 'HowToSection',
              name: 'Masala',
              itemListElement: [
                {
                  '@type': 'HowToStep',
                  text: 'Heat the ghee and fry the onion for 10-12 mins until deep brown. Add the ginger and cumin and sizzle for 30 secs.',
                },
                {
                  '@type': 'HowToStep',
                  text: 'Add the lentils, beans and cream and cook over a very low heat, stirring often, for 1½-2 hrs. Can be chilled for up to 3 days.',
                },
              ],
            },
          ],
        },
      ],
    }),
    title: 'Smoky black dal',
    yields: '4',
    ingredients: [
      '200 g | whole black lentils',
      '1 tin / 400 g | kidney beans',
      '2 tbsp | ghee',
      '1 | onion',
      '1 piece | ginger',
      '2 tsp | ground cumin',
      '100 ml | double cream',
    ],
    steps: [['soak 480..960'], ['takes 50..60'], ['takes 10..12', 'takes 0.5'], ['takes 90..120', 'ahead ..4320']],
  },
  {
    name: 'pot roast chicken, one string of a page',
    text: `<html><head><title>x</title>
<script type="application/ld+json">
{"@context":"http://schema.org/","@type":"http://schema.org/Recipe","name":"Pot-roast chicken &amp; leeks","yield":"Serves 4 people",
"totalTime":"PT1H50M","ingredients":["1 chicken, about 1.6kg","3 leeks, thickly sliced","1 tbsp butter","250ml dry white wine","&frac12; lemon","Few sprigs tarragon"],
"recipeInstructions":"<p>Heat the oven to 180C/fan 160C/gas 4.</p><p>Brown the chicken all over in the butter for about 15 minutes.</p><p>Add the leeks, lemon and wine, cover and cook in the oven for 1 hour 10 minutes. Remove the lid for the final 15 minutes.</p><p>Check that the thigh is at least 74C. Rest for 10-15 minutes; carve at the table.</p>"}
</script></head><body><h1>Nothing</h1></body></html>`,
    title: 'Pot-roast chicken & leeks',
    yields: '4',
    ingredients: [
      '1 | chicken',
      '3 | leeks',
      '1 tbsp | butter',
      '250 ml | dry white wine',
      '1/2 | lemon',
      '- | Few sprigs tarragon',
    ],
    steps: [['oven 180'], ['takes 15'], ['takes 70', 'mark 15'], ['core 74', 'rest 10..15']],
  },
  {
    name: 'focaccia, weekend baker',
    text: `No-hurry focaccia
makes 1 large tray

DOUGH
500g strong white bread flour
400ml lukewarm water
7g sachet fast-action yeast
10g fine salt
4 tbsp extra-virgin olive oil, plus more for the tin

TOPPING
1 tsp flaky salt
leaves from 3 rosemary sprigs

METHOD
Mix flour, yeast, salt and water to a sticky dough. Cover and leave for 10 minutes. Stretch and fold in the bowl, then repeat three more times at 30-minute intervals.
Cover and refrigerate for 12 to 18 hours.
Oil a 30 x 20 cm tin and tip in the dough. Let it prove at room temperature until very bubbly, 2-3 hours depending on the weather.
Set the oven to 230°C (210°C fan), with a tray at the bottom. Dimple the dough, scatter over the topping and bake for 20 to 25 min. Cool on a rack for at least 10 min.
`,
    title: 'No-hurry focaccia',
    yields: '1',
    ingredients: [
      '500 g | strong white bread flour',
      '400 ml | lukewarm water',
      '1 sachet / 7 g | fast-action yeast',
      '10 g | fine salt',
      '4 tbsp | extra-virgin olive oil',
      '1 tsp | flaky salt',
      '3 | leaves from rosemary sprigs',
    ],
    steps: [['rest 10', 'every 30'], ['chill 720..1080'], ['rise 120..180'], ['oven 230', 'takes 20..25', 'cool 10..']],
  },
  {
    name: 'duck legs, e-mail to a friend',
    text: `Duck legs the lazy way

You asked for it, so here it is.

For two you want 2 duck legs, a head of garlic, a glass of wine and some thyme.

Salt the legs and forget about them in the fridge for a day. Next day wipe them, and into a small dish they go, with the garlic halved across. Oven at 150, three hours, no need to look. Pour off the fat (keep it!). Turn the oven up to 200 fan for the last quarter of an hour so the skin crisps. Pour the wine into the dish and bubble it down for five minutes. They will sit happily for half an hour in a warm place.
`,
    title: 'Duck legs the lazy way',
    yields: '2',
    ingredients: ['2 | duck legs', '1 head | garlic', '1 glass | wine', '- | some thyme'],
    steps: [['chill 1440', 'oven 150', 'takes 180', 'oven 220', 'mark 15', 'takes 5', 'rest 30']],
  },
  {
    name: 'lemon posset, numbered with hours ahead',
    text: `Lemon & bay posset
Makes 6 small glasses
Prep time: 5 mins
Cook time: 10 mins
Chilling: 4 hrs

• 600ml double cream
• 150g caster sugar
• 2 unwaxed lemons, zest and juice (about 75ml)
• 3 bay leaves
• 12 shortbread fingers, to serve

1) Put the cream, sugar, bay and zest in a large pan. Bring to the boil over a medium heat, then boil for exactly 3 mins, stirring all the time.
2) Off the heat, whisk in the juice. Infuse for 15 mins, then strain into a jug.
3) Divide between 6 glasses, cool, then chill for a minimum of 4 hrs or up to 2 days.
4) Take out of the fridge 10 mins before serving.
`,
    title: 'Lemon & bay posset',
    yields: '6',
    ingredients: [
      '600 ml | double cream',
      '150 g | caster sugar',
      '2 | unwaxed lemons',
      '3 | bay leaves',
      '12 | shortbread fingers',
    ],
    steps: [['takes 3'], ['soak 15'], ['chill 240..2880'], ['mark 10']],
  },
  {
    name: 'tagine, chatty with ranges',
    text: `Lamb, apricot & almond tagine

For 4-6

900g lamb neck, in 4cm chunks
2 onions, grated
3 fat cloves of garlic
2 tsp each of ground ginger and cumin
1 cinnamon stick
a good pinch of saffron, soaked in 2 tbsp warm water
200 g dried apricots
1 litre lamb or chicken stock
50g whole blanched almonds
Salt and black pepper

Toss the lamb with the spices and half the oil. Cover and leave for as long as you can: an hour is good, a whole day in the fridge is better.

Brown the meat in 3 batches, 5-6 mins a batch. Fry the onion and garlic gently for 10 to 12 mins.

Everything except the apricots and almonds goes in. Simmer, half covered, for an hour and a quarter. Add the apricots and give it another 30 to 40 mins, until the lamb falls apart when you look at it.

Toast the almonds at 180C for 8 mins (watch them). If making ahead, cool quickly and keep in the fridge for up to 2 days; reheat until piping hot, 75C in the middle.
`,
    title: 'Lamb, apricot & almond tagine',
    yields: '4..6',
    ingredients: [
      '900 g | lamb neck',
      '2 | onions',
      '3 fat clove | garlic',
      '2 tsp | each of ground ginger and cumin',
      '1 | cinnamon stick',
      '1 good pinch | saffron',
      '200 g | dried apricots',
      '1 l | lamb or chicken stock',
      '50 g | whole blanched almonds',
      '- | Salt and black pepper',
    ],
    steps: [
      ['marinate 60', 'chill 1440'],
      ['takes 5..6', 'takes 10..12'],
      ['takes 75', 'takes 30..40'],
      ['oven 180', 'takes 8', 'ahead ..2880', 'core 75'],
    ],
  },
  {
    name: 'fried chicken, American with fat and core',
    text: `Buttermilk Fried Chicken
Yield: 4 to 6 servings

For the brine:
1 quart buttermilk
2 tablespoons hot sauce
1 tablespoon plus 1 teaspoon salt
8 bone-in chicken thighs (about 3 pounds)

For the dredge:
2½ cups all-purpose flour
½ cup cornstarch
1 tsp. garlic powder
2 quarts peanut oil, for frying

STEP 1
Combine buttermilk, hot sauce and salt, submerge the chicken and refrigerate at least 8 hours, preferably 24.

STEP 2
Whisk flour, cornstarch and garlic powder. Dredge chicken, pressing firmly, and let sit on a rack 30 minutes.

STEP 3
Heat oil in a large pot to 350 degrees. Fry 4 pieces at a time, turning once, 12 to 14 minutes, until thermometer reads 165. Keep warm in a 200°F oven while you fry the rest.

STEP 4
Let cool for 5 min. before serving.
`,
    title: 'Buttermilk Fried Chicken',
    yields: '4..6',
    ingredients: [
      '1 quart | buttermilk',
      '2 tbsp | hot sauce',
      '4/3 tbsp | salt',
      '8 | bone-in chicken thighs',
      '5/2 cup | all-purpose flour',
      '1/2 cup | cornstarch',
      '1 tsp | garlic powder',
      '2 quart | peanut oil',
    ],
    steps: [['chill 480..', 'chill 1440'], ['rest 30'], ['fat 176.7', 'takes 12..14', 'core 73.9', 'oven 93.3'], ['cool 5']],
  },
  {
    name: 'mushroom tartlets, mixed units',
    text: `Mushroom & chestnut tartlets

Makes 24

1 x 375g pack ready-rolled puff pastry
500 g/1 lb 2 oz chestnut mushrooms, sliced
25 g (1 oz) butter
2 shallots
150 ml/¼ pint crème fraîche
2-3 tsp chopped tarragon
Half a nutmeg, grated
1 egg, beaten, to glaze

Cut out 24 rounds with a 6cm cutter and press into mini-muffin tins. Prick, and freeze for 15 minutes.

Preheat the oven to 200°C, 400°F, Gas Mark 6. Bake the cases from frozen for 10 minutes.

Meanwhile fry the shallots in the butter for 4-5 minutes. Turn up the heat, tip in the mushrooms and cook for about ten minutes more, until all the liquid has gone. Season, and stir in the crème fraîche, tarragon and nutmeg.

Fill and bake at 180°C for a further 8 to 10 minutes. They can be filled several hours in advance and baked at the last minute. Best within an hour of baking.
`,
    title: 'Mushroom & chestnut tartlets',
    yields: '24',
    ingredients: [
      '1 pack / 375 g | ready-rolled puff pastry',
      '500 g | chestnut mushrooms',
      '25 g | butter',
      '2 | shallots',
      '150 ml | crème fraîche',
      '2..3 tsp | chopped tarragon',
      '1/2 | nutmeg',
      '1 | egg',
    ],
    steps: [
      ['freeze 15'],
      ['oven 200', 'takes 10'],
      ['takes 4..5', 'takes 10'],
      ['oven 180', 'takes 8..10', 'ahead ..360', 'ahead ..60'],
    ],
  },
]

/**
 * Ten more, written with their reading after that, before the reader saw them. At first sight: 63 of 73 lines (eight of the ten lost to one
 * sign of a list) and 58 of 68 times and heats; 6 of 20 wrong things not flagged.
 */
export const UNSEEN_LATER: readonly RecipeCase[] = [
  {
    name: 'gnocchi, bare notes',
    text: `gnocchi w sage
for 4

1kg old potatoes
250g flour + extra
1 egg
80g butter
20 sage leaves

bake potatoes whole 200 fan, 1hr
rice while hot, flour egg salt in. knead 1 min no more
roll, cut 2cm. tray, floured. keeps 2h in fridge
boil till they float + 30 sec
brown butter w sage 3-4min
`,
    title: 'gnocchi w sage',
    yields: '4',
    ingredients: ['1 kg | old potatoes', '250 g | flour', '1 | egg', '80 g | butter', '20 | sage leaves'],
    steps: [['oven 220', 'takes 60'], ['takes 1'], ['ahead ..120'], ['takes 0.5'], ['takes 3..4']],
  },
  {
    name: 'venison pie, old-fashioned prose',
    text: `Raised Venison Pie

Sufficient for ten persons

Two pounds of shoulder of venison, cut small
Half a pound of streaky bacon
One and a half pounds of plain flour
Six ounces of lard
Half a pint of water
A dozen juniper berries, crushed
A wineglass of port
Three leaves of gelatine

Steep the venison in the port with the juniper for a night.

Bring the lard and water to the boil, pour upon the flour, and work to a smooth paste. Let it stand, covered, for twenty minutes.

Raise the pie, fill it, put on the lid and bake in a hot oven for half an hour; then lower to a moderate oven and continue for an hour and three-quarters.

When the pie has cooled for two hours, pour in the gelatine, melted in the stock. Set it in a cold place until the next day.
`,
    title: 'Raised Venison Pie',
    yields: '10',
    ingredients: [
      '2 lb | shoulder of venison',
      '1/2 lb | streaky bacon',
      '3/2 lb | plain flour',
      '6 oz | lard',
      '1/2 pint | water',
      '12 | juniper berries',
      '1 wineglass | port',
      '3 | leaves of gelatine',
    ],
    steps: [['soak 480..960'], ['rest 20'], ['oven 220', 'takes 30', 'oven 180', 'takes 105'], ['cool 120']],
  },
  {
    name: 'sheet-pan salmon, American card',
    text: `Sheet-Pan Salmon with Corn
Prep: 15 mins | Cook: 25 mins | Total: 40 mins | Serves: 4

Ingredients:
▢ 4 (6-ounce) skin-on salmon fillets
▢ 3 ears corn, husked, cut into 2-inch lengths
▢ 1 pint cherry tomatoes
▢ 3 Tbsp. olive oil, divided
▢ 1 1/2 tsp. smoked paprika
▢ 1/2 stick butter, softened
▢ Zest and juice of 1 lime
▢ 1/4 cup chopped cilantro, plus more for serving

Directions:
1. Arrange a rack in center of oven and preheat to 425°.
2. Toss corn and tomatoes with 2 Tbsp. oil on a rimmed baking sheet. Roast, tossing once, until corn is tender, 12–15 minutes.
3. Rub salmon with remaining 1 Tbsp. oil and the paprika. Nestle among vegetables. Reduce oven temperature to 375° and roast until salmon is just opaque in the center and a thermometer registers 125°, 8–10 minutes more.
4. Mash butter with lime and cilantro. Let fish rest 3 minutes; top with butter.
`,
    title: 'Sheet-Pan Salmon with Corn',
    yields: '4',
    ingredients: [
      '4 / 6 oz | skin-on salmon fillets',
      '3 ear | corn',
      '1 pint | cherry tomatoes',
      '3 tbsp | olive oil',
      '3/2 tsp | smoked paprika',
      '1/2 stick | butter',
      '1 | Zest and juice of lime',
      '1/4 cup | chopped cilantro',
    ],
    steps: [['oven 218.3'], ['takes 12..15'], ['oven 190.6', 'core 51.7', 'takes 8..10'], ['rest 3']],
  },
  {
    name: 'lamingtons, Australian',
    text: `School-fete lamingtons
MAKES 20
PREP + COOK TIME 1 HOUR (+ COOLING & OVERNIGHT STANDING)

6 eggs
2/3 cup (150g) caster sugar
1/3 cup (50g) cornflour
1/2 cup (75g) plain flour
1/3 cup (50g) self-raising flour
2 cups (160g) desiccated coconut

ICING
4 cups (640g) icing sugar
1/2 cup (50g) cocoa powder
15g butter, melted
1 cup (250ml) milk

1 Preheat oven to 180°C/160°C fan. Grease a 20cm x 30cm lamington pan.
2 Beat eggs in a large bowl with an electric mixer for about 10 minutes or until thick and creamy; gradually beat in sugar.
3 Fold in the triple-sifted flours. Spread into the pan and bake about 35 minutes. Turn cake onto a rack and stand overnight.
4 To make icing, sift sugar and cocoa into a heatproof bowl; stir in butter and milk over simmering water for 3 minutes or until of coating consistency.
5 Cut cake into 20 squares. Dip each in icing, drain off excess, then toss in coconut. Stand on a rack for 30 minutes to set.
`,
    title: 'School-fete lamingtons',
    yields: '20',
    ingredients: [
      '6 | eggs',
      '2/3 cup | caster sugar',
      '1/3 cup | cornflour',
      '1/2 cup | plain flour',
      '1/3 cup | self-raising flour',
      '2 cup | desiccated coconut',
      '4 cup | icing sugar',
      '1/2 cup | cocoa powder',
      '15 g | butter',
      '1 cup | milk',
    ],
    steps: [['oven 180'], ['takes 10'], ['takes 35', 'rest 480..960'], ['takes 3'], ['rest 30']],
  },
  {
    name: 'sauerbraten, continental commas',
    decimal: ',',
    text: `Marinated braised beef
4 servings

For the marinade:
0,75 l red wine
2,5 dl vinegar
1 bunch soup vegetables
5 juniper berries

Also:
1,5 kg beef shoulder
30 g clarified butter
75 g gingerbread
0,1 l cream

Boil up the marinade, let it cool completely. Put in the meat, cover and leave in the fridge for 3 to 4 days, turning daily.
Heat the oven to 160 °C (140 °C fan). Dry the meat and brown it in the butter all round, 8-10 min.
Add the vegetables and 0,5 l of the marinade. Braise in the oven for 2,5 h. The core should reach 85 °C.
Keep the meat warm at 70 °C. Crumble in the gingerbread, simmer the sauce 10 min, add the cream, do not boil again.
`,
    title: 'Marinated braised beef',
    yields: '4',
    ingredients: [
      '3/4 l | red wine',
      '5/2 dl | vinegar',
      '1 bunch | soup vegetables',
      '5 | juniper berries',
      '3/2 kg | beef shoulder',
      '30 g | clarified butter',
      '75 g | gingerbread',
      '1/10 l | cream',
    ],
    steps: [['chill 4320..5760'], ['oven 160', 'takes 8..10'], ['takes 150', 'core 85'], ['oven 70', 'takes 10']],
  },
  {
    name: 'panna cotta, data of a page with an odd shape',
    text: JSON.stringify([
      { '@context': 'https://schema.org', '@type': 'Organization', name: 'Some kitchen' },
      {
        '@context': 'https://schema.org',
        '@type': 'WebPage',
        mainEntity: {
          '@type': 'Recipe',
          name: ['Coffee panna cotta'],
          image: { '@type': 'ImageObject', url: 'https://example.org/x.jpg' },
          recipeYield: { '@type': 'QuantitativeValue', value: 6, unitText: 'pots' },
          totalTime: 'P0DT4H30M',
          recipeIngredient: [
            '3 gelatine leaves (5g)',
            '450ml double cream',
            '150ml strong espresso',
            '75 g light muscovado sugar',
            'Pinch of salt',
            '50 g hazelnuts, toasted &amp; chopped',
          ],
          recipeInstructions: {
            '@type': 'ItemList',
            itemListElement: [
              { '@type': 'HowToStep', position: 1, text: 'Soak the gelatine in cold water for 5 minutes.' },
              {
                '@type': 'HowToStep',
                position: 2,
                text: '<b>Warm</b> the cream, coffee, sugar &amp; salt to 80&deg;C, no hotter. Squeeze out the gelatine, whisk it in.',
              },
              {
                '@type': 'HowToStep',
                position: 3,
                text: 'Strain, cool for half an hour, divide among 6 pots and chill for 4 hours minimum, ideally overnight.',
              },
              {
                '@type': 'HowToStep',
                position: 4,
                text: 'Dip each mould in hot water for 3 seconds, turn out and scatter with hazelnuts. Eat within 2 days.',
              },
            ],
          },
        },
      },
    ]),
    title: 'Coffee panna cotta',
    yields: '6',
    ingredients: [
      '3 | gelatine leaves',
      '450 ml | double cream',
      '150 ml | strong espresso',
      '75 g | light muscovado sugar',
      '1 pinch | salt',
      '50 g | hazelnuts',
    ],
    steps: [['soak 5'], ['other 80'], ['cool 30', 'chill 240..', 'chill 480..960'], ['takes 0.1', 'ahead ..2880']],
  },
  {
    name: 'gammon, by weight',
    text: `Glazed Christmas ham
Serves 10-12

1 x 3kg boned gammon joint, smoked or unsmoked
2 litres cider
1 onion, halved
2 bay leaves
For the glaze
100g dark brown sugar
3 tbsp English mustard
About 30 cloves

1. Weigh the gammon and work out the time: 20 minutes per 450g plus 20 minutes.
2. Put it in a pan with the cider, onion and bay; cover with water. Bring up to a simmer, skim, and cook for the calculated time, less 30 minutes.
3. Let it cool a little in the liquid, 15-20 mins. Preheat the oven to 200C/fan180C/gas 6.
4. Cut off the rind, score the fat, stud with cloves and brush over the glaze. Roast for 30 mins, basting every 10, until burnished. The centre should read 68°C or above.
5. Leave for at least 20 minutes before carving. It will keep, wrapped, in the fridge for 5 days.
`,
    title: 'Glazed Christmas ham',
    yields: '10..12',
    ingredients: [
      '1 / 3 kg | boned gammon joint',
      '2 l | cider',
      '1 | onion',
      '2 | bay leaves',
      '100 g | dark brown sugar',
      '3 tbsp | English mustard',
      '30 | cloves',
    ],
    steps: [
      ['by-weight 20', 'by-weight 20'],
      ['mark 30'],
      ['cool 15..20', 'oven 200'],
      ['takes 30', 'every 10', 'core 68'],
      ['rest 20..', 'ahead ..7200'],
    ],
  },
  {
    name: 'summer rolls and a dip, two parts each with its own list',
    text: `Herb summer rolls with peanut dip

Makes 12 rolls

Dip
4 tbsp smooth peanut butter
1 tbsp hoisin
juice of half a lime
2-3 tbsp warm water

Whisk everything together until smooth. It can be made up to 2 days ahead.

Rolls
100 g vermicelli
12 rice papers, 22 cm
24 cooked prawns (about 200 g)
1 cucumber, cut in thin 8 cm sticks
2 handfuls mixed mint and coriander

Pour boiling water over the noodles, leave for 4 minutes, drain and rinse cold. Dip a rice paper in warm water for 10 seconds, fill and roll tightly.

Cover with a damp cloth; best eaten within 2 hrs.
`,
    title: 'Herb summer rolls with peanut dip',
    yields: '12',
    ingredients: [
      '4 tbsp | smooth peanut butter',
      '1 tbsp | hoisin',
      '1/2 | juice of lime',
      '2..3 tbsp | warm water',
      '100 g | vermicelli',
      '12 | rice papers',
      '24 | cooked prawns',
      '1 | cucumber',
      '2 handful | mixed mint and coriander',
    ],
    steps: [['ahead ..2880'], ['rest 4', 'takes 0.2'], ['ahead ..120']],
  },
  {
    name: 'crème brûlée, careful numbered',
    text: `CRÈME BRÛLÉE WITH ORANGE
Serves: 6
Hands-on time: 20 min. Cook time: 40 min. Chilling: 3 hr, or overnight

INGREDIENTS
600 ml (1 pint) double cream
1 orange, zest pared in strips
6 large free-range egg yolks
85 g (3 oz) golden caster sugar
6 tsp demerara sugar

METHOD
Step 1
Preheat the oven to 140°C/fan 120°C/gas 1. Bring the cream and zest slowly to just below the boil (about 5 min), then set aside for 20 min to infuse.
Step 2
Meanwhile, whisk the yolks and caster sugar for 1-2 min until pale. Strain in the cream.
Step 3
Divide among six 150 ml ramekins, sit them in a roasting tin and pour in hot water to come halfway up. Bake for 30-35 min, until set but with a wobble. Lift out, cool to room temperature, then chill for at least 3 hr.
Step 4
About 1 hour before serving, sprinkle 1 tsp demerara on each and melt with a blowtorch, 1-2 min each. Return to the fridge to harden.
`,
    title: 'CRÈME BRÛLÉE WITH ORANGE',
    yields: '6',
    ingredients: [
      '600 ml | double cream',
      '1 | orange',
      '6 large | free-range egg yolks',
      '85 g | golden caster sugar',
      '6 tsp | demerara sugar',
    ],
    steps: [['oven 140', 'takes 5', 'soak 20'], ['takes 1..2'], ['takes 30..35', 'chill 180..'], ['mark 60', 'takes 1..2']],
  },
  {
    name: 'aubergine parcels, forum post',
    text: `Aubergine parcels (veggie, feeds 4 as a main)

3 large aubergines, sliced lengthways 5mm thick
250g tub ricotta
50g parmesan-style cheese, finely grated, + extra to finish
1 handful basil leaves
500g passata
1 ball mozzarella (125g)
olive oil

Griddle the aubergine in batches, 2-3 mins per side, till soft and striped.
Mix ricotta with half the parmesan & the basil.
Simmer passata with a glug of oil for 15 mins till thick-ish.
Roll each slice round a spoonful of ricotta. Sit in the sauce, mozzarella on top. (Up to here the day before if you like - fridge overnight, then add 10 mins to the time.)
In the oven, 190C, for 25mins or till bubbling round the edges. Wait 10 mins or you'll burn your mouth!
`,
    title: 'Aubergine parcels',
    yields: '4',
    ingredients: [
      '3 large | aubergines',
      '1 tub / 250 g | ricotta',
      '50 g | parmesan-style cheese',
      '1 handful | basil leaves',
      '500 g | passata',
      '1 ball | mozzarella',
      '- | olive oil',
    ],
    steps: [['takes 4..6'], [], ['takes 15'], ['chill 480..960', 'takes 10'], ['oven 190', 'takes 25', 'rest 10']],
  },
]

/**
 * Eight more after that. At first sight: 59 of 63 lines, 33 of 54 times and heats: two recipes' steps were out of line behind a heading and
 * a row of dashes that were not known as such, the other six gave 29 of 31; 13 of 17 wrong things not flagged, nine of them in those two.
 */
export const UNSEEN_LAST: readonly RecipeCase[] = [
  {
    name: 'chicken and leek hotpot, supermarket style',
    text: `Chicken & leek hotpot
Serves 4 · Prep 25 mins · Cook 1 hr 15 mins

600g skinless, boneless chicken thighs, quartered
2 tbsp plain flour
1 tbsp rapeseed oil
3 leeks, trimmed and cut into 2cm slices
400ml chicken stock (made with 1 cube)
2 tsp wholegrain mustard
700g Maris Piper potatoes, thinly sliced
20g butter, melted
4 thyme sprigs, leaves picked

METHOD

STEP 1: Heat the oven to 180C/160C fan/gas 4. Toss the chicken in the flour and fry in the oil in a flameproof casserole for 6–7 mins until browned. Set aside.
STEP 2: Add the leeks and cook, covered, for 10 mins, stirring now and again. Return the chicken with the stock, mustard and thyme and simmer for 5 mins.
STEP 3: Layer the potatoes on top, brush with the butter, cover and cook in the oven for 40 mins. Uncover, turn the oven up to 220C/200C fan/gas 7 and cook for a further 20–25 mins until golden. Rest for 10 mins before serving.
`,
    title: 'Chicken & leek hotpot',
    yields: '4',
    ingredients: [
      '600 g | skinless',
      '2 tbsp | plain flour',
      '1 tbsp | rapeseed oil',
      '3 | leeks',
      '400 ml | chicken stock',
      '2 tsp | wholegrain mustard',
      '700 g | Maris Piper potatoes',
      '20 g | butter',
      '4 | thyme sprigs',
    ],
    steps: [
      ['oven 180', 'takes 6..7'],
      ['takes 10', 'takes 5'],
      ['takes 40', 'oven 220', 'takes 20..25', 'rest 10'],
    ],
  },
  {
    name: 'carnitas, blog',
    text: `Weeknight-ish Carnitas

Total time: 3 hours 30 minutes
Servings: 8 tacos

For the Pork
3½–4 pounds boneless pork shoulder, cut in 3-inch chunks
1 Tbsp. plus 1 tsp. kosher salt
2 tsp. ground cumin
1 large white onion, halved
6 cloves garlic
1 navel orange, halved
¼ cup lard or neutral oil
12 fl oz lager

To Serve
16 corn tortillas, warmed
1 cup crumbled queso fresco
2 limes, cut into wedges

Make the Pork
Preheat the oven to 300°F. Season pork all over with salt and cumin; let sit for 15 minutes (or refrigerate, uncovered, for up to 24 hours).
Squeeze the orange over the pork in a Dutch oven, add the onion, garlic, lard and beer, and bring to a simmer over medium heat, about 10 minutes.
Cover, transfer to the oven, and cook until the pork shreds easily, 2½ to 3 hours, flipping the meat after 1 hour.
Heat broiler. Spread the pork on a sheet pan and broil 5 to 6 minutes, until the edges crisp. Leftovers keep 4 days in the fridge.
`,
    title: 'Weeknight-ish Carnitas',
    yields: '8',
    ingredients: [
      '7/2..4 lb | boneless pork shoulder',
      '4/3 tbsp | kosher salt',
      '2 tsp | ground cumin',
      '1 large | white onion',
      '6 clove | garlic',
      '1 | navel orange',
      '1/4 cup | lard or neutral oil',
      '12 fl oz | lager',
      '16 | corn tortillas',
      '1 cup | crumbled queso fresco',
      '2 | limes',
    ],
    steps: [
      ['oven 148.9', 'rest 15', 'chill ..1440'],
      ['takes 10'],
      ['takes 150..180', 'mark 60'],
      ['takes 5..6', 'ahead ..5760'],
    ],
  },
  {
    name: 'marmalade pudding, parish cookbook',
    text: `STEAMED MARMALADE PUDDING (for 6)

4 oz. self-raising flour
4 oz. butter or margarine
4 oz. caster sugar
2 eggs, beaten
3 good tablespoons thick-cut marmalade
1 dessertspoon milk
rind of 1 small orange

1. Grease a 1½ pint basin and spoon 2 tablespoons of the marmalade into the bottom.
2. Cream the butter and sugar till pale, about five minutes by hand. Beat in the eggs a little at a time, fold in the flour, rind and remaining marmalade, and slacken with the milk.
3. Cover with pleated greaseproof and foil, tie with string, and steam for 1½ hours, topping up the water every half-hour.
4. Leave it to stand for five minutes, turn out and serve with custard. It may be steamed the day before and re-steamed for 45 minutes.
`,
    title: 'STEAMED MARMALADE PUDDING',
    yields: '6',
    ingredients: [
      '4 oz | self-raising flour',
      '4 oz | butter or margarine',
      '4 oz | caster sugar',
      '2 | eggs',
      '3 tbsp | thick-cut marmalade',
      '1 dessertspoon | milk',
      '1 | rind of small orange',
    ],
    steps: [[], ['takes 5'], ['takes 90', 'every 30'], ['rest 5', 'takes 45']],
  },
  {
    name: 'tofu bowls, JSON-LD with a string of numbered lines',
    text: JSON.stringify({
      '@context': 'https://schema.org',
      '@type': 'Recipe',
      name: 'Sticky tofu bowls',
      recipeYield: 'Serves: 2–3',
      prepTime: 'PT20M',
      cookTime: 'PT25M',
      image: [['a.jpg'], 'b.jpg'],
      recipeIngredient: [
        '1 × 280 g block extra-firm tofu',
        '3 tbsp cornflour',
        '60ml (¼ cup) soy sauce',
        '1 tbsp maple syrup or honey',
        '2 garlic cloves, crushed',
        '150g / 5½oz brown rice',
        '½ cucumber',
        '1–2 tsp sriracha, to taste',
      ],
      recipeInstructions:
        '1. Press the tofu under a heavy board for 20 minutes.\n2. Cook the rice in plenty of boiling water for 25 min, drain and let it steam in the sieve for 5.\n3. Cube the tofu, toss in the cornflour and fry in 1cm oil at 180 °C in two batches, 3-4 min a batch.\n4. Boil the soy, syrup and garlic for 90 sec; toss with the tofu.',
    }),
    title: 'Sticky tofu bowls',
    yields: '2..3',
    ingredients: [
      '1 block / 280 g | extra-firm tofu',
      '3 tbsp | cornflour',
      '60 ml | soy sauce',
      '1 tbsp | maple syrup or honey',
      '2 | garlic cloves',
      '150 g | brown rice',
      '1/2 | cucumber',
      '1..2 tsp | sriracha',
    ],
    steps: [['rest 20'], ['takes 25', 'rest 5'], ['fat 180', 'takes 3..4'], ['takes 1.5']],
  },
  {
    name: 'terrine, restaurant notes',
    text: `PRESSED CHICKEN TERRINE
yield 1 terrine, 12 slices
--
chicken legs 2 kg
smoked bacon 200 g, sliced thin
shallots 150 g
white wine 20 cl
gelatine 4 leaves
tarragon 1/2 bunch
--
D-2: season legs, 12 g salt per kg, 24 h cold
D-1: confit legs 85°C fan steam, 4 h. pick while warm
reduce wine + shallots to syrup ~10 min. bloom gelatine 5 min, melt in
line mould w bacon, fill, press 2 kg, min 12 h fridge
D: slice 1.5 cm. temper 20 min before pass
`,
    title: 'PRESSED CHICKEN TERRINE',
    yields: '1',
    ingredients: [
      '2 kg | chicken legs',
      '200 g | smoked bacon',
      '150 g | shallots',
      '20 cl | white wine',
      '4 | gelatine leaves',
      '1/2 bunch | tarragon',
    ],
    steps: [['chill 1440'], ['oven 85', 'takes 240'], ['takes 10', 'soak 5'], ['chill 720..'], ['mark 20']],
  },
  {
    name: 'pear tart, continental commas',
    decimal: ',',
    text: `Pear and almond tart (26 cm tin)

For 8 pieces

Shortcrust: 250 g flour, 125 g butter, 75 g sugar, 1 egg
4 ripe pears
100 g ground almonds
1,5 dl cream
0,5 tsp cinnamon
2 eggs

Knead the shortcrust, wrap it and refrigerate for 1 hour.
Line the tin and prick the base. Pre-bake for 12 min in the lower third of the oven at 200 °C.
Fan the pears on the base. Mix the almonds, cream, cinnamon and eggs, pour over and bake 30–35 min at 180 °C (hot air 160 °C).
Let it cool in the tin for 1/2 hour. Keeps 2 days.
`,
    title: 'Pear and almond tart (26 cm tin)',
    yields: '8',
    ingredients: [
      '250 g | flour',
      '125 g | butter',
      '75 g | sugar',
      '1 | egg',
      '4 | ripe pears',
      '100 g | ground almonds',
      '3/2 dl | cream',
      '1/2 tsp | cinnamon',
      '2 | eggs',
    ],
    steps: [['chill 60'], ['takes 12', 'oven 200'], ['takes 30..35', 'oven 180'], ['cool 30', 'ahead ..2880']],
  },
  {
    name: 'scones, grandmother by telephone',
    text: `Gran's cheese scones

½ lb SR flour
pinch mustard powder
2 oz marg
4 oz strong cheddar
¼ pt milk, bit more if needed

Oven hot - 220, or gas 7. Rub marg into flour, cheese in, then milk, quick as you like. Roll an inch thick, cut out, brush w milk. 12 mins top shelf, 15 if they're big. Eat warm, they don't keep.
`,
    title: "Gran's cheese scones",
    yields: null,
    ingredients: ['1/2 lb | SR flour', '1 pinch | mustard powder', '2 oz | marg', '4 oz | strong cheddar', '1/4 pint | milk'],
    steps: [['oven 220', 'takes 12', 'takes 15']],
  },
  {
    name: 'curry night, Australian with a paste',
    text: `Green prawn curry
SERVES 4

1kg (2 lb) green prawns, peeled and deveined
1 x 400ml can coconut milk
1 Tbsp fish sauce
2 tsp grated palm sugar
150g snow peas
1/2 bunch Thai basil

CURRY PASTE
4 long green chillies
3cm knob galangal
2 lemongrass stalks, white part only
6 coriander roots
1 tsp shrimp paste

1. For the paste, blitz everything with 2 Tbsp water for 2-3 mins until smooth. (Paste will keep for 1 week in the fridge or 3 months frozen.)
2. Scoop the thick cream from the can into a wok over medium-high heat. Cook for 3-4 mins until it splits, add the paste and fry for 2 mins, stirring constantly.
3. Add remaining coconut milk and 1/2 cup (125ml) water, bring to the boil, reduce heat and simmer 8 mins. Add prawns and peas; cook 3 mins more or until prawns change colour.
4. Season and stand 5 mins off the heat. Serve with basil and rice.
`,
    title: 'Green prawn curry',
    yields: '4',
    ingredients: [
      '1 kg | green prawns',
      '1 can / 400 ml | coconut milk',
      '1 tbsp | fish sauce',
      '2 tsp | grated palm sugar',
      '150 g | snow peas',
      '1/2 bunch | Thai basil',
      '4 | long green chillies',
      '1 knob | galangal',
      '2 | lemongrass stalks',
      '6 | coriander roots',
      '1 tsp | shrimp paste',
    ],
    steps: [['takes 2..3', 'ahead ..10080'], ['takes 3..4', 'takes 2'], ['takes 8', 'takes 3'], ['rest 5']],
  },
]
