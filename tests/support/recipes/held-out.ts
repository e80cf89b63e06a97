import type { RecipeCase } from './case.ts'

/**
 * Recipes written after the reader was first finished, in hands that it had not seen. At first sight it read 37 of 39 lines and 33 of 38
 * times and heats; what it had missed was then mended, so by now they are ordinary cases.
 */
export const HELD_OUT: readonly RecipeCase[] = [
  {
    name: 'fish pie',
    text: `Fish pie for a cold night

Serves: 6 to 8
Preparation time: 30 minutes
Cooking time: 1 hour

You will need

1kg floury potatoes
75g butter
500ml whole milk, plus a splash for the mash
400g skinless haddock fillet
250g raw peeled prawns
2 leeks, finely sliced
40g plain flour
a small handful of chives, snipped
100g mature cheddar, grated
Salt and freshly ground pepper

What to do

1. Boil the potatoes in salted water for 15-20 minutes, until completely tender. Drain, leave to steam for 5 minutes, then mash with 25g of the butter and a splash of milk.
2. Meanwhile heat the milk in a wide pan until steaming. Slide in the haddock, take the pan off the heat and leave, covered, for 8 minutes. Lift out the fish and keep the milk.
3. Melt the remaining butter and cook the leeks gently for 10 mins. Stir in the flour, cook for 1 min, then add the milk bit by bit and simmer for 3–4 mins until thick.
4. Fold in the fish, prawns and chives. Spoon into a 2-litre dish, top with the mash and cheese. You can make it to this point a day ahead; cover and chill.
5. Heat oven to 190C/170C fan/gas 5. Bake for 35–40 mins (50 mins if straight from the fridge) until golden and bubbling.
`,
    title: 'Fish pie for a cold night',
    yields: '6..8',
    ingredients: [
      '1 kg | floury potatoes',
      '75 g | butter',
      '500 ml | whole milk',
      '400 g | skinless haddock fillet',
      '250 g | raw peeled prawns',
      '2 | leeks',
      '40 g | plain flour',
      '1 small handful | chives',
      '100 g | mature cheddar',
      '- | Salt and freshly ground pepper',
    ],
    steps: [
      ['takes 15..20', 'rest 5'],
      ['rest 8'],
      ['takes 10', 'takes 1', 'takes 3..4'],
      ['ahead ..1440'],
      ['oven 190', 'takes 35..40', 'takes 50'],
    ],
  },
  {
    name: 'brownies',
    text: `Pecan Brownies
Makes 16 squares

1/2 cup (1 stick) unsalted butter
8 oz bittersweet chocolate, chopped
1 1/4 cups light brown sugar
3 large eggs, at room temperature
2 tsp vanilla extract
3/4 cup all-purpose flour
1/4 cup unsweetened cocoa powder
1/2 teaspoon kosher salt
1 cup pecans, toasted and chopped

Position a rack in the middle of the oven and preheat to 350°F. Line an 8-inch square pan with parchment.

Melt the butter and chocolate in a heatproof bowl over simmering water, stirring, about 5 minutes. Remove from the heat and cool for 10 minutes.

Whisk the sugar, eggs and vanilla on high speed until pale, 3 to 4 minutes. Fold in the chocolate, then the flour, cocoa, salt and nuts.

Scrape into the pan. Bake 28–32 minutes, until a skewer comes out with moist crumbs. Cool completely in the pan, at least 1 hour, before cutting. Brownies keep, airtight, up to 4 days.
`,
    title: 'Pecan Brownies',
    yields: '16',
    ingredients: [
      '1/2 cup | unsalted butter',
      '8 oz | bittersweet chocolate',
      '5/4 cup | light brown sugar',
      '3 large | eggs',
      '2 tsp | vanilla extract',
      '3/4 cup | all-purpose flour',
      '1/4 cup | unsweetened cocoa powder',
      '1/2 tsp | kosher salt',
      '1 cup | pecans',
    ],
    steps: [['oven 176.7'], ['takes 5', 'cool 10'], ['takes 3..4'], ['takes 28..32', 'cool 60..', 'ahead ..5760']],
  },
  {
    name: 'lamb shanks, own notes',
    text: `lamb shanks w/ beans - feeds 4

4 lamb shanks
oil
2 onions 3 carrots 2 sticks celery, all diced
1 tbsp tomato puree
1 bottle red wine
2 tins cannellini beans
rosemary, bay

brown shanks well all over, 15 min, set aside
soften veg 10 min in same pan, tomato puree 1 min
wine in, bubble hard 5 min
shanks back + herbs, water to nearly cover. lid. 150C, 3 hrs, turn them once halfway
beans in for last half hour
rest 20 min lid on. keeps 3 days, better next day
`,
    title: 'lamb shanks w/ beans',
    yields: '4',
    ingredients: [
      '4 | lamb shanks',
      '- | oil',
      '2 | onions 3 carrots 2 sticks celery',
      '1 tbsp | tomato puree',
      '1 bottle | red wine',
      '2 tin | cannellini beans',
      '- | rosemary, bay',
    ],
    steps: [
      ['takes 15'],
      ['takes 10', 'takes 1'],
      ['takes 5'],
      ['oven 150', 'takes 180'],
      ['mark 30'],
      ['rest 20', 'ahead ..4320'],
    ],
  },
  {
    name: 'pavlova from a page',
    text: `<!DOCTYPE html><html><head><script type="application/ld+json">[{"@context":"https://schema.org","@type":"Recipe","name":"Passionfruit pavlova","recipeYield":"Serves 8","prepTime":"PT25M","cookTime":"PT1H30M","recipeIngredient":["4 egg whites","220g (1 cup) caster sugar","2 teaspoons cornflour","1 teaspoon white vinegar","300ml thickened cream","6 passionfruit"],"recipeInstructions":"Preheat oven to 150C (130C fan-forced). Beat the egg whites until soft peaks form, then add the sugar, 1 tablespoon at a time, beating for 10 minutes until glossy.\\nFold in the cornflour and vinegar. Pile into a 20cm circle on baking paper.\\nReduce oven to 120C (100C fan-forced) and bake for 1 hour 30 minutes.\\nTurn the oven off and leave the pavlova inside to cool for 3 hours or overnight.\\nWhip the cream, spoon over and top with passionfruit. Serve within 1 hour."}]</script></head><body>Pavlova</body></html>`,
    title: 'Passionfruit pavlova',
    yields: '8',
    ingredients: [
      '4 | egg whites',
      '220 g | caster sugar',
      '2 tsp | cornflour',
      '1 tsp | white vinegar',
      '300 ml | thickened cream',
      '6 | passionfruit',
    ],
    steps: [['oven 150', 'takes 10'], [], ['oven 120', 'takes 90'], ['cool 180..960'], ['ahead ..60']],
  },
  {
    name: 'steak with a butter',
    text: `STEAK WITH ANCHOVY BUTTER

Serves 2, easily doubled

100g unsalted butter, at room temperature
4 anchovy fillets, mashed
1 small shallot, very finely chopped
1 tbsp chopped parsley
zest of half a lemon
2 x 250g rump steaks, 3cm thick
1 tbsp groundnut oil

Beat together everything for the butter, roll in greaseproof paper and put in the freezer for 20 minutes to firm up (or in the fridge for up to a week).

Bring the steaks to room temperature, which takes about an hour.

Get a heavy frying pan smoking hot. Oil and salt the steaks and cook for 2½ minutes per side for medium rare, or until the core is at 54°C.

Rest somewhere warm for 8 mins. Serve with slices of the butter on top.
`,
    title: 'STEAK WITH ANCHOVY BUTTER',
    yields: '2',
    ingredients: [
      '100 g | unsalted butter',
      '4 | anchovy fillets',
      '1 small | shallot',
      '1 tbsp | chopped parsley',
      '1/2 | zest of lemon',
      '2 / 250 g | rump steaks',
      '1 tbsp | groundnut oil',
    ],
    steps: [['freeze 20', 'chill ..10080'], ['rest 60'], ['takes 5', 'core 54'], ['rest 8']],
  },
]

