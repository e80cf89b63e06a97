import type { RecipeCase } from './case.ts'

const graph = {
  '@context': 'https://schema.org',
  '@graph': [
    { '@type': 'WebSite', name: 'A notebook of suppers' },
    {
      '@type': ['Recipe', 'NewsArticle'],
      name: 'Mushroom &amp; chestnut pie',
      recipeYield: ['6', '6 servings'],
      prepTime: 'PT40M',
      cookTime: 'PT1H15M',
      totalTime: 'P0DT1H55M',
      suitableForDiet: ['https://schema.org/VegetarianDiet', 'http://schema.org/LowSaltDiet'],
      recipeIngredient: [
        '500&nbsp;g mushrooms, quartered',
        '200 g cooked chestnuts',
        '2 tbsp olive oil',
        '1 onion, chopped',
        '150 ml crème fraîche',
        '320 g ready-rolled puff pastry',
        '1 egg, beaten',
      ],
      recipeInstructions: [
        { '@type': 'HowToStep', text: 'Fry the onion in the oil for 8 minutes.' },
        {
          '@type': 'HowToStep',
          name: 'Mushrooms',
          text: 'Add the mushrooms and fry over a high heat for 10&ndash;12 minutes until dry.',
        },
        {
          '@type': 'HowToStep',
          text: '<p>Stir in the chestnuts and crème fraîche, tip into a pie dish and leave to cool completely.</p>',
        },
        { '@type': 'HowToStep', text: 'Cover with the pastry, brush with egg and chill for 20 minutes.' },
        { '@type': 'HowToStep', text: 'Bake at 200&deg;C (fan 180&deg;C/gas 6) for 35 minutes until golden.' },
      ],
    },
  ],
}

const sections = [
  { '@type': 'BreadcrumbList', itemListElement: [] },
  {
    '@context': 'http://schema.org/',
    '@type': 'Recipe',
    name: 'Layered Cheesecake Jars',
    recipeYield: { '@type': 'QuantitativeValue', value: 8, unitText: 'jars' },
    totalTime: 'PT4H30M',
    recipeIngredient: [
      '1 1/2 cups graham cracker crumbs',
      '6 tablespoons butter, melted',
      '16 ounces cream cheese, softened',
      { '@type': 'PropertyValue', name: 'heavy cream', value: '1', unitText: 'cup' },
      '1/2 cup powdered sugar',
      '1 teaspoon vanilla extract',
      '2 cups raspberries',
    ],
    recipeInstructions: {
      '@type': 'ItemList',
      itemListElement: [
        {
          '@type': 'HowToSection',
          name: 'Base',
          itemListElement: [
            {
              '@type': 'HowToStep',
              text: 'Stir the crumbs and butter together, bake on a sheet pan at 325°F for 8 minutes, and cool.',
            },
          ],
        },
        {
          '@type': 'HowToSection',
          name: 'Filling',
          itemListElement: [
            'Beat the cream cheese, sugar and vanilla with an electric mixer for 2 minutes.',
            {
              '@type': 'HowToStep',
              itemListElement: [{ '@type': 'HowToDirection', text: 'Whip the cream to soft peaks and fold it in.' }],
            },
          ],
        },
        {
          '@type': 'HowToSection',
          name: 'Assembly',
          itemListElement: 'Layer crumbs, filling and raspberries in jars. Refrigerate for 4 hours or up to 2 days.',
        },
      ],
    },
  },
]

/** Recipe data of web pages, in shapes that differ. */
export const PAGES: readonly RecipeCase[] = [
  {
    name: 'a page with a graph',
    text: `<!doctype html><html><head><title>Pie</title>
<script>var x = "<script type='application/ld+json'>{}";</script>
<script type="application/ld+json">${JSON.stringify(graph)}</script></head><body><h1>Pie</h1></body></html>`,
    title: 'Mushroom & chestnut pie',
    yields: '6',
    ingredients: [
      '500 g | mushrooms',
      '200 g | cooked chestnuts',
      '2 tbsp | olive oil',
      '1 | onion',
      '150 ml | crème fraîche',
      '320 g | ready-rolled puff pastry',
      '1 | egg',
    ],
    steps: [['takes 8'], ['takes 10..12'], [], ['chill 20'], ['oven 200', 'takes 35']],
  },
  {
    name: 'JSON with sections',
    text: JSON.stringify(sections),
    title: 'Layered Cheesecake Jars',
    yields: '8',
    ingredients: [
      '3/2 cup | graham cracker crumbs',
      '6 tbsp | butter',
      '16 oz | cream cheese',
      '1 cup | heavy cream',
      '1/2 cup | powdered sugar',
      '1 tsp | vanilla extract',
      '2 cup | raspberries',
    ],
    steps: [['oven 162.8', 'takes 8'], ['takes 2'], [], ['chill 240..2880']],
  },
]
