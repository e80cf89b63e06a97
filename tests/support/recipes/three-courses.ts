/** What somebody may paste at the beginning: a menu and two of its recipes, of our own invention. */
export const THREE_COURSES = `Starter: Celery root soup
Main: Pork shoulder with roast carrots and buttered greens
Dessert: Plum posset

Celery root soup
Serves 6

1 celery root, about 800 g
1 onion
50 g butter
1.2 litres vegetable stock
salt

1. Peel and dice the celery root and the onion.
2. Soften them in the butter over a low heat for 10 minutes.
3. Add the stock and simmer for 25 minutes until soft.
4. Blend until smooth and season.

Plum posset
For 6

600 ml double cream
150 g caster sugar
4 ripe plums
juice of 1 lemon

Method
Bring the cream and the sugar to the boil and simmer for 3 minutes. Stir in the lemon juice.
Pour into six glasses and chill for at least 3 hours.
Slice the plums and put them on top just before serving.
`

/** An American recipe in cups, of our own invention. */
export const CUPS = `Skillet Corn Pudding
Makes 8 servings

2 cups corn kernels
1 1/2 cups heavy cream
3 large eggs
1/4 cup all-purpose flour
1 stick butter
2 tsp kosher salt
a few sprigs thyme

Directions
1. Heat the oven to 350°F. Melt the butter in a large skillet.
2. Whisk the cream, eggs and flour, then stir in the corn.
3. Pour into the skillet and bake for 35 to 40 minutes until just set.
4. Let it rest 10 minutes. Bake at 400 for 20 if it is pale.
`
