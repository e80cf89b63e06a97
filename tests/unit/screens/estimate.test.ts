import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Asked, answerTo, type NoEstimate, questionsFor, ROASTED } from '#app/_quantities/estimate.ts'
import { batchText } from '#app/_words/batch.ts'
import { askedWords, assumesText, estimateText, hobWords, noEstimateText, ovenWords, shapeWords } from '#app/_words/estimate.ts'
import { sourceText } from '#app/_words/source.ts'
import { Span } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Kit } from '#lib/domain/kitchen.ts'
import type { Way } from '#lib/domain/menu.ts'
import { estimateSpan } from '#lib/quantities/estimate.ts'

const way = (...uses: Way['uses']) => ({ uses })
const answer = (asked: Asked) => {
  const found = answerTo(asked)
  if (!found.ok) throw new Error(found.error.kind)
  return found.value
}
const refused = (asked: Asked): NoEstimate => {
  const found = answerTo(asked)
  if (found.ok) throw new Error('an answer was given')
  return found.error
}
const boil: Asked = { kind: 'boil', litres: 4, fromC: 15, hob: 'induction', kW: 2 }
const chill: Asked = { kind: 'chill', shape: 'shallow box', fromC: 60, toC: 8, fridgeC: 4 }

describe('minutes offered', () => {
  test('Q10 four litres on 2 kW of induction: 4 × 4.186 × 85 ÷ (2 × 0.84) s = 14.1 min, taken over as half minutes with its spread', () => {
    expect(answer(boil).likely).toBe(14.1)
    expect(estimateText(answer(boil))).toBe('usually 14 min, 13 to 15½ min')
    expect(estimateSpan(answer(boil))).toEqual({ least: 'PT13M', likely: 'PT14M', most: 'PT15M30S' })
  })

  test('Q11 2 kg of boneless lamb leg: 25 to 30 min a pound (FoodSafety.gov, 4 to 7 lb row), with its oven, its inside and its rest', () => {
    // 2 kg = 4.40925 lb; × 25 = 110.2, × 30 = 132.3 min; 325 °F = 163 °C, 145 °F = 63 °C and 3 min.
    const lamb = answer({ kind: 'roast', joint: 'lamb leg, boneless', kg: 2 })
    expect(lamb).toMatchObject({ least: 110.2, most: 132.3, roast: { restMinutes: 3 } })
    expect(Math.round(lamb.roast?.ovenC ?? 0)).toBe(163)
    expect(Math.round(lamb.roast?.coreC ?? 0)).toBe(63)
  })

  test('Q11 outside the published rows it is refused in words that name the rows', () => {
    expect(noEstimateText(refused({ kind: 'roast', joint: 'chicken', kg: 8 }))).toMatch(
      /from 1\.4 to 1\.8 kg and from 2\.3 to 3\.2 kg only/,
    )
    expect(refused({ kind: 'roast', joint: 'chicken', kg: -1 }).kind).toBe('weight-outside')
    expect(refused({ kind: 'roast', joint: 'pork', kg: 40 }).kind).toBe('weight-outside')
  })

  test('Q12 nothing gets colder than its fridge, Q10 no water and Q13 no heat are refused, each in words', () => {
    const told: readonly [NoEstimate['kind'], Asked][] = [
      ['never-so-cold', { ...chill, toC: 4 }],
      ['not-warmer', { ...chill, fromC: 5, toC: 8 }],
      ['too-long', { ...chill, shape: 'pot', toC: 4.01 }],
      ['no-water', { ...boil, litres: 0 }],
      ['no-water', { ...boil, fromC: 100 }],
      ['no-water', { ...boil, kW: 0 }],
      ['no-heat', { kind: 'preheat', toC: 20, oven: 'gas', ownPerMin: null }],
      ['unknown-joint', { kind: 'roast', joint: 'unicorn', kg: 2 }],
    ]
    for (const [kind, asked] of told) {
      const why = refused(asked)
      expect(why.kind).toBe(kind)
      expect(noEstimateText(why).length).toBeGreaterThan(25)
    }
  })

  test('Q13 an oven that is known heats as it is said to: (200 − 20) ÷ 8 = 22.5 min', () => {
    expect(answer({ kind: 'preheat', toC: 200, oven: 'own', ownPerMin: 8 }).likely).toBe(22.5)
    expect(answer({ kind: 'preheat', toC: 200, oven: 'electric', ownPerMin: 8 })).toMatchObject({ least: 10, most: 15 })
  })

  test('Q16 every estimate names all that it assumes, and its sources', () => {
    const asked: Asked[] = [
      boil,
      chill,
      { ...chill, shape: 'pot' },
      { kind: 'preheat', toC: 200, oven: 'own', ownPerMin: 8 },
      ...Object.keys(ovenWords).map((oven): Asked => ({ kind: 'preheat', toC: 200, oven: oven as 'gas', ownPerMin: null })),
      ...Object.keys(hobWords).map((hob): Asked => ({ ...boil, hob: hob as 'gas' })),
      ...ROASTED.map((joint): Asked => ({ kind: 'roast', joint, kg: 1 })),
    ]
    const answers = asked.map((each) => answerTo(each)).flatMap((each) => (each.ok ? [each.value] : []))
    expect(answers.length).toBeGreaterThan(15)
    for (const each of answers) {
      for (const [index, name] of Object.keys(each.assumes).entries())
        expect(assumesText(each)[index]).not.toBe(`${name} ${each.assumes[name]}`)
      expect(each.sources.length).toBeGreaterThan(0)
      for (const source of each.sources) expect(sourceText(source).length).toBeGreaterThan(10)
    }
    expect(Object.keys(askedWords).sort()).toEqual([...new Set(asked.map((each) => each.kind))].sort())
    expect(Object.keys(shapeWords)).toHaveLength(2)
  })

  test('Q16 whatever is estimated is a span that the evening takes, in order', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3000, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }), (least, more) => {
        const span = estimateSpan({ least, likely: least + more / 2, most: least + more })
        expect(Span.safeParse(span).success).toBe(true)
        expect(secondsOf(span.least)).toBeLessThanOrEqual(secondsOf(span.likely))
        expect(secondsOf(span.likely)).toBeLessThanOrEqual(secondsOf(span.most))
        expect(secondsOf(span.least)).toBeGreaterThan(0)
      }),
    )
  })

  test('Q16 the question that fits a step comes first, filled in from its words and its oven', () => {
    const oven = { kind: 'oven', shelves: 1, lowC: 160, highC: 170, preheated: true } as const
    const kit: Kit[] = [{ id: 'oven', kind: 'oven', name: 'Oven', shelves: 2, maxC: 250, upPerMin: 6, downPerMin: 3 }]
    const first = (does: string, ...uses: Way['uses']) => questionsFor({ does }, way(...uses), kit)[0]
    expect(first('Bring 3 litres of water to the boil')).toMatchObject({ kind: 'boil', litres: 3 })
    expect(first('Roast the lamb shoulder of 1.5 kg', oven)).toEqual({ kind: 'roast', joint: 'lamb shoulder', kg: 1.5 })
    expect(first('Chill it', { kind: 'cold', keep: 'cold', places: 1 })?.kind).toBe('chill')
    expect(first('Heat the oven', oven)).toEqual({ kind: 'preheat', toC: 170, oven: 'own', ownPerMin: 6 })
    expect(questionsFor({ does: '' }, way(), [])).toHaveLength(4)
  })
})

describe('batches', () => {
  const takes = { least: 'PT10M', likely: 'PT12M', most: 'PT15M' }
  test('Q8 eight portions, six fit: two batches of 12 min are 24 min, and the last takes as long', () => {
    expect(batchText(8, { portions: 6, together: 1 }, takes)).toBe(
      '8 portions, 6 fit: two batches, 24 min in all. The last one has 2 and takes as long.',
    )
    expect(batchText(8, { portions: 4, together: 2 }, takes)).toBe(
      '8 portions, 4 fit: two batches, one round with 2 at once, 12 min in all.',
    )
    expect(batchText(6, { portions: 6, together: 1 }, takes)).toBe('6 portions, 6 fit: all at once.')
  })
})
