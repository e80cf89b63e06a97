import { describe, expect, test } from 'vitest'
import { readLinkedData } from '#lib/recipes/linked-data.ts'
import { readRecipe } from '#lib/recipes/read.ts'

const recipe = (fields: Record<string, unknown>): Record<string, unknown> => ({
  '@context': 'https://schema.org',
  '@type': 'Recipe',
  name: 'Soup',
  ...fields,
})
const read = (data: unknown) => {
  const found = readLinkedData(JSON.stringify(data))
  if (!found) throw new Error('no recipe')
  return found
}
const steps = (instructions: unknown) => read(recipe({ recipeInstructions: instructions })).steps

// schema.org 30.0: Recipe, HowTo, HowToSection, HowToStep, HowToDirection, ItemList, PropertyValue, QuantitativeValue, RestrictedDiet.
describe('schema.org Recipe', () => {
  test.each<[string, unknown]>([
    ['at the top', recipe({})],
    ['in an array', [{ '@type': 'Organization' }, recipe({})]],
    ['in @graph', { '@graph': [{ '@type': 'WebSite' }, recipe({})] }],
    ['as the main entity of a page', { '@type': 'WebPage', mainEntity: recipe({}) }],
    ['of several types', recipe({ '@type': ['NewsArticle', 'Recipe'] })],
    ['by its full name', recipe({ '@type': 'http://schema.org/Recipe' })],
  ])('Z5 is found %s', (_, data) => expect(read(data).title).toBe('Soup'))

  test.each<[string, unknown, readonly string[]]>([
    ['one text with lines', 'Chop.\nBoil for 10 minutes.', ['Chop.', 'Boil for 10 minutes.']],
    ['a list of texts', ['Chop.', 'Boil.'], ['Chop.', 'Boil.']],
    [
      'a list of steps',
      [
        { '@type': 'HowToStep', text: 'Chop.' },
        { '@type': 'HowToStep', name: 'Boil.' },
      ],
      ['Chop.', 'Boil.'],
    ],
    ['one step alone', { '@type': 'HowToStep', text: 'Chop.' }, ['Chop.']],
    [
      'an ItemList',
      { '@type': 'ItemList', itemListElement: [{ '@type': 'ListItem', item: { '@type': 'HowToStep', text: 'Chop.' } }] },
      ['Chop.'],
    ],
    [
      'a step of directions',
      [
        {
          '@type': 'HowToStep',
          itemListElement: [
            { '@type': 'HowToDirection', text: 'Chop.' },
            { '@type': 'HowToTip', text: 'Finely.' },
          ],
        },
      ],
      ['Chop. Finely.'],
    ],
    [
      'HTML with entities',
      '<ol><li>Chop the cr&egrave;me &amp; herbs.</li><li>Boil&nbsp;it.</li></ol>',
      ['Chop the crème & herbs.', 'Boil it.'],
    ],
  ])('Z5 instructions as %s', (_, given, expected) => expect(steps(given).map((step) => step.text)).toEqual(expected))

  test('Z5 sections name their steps', () => {
    const given = [
      { '@type': 'HowToSection', name: 'Base', itemListElement: [{ '@type': 'HowToStep', text: 'Crush.' }] },
      { '@type': 'HowToSection', name: 'Top', itemListElement: ['Whip.', 'Chill.'] },
    ]
    expect(steps(given)).toEqual([
      { text: 'Crush.', section: 'Base' },
      { text: 'Whip.', section: 'Top' },
      { text: 'Chill.', section: 'Top' },
    ])
  })
  test.each<[string, unknown]>([
    ['texts', ['1 cup milk', '2 eggs']],
    ['an ItemList', { '@type': 'ItemList', itemListElement: ['1 cup milk', '2 eggs'] }],
    [
      'PropertyValues',
      [
        { '@type': 'PropertyValue', name: 'milk', value: 1, unitText: 'cup' },
        { '@type': 'PropertyValue', name: 'eggs', value: '2' },
      ],
    ],
  ])('Z5 ingredients as %s', (_, recipeIngredient) => {
    expect(read(recipe({ recipeIngredient })).ingredients).toEqual(['1 cup milk', '2 eggs'])
  })
  test.each<[unknown, number]>([
    [4, 4],
    ['4', 4],
    ['4 servings', 4],
    ['Serves 4', 4],
    [['4', '4 servings'], 4],
    [{ '@type': 'QuantitativeValue', value: 4, unitText: 'people' }, 4],
  ])('Z5 the yield %j', (recipeYield, least) => {
    const found = readRecipe(JSON.stringify(recipe({ recipeYield })))
    expect(found.ok && found.value.yields?.least).toBe(least)
  })
  test('Z5 diets are the claims of the page, times in minutes; what is unread is left over', () => {
    const found = readRecipe(
      JSON.stringify(
        recipe({
          suitableForDiet: ['https://schema.org/GlutenFreeDiet', { '@id': 'schema:VeganDiet' }, 'VegetarianDiet', 'tasty'],
          prepTime: 'PT20M',
          cookTime: 'P1M',
          totalTime: 'an hour',
          recipeYield: 'plenty',
        }),
      ),
    )
    if (!found.ok) throw new Error(found.error.kind)
    expect(found.value.diets).toEqual(['gluten-free', 'vegan', 'vegetarian'])
    expect(found.value.total).toEqual({ prep: 20, cook: null, total: null })
    expect(found.value.leftOver).toEqual(['plenty', 'P1M', 'an hour'])
  })
  test.each(['', '{', 'null', '[]', '{"@type":"Cake"}', '"Recipe"', '{"@type":"HowTo","name":"x"}'])(
    'Z5 %j holds no recipe',
    (text) => {
      expect(readLinkedData(text)).toBeNull()
    },
  )
  test('Z5 a page that holds several blocks gives the first recipe; one without is read as words', () => {
    const block = (data: unknown) => `<script type="application/ld+json">${JSON.stringify(data)}</script>`
    const page = readRecipe(`<html>${block({ '@type': 'WebSite' })}${block(recipe({ name: 'Pie' }))}${block(recipe({}))}</html>`)
    expect(page.ok && page.value.title).toBe('Pie')
    const words = readRecipe(
      '<html><body><h1>Pie &amp; mash</h1><ul><li>1 egg</li></ul><script>var x = "2 eggs"</script></body></html>',
    )
    expect(words.ok && [words.value.title, words.value.ingredients.map((line) => line.text)]).toEqual(['Pie & mash', ['1 egg']])
  })
})