/** Written after that, again before the reader saw them: 29 of 31 lines and 20 of 24 times and heats at first sight. */
export const HELD_OUT_LATER: readonly RecipeCase[] = [
  {
    name: 'gravadlax-like trout',
    text: `Beetroot-cured trout

Serves 10 as a starter
Takes 25 minutes plus 2 days' curing

For the cure
200g coarse sea salt
150g demerara sugar
2 raw beetroot (about 300g), grated
1 side of trout, approx. 1kg, pin-boned
a thumb of fresh horseradish, grated

For the sauce
3 tbsp Dijon mustard
150ml mild olive oil
1 tbsp white wine vinegar
A bunch of dill

Mix all the cure ingredients. Lay half of it in a dish, put the fish on top skin-side down, cover with the rest. Weigh down with a plate and leave in the fridge for 36-48 hours, turning every 12 hours.

Wipe off the cure and pat dry. Wrapped, it keeps in the fridge for up to 5 days.

Whisk the mustard, vinegar and a pinch of sugar, then trickle in the oil. Stir in the dill. Slice the trout thinly, no more than an hour before you need it.
`,
    title: 'Beetroot-cured trout',
    yields: '10',
    ingredients: [
      '200 g | coarse sea salt',
      '150 g | demerara sugar',
      '2 | raw beetroot',
      '1 | side of trout',
      '1 thumb | fresh horseradish',
      '3 tbsp | Dijon mustard',
      '150 ml | mild olive oil',
      '1 tbsp | white wine vinegar',
      '1 bunch | dill',
    ],
    steps: [['chill 2160..2880', 'every 720'], ['ahead ..7200'], ['mark ..60']],
  },
  {
    name: 'mac and cheese',
    text: `Stovetop-to-oven mac and cheese
Prep: 10 mins
Cook: 35 mins
Total: 45 mins
Servings: 6

Ingredients
1 lb elbow macaroni
4 Tbsp (57g) butter
1/4 cup flour
3 1/2 cups whole milk, warmed
12 oz sharp cheddar, grated (about 3 cups)
1/2 tsp dry mustard
Pinch cayenne
1 cup panko
Salt and pepper

Instructions
Step 1: Preheat the oven to 375°F. Bring a large pot of salted water to a boil.
Step 2: Cook the macaroni 2 minutes less than the package says, about 6 minutes. Drain.
Step 3: In the same pot, melt the butter over medium heat. Whisk in the flour and cook, whisking constantly, for 2 minutes. Gradually add the milk; simmer until thickened, 5 to 7 minutes.
Step 4: Off the heat, stir in the cheese, mustard and cayenne, then the pasta. Pour into a 9x13-inch dish and top with the panko.
Step 5: Bake 20 minutes or until bubbling, then broil 1-2 minutes to brown the top. Let stand 5 minutes.
`,
    title: 'Stovetop-to-oven mac and cheese',
    yields: '6',
    ingredients: [
      '1 lb | elbow macaroni',
      '4 tbsp | butter',
      '1/4 cup | flour',
      '7/2 cup | whole milk',
      '12 oz | sharp cheddar',
      '1/2 tsp | dry mustard',
      '1 pinch | cayenne',
      '1 cup | panko',
      '- | Salt and pepper',
    ],
    steps: [['oven 190.6'], ['takes 6'], ['takes 2', 'takes 5..7'], [], ['takes 20', 'takes 1..2', 'rest 5']],
  },
  {
    name: 'pilau, a chatty note',
    text: `My aunt's pilau (serves about 6)

- 300 g basmati
- 1 big onion, sliced
- 50 g ghee or butter
- 4 cardamom pods, 1 cinnamon stick, 4 cloves
- 450 ml hot chicken stock
- handful of sultanas
- 30 g flaked almonds

Wash the rice in several changes of water, then soak for 30 min.
Fry the onion in the ghee on a low heat until properly brown, which takes 15 min or so. Spices in for the last minute.
Drain the rice well, stir it in for 2 mins, add the stock and salt, bring to the boil.
Lid on, lowest heat, exactly 10 minutes. Turn off and do not lift the lid for another 10.
Toast the almonds in a dry pan, 3 min, and fork through with the sultanas.
`,
    title: "My aunt's pilau",
    yields: '6',
    ingredients: [
      '300 g | basmati',
      '1 big | onion',
      '50 g | ghee or butter',
      '4 | cardamom pods',
      '1 | cinnamon stick',
      '4 | cloves',
      '450 ml | hot chicken stock',
      '1 handful | sultanas',
      '30 g | flaked almonds',
    ],
    steps: [['soak 30'], ['takes 15', 'mark 1'], ['takes 2'], ['takes 10', 'rest 10'], ['takes 3']],
  },
  {
    name: 'sponge from a page',
    text: JSON.stringify({
      '@context': 'https://schema.org',
      '@type': 'Recipe',
      name: 'Almond sponge',
      recipeYield: 12,
      cookTime: 'PT45M',
      recipeIngredient: [
        '225g/8oz butter, softened',
        '225g/8oz caster sugar',
        '4 free-range eggs',
        '100g ground almonds',
        '½ tsp almond extract',
        'icing sugar, for dusting',
      ],
      recipeInstructions: [
        { '@type': 'HowToStep', text: 'Preheat the oven to 170C/325F/Gas 3. Grease and line a 20cm/8in springform tin.' },
        {
          '@type': 'HowToStep',
          text: 'Cream the butter and sugar for 3-4 minutes. Beat in the eggs one at a time, then fold in the almonds and extract.',
        },
        {
          '@type': 'HowToStep',
          text: 'Bake in the oven for about 45 minutes, covering with foil after half an hour if it browns too fast.',
        },
        {
          '@type': 'HowToStep',
          text: 'Remove from the oven and set aside to cool in the tin for ten minutes, then turn out on to a wire rack.',
        },
      ],
    }),
    title: 'Almond sponge',
    yields: '12',
    ingredients: [
      '225 g | butter',
      '225 g | caster sugar',
      '4 | free-range eggs',
      '100 g | ground almonds',
      '1/2 tsp | almond extract',
      '- | icing sugar',
    ],
    steps: [['oven 170'], ['takes 3..4'], ['takes 45', 'mark 30'], ['cool 10']],
  },
]

