import ts from 'typescript'
import { describe, expect, test } from 'vitest'
import { Ingredient } from '#lib/domain/ingredient.ts'
import { Dish, Step } from '#lib/domain/menu.ts'
import { heatsIn } from '#lib/recipes/heats.ts'
import { kitIn } from '#lib/recipes/kit.ts'
import { makeDish } from '#lib/recipes/make-dish.ts'
import { readMenu } from '#lib/recipes/menu.ts'
import type { Stretch } from '#lib/recipes/preview.ts'
import { LONGEST_PAGE, LONGEST_TEXT, readRecipe } from '#lib/recipes/read.ts'
import { readPaste } from '#lib/recipes/read-paste.ts'
import { readStep } from '#lib/recipes/step.ts'
import { timesIn } from '#lib/recipes/times.ts'
import { type Token, tokensOf } from '#lib/recipes/tokens.ts'
import { sources } from '#tests/architecture/tree.ts'
import { HOSTILE } from '#tests/support/recipes/hostile.ts'
import { PAYLOADS } from '#tests/support/recipes/payloads.ts'

/** What is not data: functions, class instances, numbers that are none, stretches outside their text. */
const strange = (value: unknown, path = ''): string[] => {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`]
  if (value === null || ['string', 'boolean', 'undefined'].includes(typeof value)) return []
  if (typeof value !== 'object') return [`${path} is a ${typeof value}`]
  if (!Array.isArray(value) && Object.getPrototypeOf(value) !== Object.prototype) return [`${path} is no plain object`]
  return Object.entries(value).flatMap(([key, inner]) => strange(inner, `${path}.${key}`))
}

const outside = (text: string, stretches: readonly Stretch[]): readonly Stretch[] =>
  stretches.filter(({ from, to }) => !(from >= 0 && from <= to && to <= text.length))

describe('hostile text', () => {
  test('Z9 of hundreds of hostile texts none throws, all come out as plain data, and what is made of them fits the schemas', () => {
    expect(new Set(PAYLOADS).size).toBeGreaterThanOrEqual(200)
    expect(HOSTILE.length).toBeGreaterThanOrEqual(400)
    let [read, made] = [0, 0]
    for (const [i, text] of HOSTILE.entries())
      for (const decimal of i % 4 === 0 ? (['.', ','] as const) : (['.'] as const)) {
        expect(strange(readMenu(text))).toEqual([])
        if (text.length < 5000) expect(strange(readPaste(text, decimal))).toEqual([])
        const recipe = readRecipe(text, { decimal })
        if (!recipe.ok) continue
        read += 1
        expect(strange(recipe.value)).toEqual([])
        for (const step of recipe.value.steps)
          expect(outside(step.text, [...step.times, ...step.heats, ...step.kit, ...step.signs, ...step.doubts])).toEqual([])
        for (const line of recipe.value.ingredients) expect(outside(line.text, line.doubts)).toEqual([])
        let id = 0
        const newId = () => {
          id += 1
          return `id-${id}`
        }
        const keys = (count: number) => Array.from({ length: count }, (_, i) => `k${i}`)
        const dish = makeDish(recipe.value, {
          course: 'c',
          kitchen: 'k',
          order: 'a',
          covers: 4,
          measures: 'us',
          decimal,
          newId,
          keys,
        })
        expect(Dish.safeParse(dish.dish).success).toBe(true)
        for (const step of dish.steps) if (!Step.safeParse(step).success) expect(step).toBe('a step')
        for (const each of dish.ingredients) if (!Ingredient.safeParse(each).success) expect(each).toBe('an ingredient')
        made += dish.steps.length + dish.ingredients.length
      }
    expect(read).toBeGreaterThan(380)
    expect(made).toBeGreaterThan(1000)
  }, 180_000)
  test('Z9 markup is kept as the letters it is', () => {
    const recipe = readRecipe('Pie <b>&amp;</b> mash\nServes 4\n\nIngredients\n1 <script>alert(1)</script>')
    expect(recipe.ok && recipe.value.title).toBe('Pie <b>&amp;</b> mash')
    expect(recipe.ok && recipe.value.ingredients[0]?.text).toBe('1 <script>alert(1)</script>')
  })
  test('Z9 what is too long is refused with the limit', () => {
    expect(readRecipe('a'.repeat(LONGEST_PAGE + 1))).toEqual({ ok: false, error: { kind: 'too-long', most: LONGEST_PAGE } })
    expect(readRecipe('a'.repeat(LONGEST_TEXT + 1))).toEqual({ ok: false, error: { kind: 'too-long', most: LONGEST_TEXT } })
    expect(readRecipe('<div>'.repeat(400_000))).toEqual({ ok: false, error: { kind: 'too-deep' } })
    expect(readRecipe(' \n ')).toEqual({ ok: false, error: { kind: 'nothing' } })
  })
})

/** The tokens, and how often one was looked at. */
const counted = (tokens: readonly Token[]): { tokens: readonly Token[]; looks: () => number } => {
  let looks = 0
  const watched = new Proxy(tokens, {
    get(target, key, receiver) {
      if (typeof key === 'string' && /^-?\d+$/.test(key)) looks += 1
      return Reflect.get(target, key, receiver)
    },
  })
  return { tokens: watched, looks: () => looks }
}

describe('work grows with the length', () => {
  const units = [
    '10 minutes to ',
    'about 10 ',
    'between 1 and ',
    '180°C / ',
    'gas mark 4 or ',
    '1 1/2 and a half ',
    'until the oven ',
    'leave it ',
    'for at least up to ',
    '1 hour, ',
  ]
  const readers = { times: (t: readonly Token[]) => timesIn(t, '.'), heats: (t: readonly Token[]) => heatsIn(t, '.'), kit: kitIn }
  test.each(Object.entries(readers))('Z9 %s: twice the text is at most twice the looks', (_, reader) => {
    for (const unit of units) {
      const looks = [250, 500, 1000].map((times) => {
        const watched = counted(tokensOf(unit.repeat(times)))
        reader(watched.tokens)
        return watched.looks()
      })
      const [small = 0, middle = 0, large = 0] = looks
      expect(small).toBeGreaterThan(250)
      expect(middle / small).toBeLessThan(2.1)
      expect(large / middle).toBeLessThan(2.1)
    }
  })
  test('Z9 a step beyond its limit is not read further', () => {
    const long = readStep('Bake for 10 minutes. '.repeat(10_000), null, '.')
    expect(long.times.length).toBeLessThan(200)
    expect(long.doubts.map((doubt) => doubt.kind)).toContain('too-long')
  })

  // A quantifier around a quantifier is where a regular expression can lose itself. These two cannot: what is repeated inside can
  // never be what is repeated outside.
  const sound = [/\\p\{L\}\\p\{M\}\*/, /\[-–—•\*·▪◦‣☐□✓\+\]\\s\*/, /\[\.,\]\\d\+\)\*/, /\(\?:and\|then\)\\s\+\)\*/]
  const nestedQuantifiers = (pattern: string): boolean => /\((?:[^()\\]|\\.|\[[^\]]*\])*[+*](?:[^()\\]|\\.)*\)[+*]/.test(pattern)
  const patterns = sources(['lib/recipes']).flatMap((source) => {
    const found: string[] = []
    const visit = (node: ts.Node): void => {
      if (ts.isRegularExpressionLiteral(node)) found.push(node.text)
      ts.forEachChild(node, visit)
    }
    visit(ts.createSourceFile(source.path, source.text, ts.ScriptTarget.Latest, true))
    return found
  })
  test('Z9 no regular expression repeats a repetition, but for those shown to be sound', () => {
    expect(patterns.length).toBeGreaterThan(60)
    expect(patterns.filter((pattern) => nestedQuantifiers(pattern) && !sound.some((each) => each.test(pattern)))).toEqual([])
    expect(nestedQuantifiers('/(a+)+$/')).toBe(true)
    expect(nestedQuantifiers('/(?:x|y*)*/')).toBe(true)
    expect(nestedQuantifiers('/a+(b)c*/')).toBe(false)
  })
})
