import type { RecipeCase } from './case.ts'

/** American home cooking: cups, °F, paragraphs. */
export const AMERICAN: readonly RecipeCase[] = [
  {
    name: 'corn muffins',
    text: `Corn Muffins

Yield: 12 muffins

Ingredients

1 1/2 cups yellow cornmeal
1 cup all-purpose flour
1/3 cup granulated sugar
1 tablespoon baking powder
3/4 teaspoon kosher salt
2 large eggs
1 1/4 cups buttermilk
1 stick (113 g) unsalted butter, melted and cooled
1 (15-ounce) can sweet corn, drained

Directions

Preheat oven to 400°F and line a 12-cup muffin tin.

Whisk the cornmeal, flour, sugar, baking powder and salt in a large bowl. In a second bowl beat the eggs, buttermilk and butter. Pour the wet into the dry, add the corn and stir until just combined. Let the batter stand for 10 minutes.

Divide among the cups and bake 16 to 18 minutes, until the tops spring back. Cool in the tin for 5 minutes, then turn out onto a rack.
`,
    title: 'Corn Muffins',
    yields: '12',
    ingredients: [
      '3/2 cup | yellow cornmeal',
      '1 cup | all-purpose flour',
      '1/3 cup | granulated sugar',
      '1 tbsp | baking powder',
      '3/4 tsp | kosher salt',
      '2 large | eggs',
      '5/4 cup | buttermilk',
      '1 stick | unsalted butter',
      '1 can / 15 oz | sweet corn',
    ],
    steps: [['oven 204.4'], ['rest 10'], ['takes 16..18', 'cool 5']],
  },
  {
    name: 'meatloaf',
    text: `Sunday Meatloaf
Servings: 8
Prep Time: 20 minutes
Cook Time: 1 hour 10 minutes

Ingredients
2 pounds ground beef
1 cup dry breadcrumbs
2/3 cup whole milk
2 eggs, lightly beaten
1 medium onion, minced
2 tablespoons plus 1 teaspoon mustard
1 1/2 tsp. salt
1/4 tsp black pepper
For the glaze:
1/2 cup ketchup
3 T brown sugar

Instructions
1. Heat oven to 350 degrees F. Soak the breadcrumbs in the milk for about 5 minutes.
2. Add the beef, eggs, onion, mustard, salt and pepper and mix with your hands. Shape into a loaf on a rimmed sheet pan.
3. Stir together the ketchup and sugar and brush half of it over the loaf. Bake for 45 minutes.
4. Brush with the rest of the glaze and bake another 20-25 minutes, until an instant-read thermometer shows 160°F in the middle.
5. Let rest 10 minutes before slicing.
`,
    title: 'Sunday Meatloaf',
    yields: '8',
    ingredients: [
      '2 lb | ground beef',
      '1 cup | dry breadcrumbs',
      '2/3 cup | whole milk',
      '2 | eggs',
      '1 medium | onion',
      '7/3 tbsp | mustard',
      '3/2 tsp | salt',
      '1/4 tsp | black pepper',
      '1/2 cup | ketchup',
      '3 tbsp | brown sugar',
    ],
    steps: [['oven 176.7', 'soak 5'], [], ['takes 45'], ['takes 20..25', 'core 71.1'], ['rest 10']],
  },
  {
    name: 'pork chops',
    text: `Brined Pork Chops

Makes 4 servings

4 cups cold water
1/4 cup kosher salt
2 Tbsp. honey
4 bone-in pork chops, 1 inch thick
1 Tbsp vegetable oil
Freshly ground black pepper

Dissolve the salt and honey in the water, add the chops, cover and refrigerate for at least 2 hours and up to 8 hours.

Set the oven to 425F. Pat the chops dry and season with pepper.

Heat the oil in a cast-iron skillet over medium-high heat until it shimmers. Sear the chops for 3 minutes on each side, then slide the skillet into the oven and roast for 6-8 minutes, until the meat reaches 145°F inside.

Rest the chops on a board, loosely tented with foil, for 5 minutes.
`,
    title: 'Brined Pork Chops',
    yields: '4',
    ingredients: [
      '4 cup | cold water',
      '1/4 cup | kosher salt',
      '2 tbsp | honey',
      '4 | bone-in pork chops',
      '1 tbsp | vegetable oil',
      '- | Freshly ground black pepper',
    ],
    steps: [['chill 120..480'], ['oven 218.3'], ['takes 6', 'takes 6..8', 'core 62.8'], ['rest 5']],
  },
]
