import { describe, expect, test } from 'vitest'
import { AMERICAN } from '#tests/support/recipes/american.ts'
import type { RecipeCase } from '#tests/support/recipes/case.ts'
import { HELD_OUT, HELD_OUT_FOURTH, HELD_OUT_LATER, HELD_OUT_THIRD } from '#tests/support/recipes/held-out.ts'
import { NOTES } from '#tests/support/recipes/notes.ts'
import { NUMBERED } from '#tests/support/recipes/numbered.ts'
import { PAGES } from '#tests/support/recipes/pages.ts'
import { type Score, score } from '#tests/support/recipes/score.ts'

const CASES: readonly RecipeCase[] = [
  ...NUMBERED,
  ...AMERICAN,
  ...NOTES,
  ...PAGES,
  ...HELD_OUT,
  ...HELD_OUT_LATER,
  ...HELD_OUT_THIRD,
  ...HELD_OUT_FOURTH,
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
    expect(yields && (yields.most > yields.least ? `${yields.least}..${yields.most}` : String(yields.least))).toBe(recipe.yields)
    expect(preview.ingredients).toHaveLength(recipe.ingredients.length)
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
  test('Z3 whatever is not right is flagged', () => {
    expect(CASES.flatMap((recipe) => score(recipe).silent)).toEqual([])
  })
})
