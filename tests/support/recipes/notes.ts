import type { RecipeCase } from './case.ts'

/** A cook's own notes: no headings, half sentences, everything run together. */
export const NOTES: readonly RecipeCase[] = [
  {
    name: 'lemon cream pots',
    text: `Lemon cream pots (for 8)
600ml double cream
150g caster sugar
2 lemons, juice and zest
8 shortbread fingers

- boil cream + sugar 3 mins, stirring all the time
- off the heat, whisk in the lemon juice and zest, leave to cool for a quarter of an hour
- into glasses, chill at least 4 hours or overnight
- out of the fridge 10 mins before they go out, shortbread alongside
`,
    title: 'Lemon cream pots',
    yields: '8',
    ingredients: ['600 ml | double cream', '150 g | caster sugar', '2 | lemons', '8 | shortbread fingers'],
    steps: [['takes 3'], ['cool 15'], ['chill 240..960'], ['mark 10']],
  },
  {
    name: 'white bean salad',
    text: `White bean salad

2 x 400g tins white beans
half a red onion
a dozen cherry tomatoes
3-4 tbsp olive oil
1 tbsp red wine vinegar
big handful of flat-leaf parsley
salt, pepper

Slice the onion very thinly and soak it in cold water for 10 minutes. Drain the beans. Halve the tomatoes, salt them and leave for half an hour. Toss everything with the oil and vinegar. Best after an hour or so at room temperature.
`,
    title: 'White bean salad',
    yields: null,
    ingredients: [
      '2 tin / 400 g | white beans',
      '1/2 | red onion',
      '12 | cherry tomatoes',
      '3..4 tbsp | olive oil',
      '1 tbsp | red wine vinegar',
      '1 big handful | flat-leaf parsley',
      '- | salt, pepper',
    ],
    steps: [['soak 10', 'rest 30', 'rest 60']],
  },
  {
    name: 'oil bread',
    text: `Oil bread
makes 1 big tray

500 g strong white flour
7 g instant yeast
10 g fine salt
380 ml lukewarm water
60 ml olive oil + more for the tray
1 tsp coarse salt

Mix flour, yeast, salt and water, no kneading. Cover and leave in the fridge overnight.
Next day tip into an oiled tray, dimple with wet fingers and leave to rise for 2 to 3 hours until very bubbly.
Oven to 230C / 210C fan. Pour over the oil, sprinkle with the coarse salt.
Bake for 22-25 minutes, till deep gold underneath.
On to a rack straight away. Eat within 4 hours.
`,
    title: 'Oil bread',
    yields: '1',
    ingredients: [
      '500 g | strong white flour',
      '7 g | instant yeast',
      '10 g | fine salt',
      '380 ml | lukewarm water',
      '60 ml | olive oil',
      '1 tsp | coarse salt',
    ],
    steps: [['chill 480..960'], ['rise 120..180'], ['oven 230'], ['takes 22..25'], ['ahead ..240']],
  },
  {
    name: 'plum cake with decimal commas',
    decimal: ',',
    text: `Plum cake
Serves 10

Ingredients
0,5 kg plums, halved
1,5 dl milk
2,5 dl sugar
3 eggs
4 dl flour
1,5 tsp baking powder
125 g butter, melted
2 tbsp almonds, flaked

Method
1. Heat the oven to 175 °C. Butter a tin 24 cm across.
2. Whisk the eggs and sugar for 5 minutes, then fold in the flour, baking powder, butter and milk.
3. Pour into the tin, press in the plums, scatter with the almonds and bake for 50–55 minutes.
4. Leave in the tin for 15 minutes, then turn out. Keeps 3 days in a tin.
`,
    title: 'Plum cake',
    yields: '10',
    ingredients: [
      '1/2 kg | plums',
      '3/2 dl | milk',
      '5/2 dl | sugar',
      '3 | eggs',
      '4 dl | flour',
      '3/2 tsp | baking powder',
      '125 g | butter',
      '2 tbsp | almonds',
    ],
    steps: [['oven 175'], ['takes 5'], ['takes 50..55'], ['rest 15', 'ahead ..4320']],
  },
  {
    name: 'duck legs',
    text: `Duck legs, slow
for 6:
6 duck legs
1 tbsp salt
3 star anise
750ml red wine
1 kg potatoes

salt legs night before, cover, fridge overnight.
wipe, brown skin side down in a dry pan 10-12 min.
into a casserole w/ wine + anise, lid on, oven 150C fan for 1h45.
boil the potatoes 15-20 mins, drain, mash.
lid off, oven up to 200C fan, last 15 min to crisp.
`,
    title: 'Duck legs, slow',
    yields: '6',
    ingredients: ['6 | duck legs', '1 tbsp | salt', '3 | star anise', '750 ml | red wine', '1 kg | potatoes'],
    steps: [['chill 480..960'], ['takes 10..12'], ['oven 170', 'takes 105'], ['takes 15..20'], ['oven 220', 'takes 15']],
  },
]