/**
 * A third hand: 24 of 25 lines and 12 of 25 times and heats at first sight, most of it lost to steps numbered without a stop, which put one
 * recipe's steps out of line.
 */
export const HELD_OUT_THIRD: readonly RecipeCase[] = [
  {
    name: 'chicken traybake',
    text: `Chicken and olive traybake

SERVES 4 | PREP 15 MINS | COOK 50 MINS

8 chicken thighs, bone in and skin on
750g waxy potatoes, cut into wedges
2 red onions, each cut into 8
1 lemon, sliced
100g green olives
4 garlic cloves, unpeeled
3 tbsp extra virgin olive oil
2 tsp dried oregano
½ x 400g tin chickpeas, rinsed
150ml chicken stock

1 Preheat the oven to 220°C (200°C fan/425°F/gas 7).
2 Toss the potatoes, onions and garlic with 2 tbsp of the oil in a large roasting tin. Roast for 15 minutes.
3 Meanwhile, rub the chicken with the rest of the oil, the oregano and plenty of salt. Marinate for at least 10 minutes.
4 Add the chicken, lemon, olives, chickpeas and stock to the tin, reduce the heat to 200°C (180°C fan) and roast for a further 35 minutes, until the chicken reaches 75°C at the thickest part.
5 Leave to stand for 5 minutes before serving.
`,
    title: 'Chicken and olive traybake',
    yields: '4',
    ingredients: [
      '8 | chicken thighs',
      '750 g | waxy potatoes',
      '2 | red onions',
      '1 | lemon',
      '100 g | green olives',
      '4 | garlic cloves',
      '3 tbsp | extra virgin olive oil',
      '2 tsp | dried oregano',
      '1/2 tin / 400 g | chickpeas',
      '150 ml | chicken stock',
    ],
    steps: [['oven 220'], ['takes 15'], ['marinate 10..'], ['oven 200', 'takes 35', 'core 75'], ['rest 5']],
  },
  {
    name: 'cinnamon rolls',
    text: `Soft Cinnamon Rolls

Yield: about 12 rolls
Total Time: 3 hours

For the dough
3/4 cup warm milk (110°F)
2 1/4 teaspoons (1 packet) active dry yeast
1/4 cup granulated sugar
1 egg plus 1 egg yolk
4 tablespoons unsalted butter, melted
3 to 3 1/4 cups bread flour
3/4 tsp salt

For the filling
2/3 cup dark brown sugar
1 1/2 tablespoons ground cinnamon

Directions
1. Stir the yeast and a pinch of the sugar into the milk and let sit until foamy, 5 to 10 minutes.
2. Add the remaining sugar, egg, yolk, butter, flour and salt. Knead in a stand mixer on medium for 8 minutes. Cover and let rise in a warm place until doubled, 1 to 1 1/2 hours.
3. Roll out to a 14 by 9 inch rectangle, spread with the filling, roll up and cut in 12. Let rise again, covered, for 30 to 45 minutes.
4. Bake at 350 F for 20 to 25 minutes. Let cool 10 minutes.
Note: to make ahead, refrigerate the shaped rolls overnight.
`,
    title: 'Soft Cinnamon Rolls',
    yields: '12',
    ingredients: [
      '3/4 cup | warm milk',
      '9/4 tsp | active dry yeast',
      '1/4 cup | granulated sugar',
      '1 | egg plus 1 egg yolk',
      '4 tbsp | unsalted butter',
      '3..13/4 cup | bread flour',
      '3/4 tsp | salt',
      '2/3 cup | dark brown sugar',
      '3/2 tbsp | ground cinnamon',
    ],
    steps: [
      ['rest 5..10'],
      ['takes 8', 'rise 60..90'],
      ['rise 30..45'],
      ['oven 176.7', 'takes 20..25', 'cool 10', 'chill 480..960'],
    ],
  },
  {
    name: 'ragu, notes with a comma',
    decimal: ',',
    text: `Ragù, big batch
10 portions

1,2 kg minced beef
0,25 l red wine
2 onions, 2 carrots, 1 celery stalk
3 tins tomatoes (400 g each)
0,5 l milk
4 el olive oil

1. Sweat the vegetables very slowly in the oil, 20-25 min.
2. Brown the meat in three lots, about 7 min each.
3. Wine in and reduce for 10 min. Tomatoes and milk in.
4. Oven 140 °C, lid on, 3,5 hours. Stir every hour.
5. Cool within 2 hours, then fridge. Better after 24 h. Freezes well for 3 months.
`,
    title: 'Ragù, big batch',
    yields: '10',
    ingredients: [
      '6/5 kg | minced beef',
      '1/4 l | red wine',
      '2 | onions',
      '2 | carrots',
      '1 | celery stalk',
      '3 tin / 400 g | tomatoes',
      '1/2 l | milk',
      '4 | el olive oil',
    ],
    steps: [['takes 20..25'], ['takes 7'], ['takes 10'], ['oven 140', 'takes 210', 'every 60'], ['cool ..120', 'rest 1440']],
  },
]

