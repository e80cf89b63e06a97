import { describe, expect, test } from 'vitest'
import { defaultDraft } from '#lib/recipes/default-method.ts'
import { readPaste } from '#lib/recipes/read-paste.ts'
import { splitPaste } from '#lib/recipes/split-paste.ts'
import { AMERICAN } from '#tests/support/recipes/american.ts'
import type { RecipeCase } from '#tests/support/recipes/case.ts'
import { HELD_OUT } from '#tests/support/recipes/held-out.ts'
import { NOTES } from '#tests/support/recipes/notes.ts'
import { NUMBERED } from '#tests/support/recipes/numbered.ts'
import { PAGES } from '#tests/support/recipes/pages.ts'
import { CUPS, THREE_COURSES } from '#tests/support/recipes/three-courses.ts'

const CASES: readonly RecipeCase[] = [...NUMBERED, ...AMERICAN, ...NOTES, ...PAGES, ...HELD_OUT]

const read = (text: string) => {
  const paste = readPaste(text, '.')
  if (!paste.ok) throw new Error(paste.error.kind)
  return paste.value
}
const shape = (text: string) =>
  read(text).courses.map((course) => [
    course.name,
    ...course.dishes.map((dish) => `${dish.name} ${dish.recipe ?? '-'} ${dish.by}`),
  ])

describe('one paste', () => {
  test.each(CASES)('Z11 $name alone is one recipe, whole', ({ text }) => {
    const { menu, recipes } = splitPaste(text, '.')
    expect(menu).toBe('')
    expect(recipes).toHaveLength(1)
    expect(recipes[0]?.text.replace(/\s+/gu, ' ').trim()).toBe(text.replace(/\s+/gu, ' ').trim())
  })
  test('Z11 a menu and its recipes are put together by their names; what the menu says nothing of is told apart', () => {
    expect(shape(THREE_COURSES)).toEqual([
      ['Starter', 'Celery root soup 0 name'],
      ['Main', 'Pork shoulder - cut', 'roast carrots - cut', 'buttered greens - cut'],
      ['Dessert', 'Plum posset 1 name'],
    ])
    expect(shape(`${THREE_COURSES}\n\n${CUPS}`)[1]?.at(-1)).toBe('Skillet Corn Pudding 2 recipe')
  })
  test('Z11 a line of dashes cuts, and headings over recipes make the courses', () => {
    const text = `Starter\n${NUMBERED[0]?.text}\n---\nPudding: ${CUPS}`
    const courses = shape(text)
    expect(courses.map(([name]) => name)).toEqual(['Starter', 'Pudding'])
    expect(courses[1]).toEqual(['Pudding', 'Skillet Corn Pudding 1 name'])
  })
  test('Z11 two recipes one after the other are two, and a side that the recipe already has is no dish of its own', () => {
    const two = NUMBERED.slice(0, 2)
    const { recipes } = read(two.map((each) => each.text).join('\n\n'))
    expect(recipes.map((recipe) => recipe.title)).toEqual(two.map((each) => each.title))
    expect(recipes.map((recipe) => recipe.ingredients.length)).toEqual(two.map((each) => each.ingredients.length))
    const lamb = 'Main: Lamb with beans\n\nLamb with beans\n1 kg lamb\n2 tins beans\n\n1. Roast the lamb for 2 hours.'
    expect(shape(lamb)).toEqual([['Main', 'Lamb 0 cut']])
  })
  test('Z11 a page and data among words are recipes of their own, and brackets in notes are notes', () => {
    const words = 'Barley hotpot\nServes 6\n\n500 g lamb\n200 g barley\n\nSimmer the lamb and the barley together for 2 hours.'
    const data = JSON.stringify({
      '@context': 'https://schema.org',
      '@type': 'Recipe',
      name: 'Corn "skillet" cake {tall}',
      recipeIngredient: ['1 cup cornmeal', '2 eggs'],
      recipeInstructions: 'Stir and bake at 375°F for 40 minutes.',
    })
    const tagged = `<script type="application/ld+json">\n${data}\n</script>`
    const titles = (text: string) => read(text).recipes.map((recipe) => `${recipe.title} ${recipe.steps.length}`)
    const [hotpot, cake] = ['Barley hotpot 1', 'Corn "skillet" cake {tall} 1']
    for (const page of [data, tagged, `<html><head>${tagged}</head><body><p>Hello</p></body></html>`]) {
      expect(titles(`${words}\n\n${page}\n`)).toEqual([hotpot, cake])
      expect(titles(`${words}\n\n${page}\n\n${words}`)).toEqual([hotpot, cake, hotpot])
    }
    expect(titles(`${data}\n${words}`)).toEqual([cake, hotpot])
    expect(titles(`<div>\n${tagged}\n<p>Hello</p></div>`)).toEqual([cake])
    const noted = `${words}\n{\nmind the "oven\n}`
    expect(splitPaste(noted, '.').recipes.map((recipe) => recipe.text)).toEqual([noted])
  })
  test('Z11 nothing and too much are refused by name', () => {
    expect(readPaste(' \n ', '.')).toEqual({ ok: false, error: { kind: 'nothing' } })
    expect(readPaste('x'.repeat(100_001), '.')).toEqual({ ok: false, error: { kind: 'too-long', most: 100_000 } })
  })
  test('Z12 a dish without a recipe gets a method that says of every step that it is assumed', () => {
    const keys = ['a', 'b']
    for (const name of ['Lamb shoulder', 'Green salad', 'Lemon posset', 'Fish soup', 'Something']) {
      const draft = defaultDraft(name, '.', () => keys.pop() ?? 'c')
      expect(draft.steps.length).toBeGreaterThan(0)
      expect(draft.steps.every((step) => step.assumed.includes('no-recipe') && step.text.includes(name))).toBe(true)
    }
  })
  test('Z12 what is roast by its name, or a whole bird, is assumed to be an hour in the oven, and rests', () => {
    const kinds = (name: string) => defaultDraft(name, '.', () => 'k').steps.map(({ way }) => way.uses[0]?.kind ?? 'rest')
    for (const name of ['Roast guinea fowl', 'Guinea fowl', 'Roast leg of lamb, beans and mash', 'Sunday roast']) {
      const { steps } = defaultDraft(name, '.', () => 'k')
      expect([name, kinds(name)]).toEqual([name, ['worktop', 'oven', 'rest']])
      expect(steps[1]?.way.uses[0]).toMatchObject({ kind: 'oven', lowC: 180, highC: 200 })
      expect(steps[1]?.way.takes.likely).toBe('PT1H')
      expect(steps.every((step) => step.assumed.includes('no-recipe'))).toBe(true)
    }
    expect(kinds('Roast potatoes')).toEqual(['worktop', 'oven'])
    expect(kinds('Roast beef salad')).toEqual(['worktop'])
    expect(kinds('Roast tomato soup')).toEqual(['worktop', 'ring'])
    expect(defaultDraft('Slow-roast pork shoulder', '.', () => 'k').steps[1]?.way.takes.likely).toBe('PT3H')
  })
})
