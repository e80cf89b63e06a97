import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readIngredient } from '#lib/recipes/ingredient.ts'
import { readRecipe } from '#lib/recipes/read.ts'
import { readStep } from '#lib/recipes/step.ts'
import { AMERICAN } from '#tests/support/recipes/american.ts'
import type { RecipeCase } from '#tests/support/recipes/case.ts'
import { HELD_OUT, HELD_OUT_FOURTH, HELD_OUT_LATER, HELD_OUT_THIRD } from '#tests/support/recipes/held-out.ts'
import { NOTES } from '#tests/support/recipes/notes.ts'
import { NUMBERED } from '#tests/support/recipes/numbered.ts'
import { PAGES } from '#tests/support/recipes/pages.ts'
import { type Score, score, unreadNumbers } from '#tests/support/recipes/score.ts'
import { UNSEEN, UNSEEN_LAST, UNSEEN_LATER } from '#tests/support/recipes/unseen.ts'

const CASES: readonly RecipeCase[] = [
  ...NUMBERED,
  ...AMERICAN,
  ...NOTES,
  ...PAGES,
  ...HELD_OUT,
  ...HELD_OUT_LATER,
  ...HELD_OUT_THIRD,
  ...HELD_OUT_FOURTH,
  ...UNSEEN,
  ...UNSEEN_LATER,
  ...UNSEEN_LAST,
]

const total = (scores: readonly Score[], of: 'ingredients' | 'steps') => {
  const [right, all] = scores.reduce(([r, a], each) => [r + each[of].right, a + each[of].all], [0, 0])
  return { right, all, share: right / all }
}

describe('recipes of three styles', () => {
  test.each(CASES)('Z1 $name: title, yield and the shape are read', (recipe) => {
    const { preview } = score(recipe)
    expect(preview.title).toBe(recipe.title)
    const { yields } = preview
    const inProse = preview.ingredients.length === 0
    if (!inProse)
      expect(yields && (yields.most > yields.least ? `${yields.least}..${yields.most}` : String(yields.least))).toBe(
        recipe.yields,
      )
    // What stands in a sentence rather than on a line is not read as ingredients; it is shown as left over.
    if (inProse) expect(preview.leftOver.length).toBeGreaterThan(0)
    else expect(preview.ingredients).toHaveLength(recipe.ingredients.length)
    expect(preview.steps).toHaveLength(recipe.steps.length)
  })
  test('Z2 at least 90 % of the ingredient lines and 85 % of the minutes, temperatures and lags are right', () => {
    const scores = CASES.map(score)
    expect(CASES.length).toBeGreaterThanOrEqual(12)
    const [lines, steps] = [total(scores, 'ingredients'), total(scores, 'steps')]
    const wrong = scores.flatMap((each) => each.wrong).join('\n')
    expect(lines.share, wrong).toBeGreaterThanOrEqual(0.9)
    expect(steps.share, wrong).toBeGreaterThanOrEqual(0.85)
  })
  test('Z3 whatever is not right is flagged where it stands', () => {
    expect(CASES.flatMap((recipe) => score(recipe).silent)).toEqual([])
  })
  test('Z3 no number of a line or a step is silently unread', () => {
    expect(CASES.flatMap((recipe) => unreadNumbers(score(recipe).preview))).toEqual([])
    const odd = 'Odd\n1 egg 7 flour\n2 x 4\n\nMethod\n1. Bake 9 at 42 for 20 mintues 3.5 ½ 1,5 9e3 10:30 then 12.'
    const read = readRecipe(odd)
    expect(read.ok && unreadNumbers(read.value)).toEqual([])
    // The check itself sees a number that nothing holds.
    const first = CASES[0] && score(CASES[0]).preview
    const stripped = first && {
      ...first,
      steps: first.steps.map((step) => ({ ...step, times: [], heats: [], told: [], doubts: [] })),
    }
    expect(stripped && unreadNumbers(stripped).length).toBeGreaterThan(3)
  })
  test('Z3 no number of any words thrown together is silently unread', () => {
    const words = fc.constantFrom(
      ...'10 2 ½ 1/2 1,5 3.5 180 ² Ⅳ ٣ ④ 9e3 two twenty half a an and a half to or - – x × / of at for in oven bake rest chill gas mark fan °C °F degrees C F g tbsp cup cups tin oz lb minutes mins hour hours overnight days per each side until about another more every after before flour eggs, (cloves) . , ; : ( ) juice'.split(
        ' ',
      ),
    )
    fc.assert(
      fc.property(fc.array(words, { minLength: 1, maxLength: 14 }), fc.constantFrom('.' as const, ',' as const), (some, mark) => {
        const text = some.join(' ')
        const [line, step] = [readIngredient(text, null, mark), readStep(text, null, mark)]
        expect(unreadNumbers({ ingredients: [line], steps: [step] })).toEqual([])
      }),
      { numRuns: Number(process.env.RUNS ?? 2000), seed: Number(process.env.SEED ?? 1) },
    )
  })
  test('Z3 doubts stay few: at most one time or heat in five and one line in eight is flagged', () => {
    const scores = CASES.map(score)
    const lines = scores.flatMap((each) => each.preview.ingredients)
    const readings = scores.flatMap((each) => each.preview.steps.flatMap((step) => [...step.times, ...step.heats]))
    const doubted = lines.filter((line) => line.doubts.some((doubt) => doubt.kind !== 'no-amount'))
    expect(doubted.length / lines.length).toBeLessThanOrEqual(1 / 8)
    expect(readings.filter((each) => !each.certain).length / readings.length).toBeLessThanOrEqual(1 / 5)
  })
})