/** A fourth: 17 of 20 lines and 16 of 18 times and heats at first sight. */
export const HELD_OUT_FOURTH: readonly RecipeCase[] = [
  {
    name: 'a page without data',
    text: `<html><head><title>Bean stew</title><style>p{}</style></head><body><nav><a href="/">Home</a></nav><article>
<h1>Smoky butter bean stew</h1><p>Serves 4</p>
<h2>Ingredients</h2><ul><li>2 tbsp olive oil</li><li>1 large onion, chopped</li><li>2 tsp smoked paprika</li><li>2 &times; 400g tins butter beans</li><li>400g tin chopped tomatoes</li><li>100g chorizo, in coins</li><li>small handful coriander</li></ul>
<h2>Method</h2><ol><li>Fry the chorizo in the oil over a medium heat for 4&ndash;5 mins until the fat runs. Add the onion and cook gently for 10 mins.</li><li>Stir in the paprika, then tip in the beans and tomatoes with half a can of water. Simmer, part covered, for 25 mins.</li><li>Stand for 5 mins off the heat, then scatter with coriander.</li></ol></article></body></html>`,
    title: 'Smoky butter bean stew',
    yields: '4',
    ingredients: [
      '2 tbsp | olive oil',
      '1 large | onion',
      '2 tsp | smoked paprika',
      '2 tin / 400 g | butter beans',
      '1 tin / 400 g | chopped tomatoes',
      '100 g | chorizo',
      '1 small handful | coriander',
    ],
    steps: [['takes 4..5', 'takes 10'], ['takes 25'], ['rest 5']],
  },
  {
    name: 'roast beef, spoken',
    text: `Sunday beef
Enough for 6 with leftovers

Rib of beef on the bone, about 2.5kg
1 tbsp mustard powder
2 tbsp flour
a few sprigs of thyme
300ml good stock

Take the beef out of the fridge a good hour before you start, rub it with the mustard powder and half the flour. Get the oven really hot, 240C/220C fan/gas 9. Roast for 20 minutes, then turn the oven down to 180C/160C fan/gas 4 and give it 15 minutes per 500g for medium-rare. You want 52°C in the middle when it comes out. Rest it, loosely covered, for at least half an hour. Pour off the fat, stir the rest of the flour into the tin over a low flame for 2 minutes, add the stock and thyme and let it bubble for 8-10 minutes.
`,
    title: 'Sunday beef',
    yields: '6',
    ingredients: [
      '5/2 kg | Rib of beef on the bone',
      '1 tbsp | mustard powder',
      '2 tbsp | flour',
      '- | a few sprigs of thyme',
      '300 ml | good stock',
    ],
    steps: [['mark 60', 'oven 240', 'takes 20', 'oven 180', 'by-weight 15', 'core 52', 'rest 30..', 'takes 2', 'takes 8..10']],
  },
  {
    name: 'waffles',
    text: `Weekend Waffles
Makes: 8 waffles
Active Time: 25 min

• 2 cups (240g) all-purpose flour
• 1 Tbsp. sugar
• 2 tsp. baking powder
• ½ tsp. coarse kosher salt
• 1¾ cups (420ml) milk, room temperature
• 2 large eggs, separated
• 6 Tbsp. (¾ stick) unsalted butter, melted, plus more for the iron
• Maple syrup (for serving)

Preparation
Step one: Heat a waffle iron. Whisk the dry ingredients together.
Step two: Whisk milk, yolks and butter; stir into the flour. Rest the batter 15 minutes.
Step three: Beat whites to stiff peaks, about 2 minutes, and fold in.
Step four: Cook in batches until crisp, 4–6 minutes per batch. Keep warm in a 200° oven up to 30 minutes.
`,
    title: 'Weekend Waffles',
    yields: '8',
    ingredients: [
      '2 cup | all-purpose flour',
      '1 tbsp | sugar',
      '2 tsp | baking powder',
      '1/2 tsp | coarse kosher salt',
      '7/4 cup | milk',
      '2 large | eggs',
      '6 tbsp | unsalted butter',
      '- | Maple syrup',
    ],
    steps: [[], ['rest 15'], ['takes 2'], ['takes 4..6', 'oven 93.3', 'rest ..30']],
  },
]
