import type { RecipeCase } from './case.ts'

/** British cookery books: metric, headings, numbered steps. */
export const NUMBERED: readonly RecipeCase[] = [
  {
    name: 'leek and potato soup',
    text: `Leek and potato soup
Serves 6

Ingredients
50 g butter
3 leeks, trimmed and sliced
1 onion, finely chopped
500g floury potatoes, peeled and diced
1.2 litres vegetable stock
150 ml double cream
a pinch of nutmeg
salt and white pepper

Method
1. Melt the butter in a large pan over a low heat. Add the leeks and onion, cover and sweat for 12 minutes, stirring now and then.
2. Add the potatoes and stock, bring to the boil, then simmer for 20 to 25 minutes until the potatoes are soft.
3. Blend until smooth. Stir in the cream and nutmeg and season.
4. The soup can be made up to 2 days ahead; keep it in the fridge and reheat gently for 10 minutes before serving.
`,
    title: 'Leek and potato soup',
    yields: '6',
    ingredients: [
      '50 g | butter',
      '3 | leeks',
      '1 | onion',
      '500 g | floury potatoes',
      '6/5 l | vegetable stock',
      '150 ml | double cream',
      '1 pinch | nutmeg',
      '- | salt and white pepper',
    ],
    steps: [['takes 12'], ['takes 20..25'], [], ['ahead ..2880', 'takes 10']],
  },
  {
    name: 'roast chicken with lemon',
    text: `Roast chicken with lemon and thyme

Serves 4–6
Prep 15 min, cook 1 hr 30 min

INGREDIENTS

1 chicken, about 1.6 kg
1 lemon, halved
a small bunch of thyme
2 cloves garlic, bruised
30g soft butter
1 tbsp olive oil
200 ml/7 fl oz dry white wine
sea salt

METHOD

1) Take the chicken out of the fridge 30 minutes before cooking. Heat the oven to 200°C/180°C fan/gas 6.
2) Rub the butter over the chicken, salt it well and put the lemon, thyme and garlic inside. Set it in a roasting tin with the oil.
3) Roast for 1 hour 20 minutes, basting every 20 minutes, until the juices run clear and a thermometer in the thigh reads 74°C.
4) Lift the chicken on to a board and leave to rest for 15 to 20 minutes.
5) Meanwhile, set the tin over a medium heat, pour in the wine and bubble for 5 minutes, scraping up the bits.
`,
    title: 'Roast chicken with lemon and thyme',
    yields: '4..6',
    ingredients: [
      '1 | chicken',
      '1 | lemon',
      '1 small bunch | thyme',
      '2 clove | garlic',
      '30 g | soft butter',
      '1 tbsp | olive oil',
      '200 ml | dry white wine',
      '- | sea salt',
    ],
    steps: [['mark 30', 'oven 200'], [], ['takes 80', 'every 20', 'core 74'], ['rest 15..20'], ['takes 5']],
  },
  {
    name: 'beef and barley stew',
    text: `Beef and barley stew

For 8 people

For the stew:
1 lb 2 oz shin of beef, cut into chunks
2 tbsp plain flour
3 tbsp vegetable oil
2 large onions, sliced
4 carrots, in thick slices
1 x 400 g tin chopped tomatoes
4oz pearl barley
1½ pints beef stock
2 bay leaves

For the dumplings:
6 oz self-raising flour
3 oz suet
½ tsp salt
2–3 tbsp cold water

1. Preheat the oven to gas mark 3. Toss the beef in the flour.
2. Heat the oil in a flameproof casserole and brown the meat in batches, about 4 minutes a batch. Lift out.
3. Soften the onions in the same pot for 8-10 minutes, then add the carrots and cook for another 5 minutes.
4. Return the beef, add the tomatoes, barley, stock and bay, bring to a simmer, cover and cook in the oven for two and a half hours.
5. Mix the flour, suet and salt with enough water for a soft dough and shape into 12 balls.
6. Set the dumplings on the stew, turn the oven up to gas 6 and bake uncovered for a further 25 minutes.
`,
    title: 'Beef and barley stew',
    yields: '8',
    ingredients: [
      '9/8 lb | shin of beef',
      '2 tbsp | plain flour',
      '3 tbsp | vegetable oil',
      '2 large | onions',
      '4 | carrots',
      '1 tin / 400 g | chopped tomatoes',
      '4 oz | pearl barley',
      '3/2 pint | beef stock',
      '2 | bay leaves',
      '6 oz | self-raising flour',
      '3 oz | suet',
      '1/2 tsp | salt',
      '2..3 tbsp | cold water',
    ],
    steps: [['oven 170'], ['takes 4'], ['takes 8..10', 'takes 5'], ['takes 150'], [], ['oven 200', 'takes 25']],
  },
  {
    name: 'baked apples',
    text: `Baked apples with dates
Makes 4

Ingredients:
• 4 cooking apples
• 100 g dates, stoned and chopped
• 50 g light brown sugar
• 1 tsp ground cinnamon
• grated zest of 1 orange
• a knob of butter
• 250 g thick yoghurt, to serve

Method:
Step 1
Set the oven to Gas Mark 4 (180C). Core the apples and score each one round its middle.
Step 2
Mix the dates, sugar, cinnamon and zest, press into the apples and dot with butter.
Step 3
Bake for 40-45 mins, or until the apples are puffed and soft. Cool for 5 mins before serving with the yoghurt.
`,
    title: 'Baked apples with dates',
    yields: '4',
    ingredients: [
      '4 | cooking apples',
      '100 g | dates',
      '50 g | light brown sugar',
      '1 tsp | ground cinnamon',
      '1 | grated zest of orange',
      '1 knob | butter',
      '250 g | thick yoghurt',
    ],
    steps: [['oven 180'], [], ['takes 40..45', 'cool 5']],
  },
  {
    name: 'poached fish with green sauce',
    text: `Poached hake with green sauce
4 servings

4 hake fillets (about 160 g each)
500 ml fish stock
1 slice of lemon
a handful of parsley
6 sprigs dill
1 tablespoon capers, rinsed
2 anchovies
100ml olive oil
juice of ½ lemon

1. Chop the parsley, dill, capers and anchovies together and stir in the oil and lemon juice. The sauce keeps for 24 hours in the fridge.
2. Bring the stock and lemon slice to 75-80°C in a wide pan.
3. Lower in the fish and poach for 6 to 8 minutes, until the centre reaches 60 °C.
4. Drain for 1 minute on kitchen paper and serve at once with the sauce.
`,
    title: 'Poached hake with green sauce',
    yields: '4',
    ingredients: [
      '4 / 160 g | hake fillets',
      '500 ml | fish stock',
      '1 slice | lemon',
      '1 handful | parsley',
      '6 sprig | dill',
      '1 tbsp | capers',
      '2 | anchovies',
      '100 ml | olive oil',
      '1/2 | juice of lemon',
    ],
    steps: [['ahead ..1440'], ['other 75..80'], ['takes 6..8', 'core 60'], ['takes 1']],
  },
]
