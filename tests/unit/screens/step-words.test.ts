import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lackText } from '#app/_dish/kit-lack.ts'
import { shapeOf, withShape } from '#app/_dish/lag-words.ts'
import { withBounds, withUsual } from '#app/_dish/minutes.ts'
import { type Scene, sceneOf } from '#app/_dish/scene.ts'
import { splitWords } from '#app/_dish/split-words.ts'
import { applyStepEdit, type StepEdit } from '#app/_dish/step-edit.ts'
import { moreLine } from '#app/_dish/step-line.ts'
import { presetParts } from '#app/_dish/step-presets.ts'
import { stepSentences } from '#app/_dish/step-sentences.ts'
import { toldParts } from '#app/_dish/told-way.ts'
import { waitsThrough } from '#app/_dish/waits-through.ts'
import { blankStep } from '#app/_menu/blank.ts'
import { type Part, readOut, type Said } from '#app/_ui/parts.ts'
import { heatMeans, heatText, readDegrees, readHeat } from '#app/_words/heat.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { readAmount, readCount } from '#app/_words/read-count.ts'
import { wayText } from '#app/_words/way.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { After, Step } from '#lib/domain/menu.ts'
import { safeCores } from '#lib/domain/safe-core.ts'
import { readPlan } from '#lib/plan/read.ts'
import { fillIn } from '#tests/support/fill-in.ts'
import { HARD, hardEvening } from '#tests/support/hard-step.ts'
import { planOf } from '../plan/open-plan.ts'

const evening = hardEvening()
const stepIn = (of: Evening, id: string): Step => {
  const step = of.steps.find((candidate) => candidate.id === id)
  if (!step) throw new Error(`no step ${id}`)
  return step
}
const sceneIn = (of: Evening, id: string, change: Partial<Step> = {}): Scene =>
  sceneOf({ ...stepIn(of, id), ...change }, { evening: of, kitchens: '/kitchens', newId: () => 'fresh' })
const scene = sceneIn(evening, HARD)

const partAt = (of: Scene, at: string): Part<StepEdit> => {
  const found = [...stepSentences(of).flatMap(({ parts }) => parts), ...presetParts(of)].find(
    (part) => typeof part !== 'string' && part.at === at,
  )
  if (!found) throw new Error(`no blank ${at}`)
  return found
}
const put = (of: Scene, at: string, words: string): Said<StepEdit> => {
  const [made] = fillIn(partAt(of, at), [words]).filter((one) => one.put === words)
  if (!made) throw new Error(`${words} cannot be put into ${at}`)
  return made.said
}
/** The evening after a blank is filled in, as the plan reads it. */
const filled = (of: Scene, at: string, words: string): Evening => {
  const said = put(of, at, words)
  if (said.kind === 'wrong') throw new Error(said.why)
  const doc = planOf(of.evening)
  expect(applyStepEdit(doc, of.step.id, said.value)).toMatchObject({ ok: true })
  return readPlan(doc).evening
}

describe('reading what people write', () => {
  test('U5 heat is read in °C, °F, gas marks and for a fan oven, and nothing else is', () => {
    // Marks: several cookery tables agree, no official standard. A fan oven is set 20 °C lower: NSW Health, Conversion chart.
    const cases: readonly (readonly [string, readonly [number, number] | null])[] = [
      ['190 to 200', [190, 200]],
      ['190–200 °C', [190, 200]],
      ['350 F', [177, 177]],
      ['325°F to 350°F', [163, 177]],
      ['gas 4', [180, 180]],
      ['Gas mark 5 to 6', [190, 200]],
      ['mark ½', [120, 120]],
      ['180 fan', [200, 200]],
      ['fan 160 to 170°', [180, 190]],
      ['160°C (fan)', [180, 180]],
      ['gas 10', null],
      ['200 C to 390 F', null],
      ['600', null],
      ['200 to 190', null],
      ['', null],
    ]
    for (const [text, heat] of cases) expect(readHeat(text), text).toEqual(heat)
    expect(heatMeans(180, 200)).toBe('fan 160 to 180°, gas 4 to 6, 355 to 390 °F')
    expect(readDegrees('165 F')).toBe(73.9)
    expect(readDegrees('63,5°')).toBe(63.5)
    expect(readDegrees('hot')).toBeNull()
    fc.assert(
      fc.property(fc.integer({ min: -40, max: 480 }), fc.integer({ min: 0, max: 20 }), (low, more) => {
        expect(readHeat(heatText(low, low + more))).toEqual([low, low + more])
        expect(readHeat(`fan ${heatText(low - 20, low + more - 20)}`)).toEqual([low, low + more])
      }),
    )
  })

  test('U5 times of day and counts are read as people write them', () => {
    const clocks: readonly (readonly [string, string | null])[] = [
      ['17:00', '17:00'],
      ['9', '09:00'],
      ['17.30', '17:30'],
      ['1730', '17:30'],
      ['17h', '17:00'],
      ['5 pm', '17:00'],
      ['12 am', '00:00'],
      ['noon', '12:00'],
      ['25:00', null],
      ['13 pm', null],
      ['soon', null],
    ]
    for (const [text, clock] of clocks) expect(readClock(text), text).toBe(clock)
    expect(['two shelves', '3 places', 'one of them', '0', 'many'].map(readCount)).toEqual([2, 3, 1, null, null])
    expect(['6', '4.5', 'six', '0', 'all'].map(readAmount)).toEqual([6, 4.5, 6, null, null])
  })

  test('U12 how long a step may stay is said beyond its most, or in all', () => {
    const stay = (words: string) => stepIn(filled(scene, 'ways.0.upTo', words), HARD).ways[0]?.upTo
    expect(stay('30 min more')).toBe('PT2H15M')
    expect(stay('up to 30 min')).toBe('PT2H15M')
    expect(stay('2 h in all')).toBe('PT2H')
    expect(stay('no longer')).toBeUndefined()
    expect(put(scene, 'ways.0.upTo', '1 h in all')).toMatchObject({ kind: 'wrong', why: expect.stringContaining('1 h 45') })
  })

  test('U12 every shape of a wait is the shape that its times have', () => {
    const times = fc.integer({ min: 0, max: 2880 }).map((minutes) => durationOf(minutes * 60))
    const lags = fc.tuple(times, fc.option(times, { nil: undefined })).map(
      ([least, most]): After => ({
        step: 'a',
        from: 'end',
        least,
        ...(most === undefined || secondsOf(most) < secondsOf(least) ? {} : { most }),
        kind: 'quality',
      }),
    )
    fc.assert(
      fc.property(lags, fc.constantFrom('any', 'right', 'least', 'most', 'between' as const), (lag, shape) => {
        const made = withShape(lag, shape as 'any')
        expect(shapeOf(made)).toBe(shape)
        expect(made.most === undefined || secondsOf(made.most) >= secondsOf(made.least)).toBe(true)
        expect(withShape(made, shapeOf(made))).toEqual(made)
      }),
    )
  })

  test('U12 a step is one sentence when it is folded, and says only what was said of it', () => {
    expect(stepIn(evening, HARD).ways.map(wayText)).toEqual([
      'Leave it in the oven at 180 to 195°, one shelf, already hot and with two × deep tin, usually 80 min (70 min to 1 h 45), ' +
        'up to 2 h 15; put in, baste every 20 min, seen to every 45 min, turn every 30 min, seen to every 60 min, taken out.',
      'Keep an eye on it on a large ring and with two places on the worktop, usually 50 min (40 to 60 min).',
      'Hands on, two cooks, with one place in the freezer, usually 30 min (25 to 40 min).',
    ])
    const pan = scene.names.stepName('B1')
    expect(moreLine(scene)).toBe(
      'Ready when a knife goes through without pushing, 74° inside; can be done from Thursday 17:00, done by 14:00; ' +
        `4 at a time, two batches; in the same pan as “${pan}”.`,
    )
    const { until: _u, earliest: _e, latest: _l, batch: _b, vessel: _v, ...plain } = stepIn(evening, HARD)
    expect(moreLine(sceneOf(plain, scene))).toBe('')
  })

  test('U12 hostile and random words are understood or refused with what to do, never anything else', () => {
    const blanks = stepSentences(scene).flatMap(({ parts }) =>
      parts.flatMap((part) => (typeof part !== 'string' && part.kind === 'text' ? [part] : [])),
    )
    const words = fc.oneof(
      fc.string(),
      fc.stringMatching(/^[0-9]{0,7}[ .,:½-]{0,2}(min|h|days|F|°|gas|fan|to)? ?[0-9]{0,7}$/),
      fc.constantFrom('<img src=x onerror=alert(1)>', '\u202e', 'P1Y', '1e9', '99999 days', '-1', '0', '0 min', '½ min'),
    )
    fc.assert(
      fc.property(fc.constantFrom(...blanks), words, (part, text) => {
        const said = part.write(text)
        if (said.kind === 'wrong') {
          expect(said.why).toMatch(/^[A-Z“].*[.]$/)
          return
        }
        const doc = planOf(evening)
        expect(applyStepEdit(doc, HARD, said.value), `${part.at} “${text}”`).toMatchObject({ ok: true })
        expect(readPlan(doc).reports, `${part.at} “${text}”`).toEqual([])
      }),
      { numRuns: 150 },
    )
  })
})

describe('what one tap or word brings with it', () => {
  test('U13 the usual length suggests the others, and keeps what a person set as long as it can', () => {
    const common = { least: 'PT40M', likely: 'PT45M', most: 'PT55M' }
    expect(withUsual(common, 'PT1H')).toEqual({ least: 'PT55M', likely: 'PT1H', most: 'PT1H15M' })
    expect(withUsual({ ...common, most: 'PT1H30M' }, 'PT1H')).toEqual({ least: 'PT55M', likely: 'PT1H', most: 'PT1H30M' })
    expect(withUsual({ least: 'PT30M', likely: 'PT45M', most: 'PT50M' }, 'PT1H')).toMatchObject({
      least: 'PT30M',
      most: 'PT1H15M',
    })
    expect(withBounds(common, ['PT50M', 'PT1H'])).toEqual({ least: 'PT50M', likely: 'PT50M', most: 'PT1H' })
    const minutes = fc.integer({ min: 1, max: 600 })
    fc.assert(
      fc.property(minutes, minutes, minutes, minutes, (a, b, c, usual) => {
        const [least, likely, most] = [a, b, c].toSorted((x, y) => x - y).map((one) => durationOf(one * 60))
        const made = withUsual({ least: least ?? '', likely: likely ?? '', most: most ?? '' }, durationOf(usual * 60))
        expect(secondsOf(made.least)).toBeLessThanOrEqual(secondsOf(made.likely))
        expect(secondsOf(made.likely)).toBeLessThanOrEqual(secondsOf(made.most))
      }),
    )
    expect(stepIn(filled(scene, 'ways.1.takes.bounds', ''), HARD).ways[1]?.takes).toMatchObject({ least: 'PT45M', most: 'PT1H' })
  })

  test('U13 a usual step is said in two taps; words and minutes that somebody wrote stay', () => {
    const blank: Step = { ...blankStep('hard', 'lamb', undefined), order: 'zz' }
    const fresh = sceneIn(evening, HARD, blank)
    for (const part of presetParts(fresh)) {
      const [made] = fillIn(part)
      if (made?.said.kind !== 'means' || made.said.value.kind !== 'fields') throw new Error('a preset sets fields')
      const { patch } = made.said.value
      expect(patch.does, made.at).toMatch(/^[A-Z]/)
      expect(patch.ways, made.at).toHaveLength(1)
    }
    const written = sceneIn(evening, HARD, {
      ...blank,
      does: 'Roast the squash',
      ways: [{ ...(blank.ways[0] as Step['ways'][number]), takes: { least: 'PT33M', likely: 'PT37M', most: 'PT41M' } }],
    })
    const roast = put(written, 'preset.oven', 'Into the oven')
    expect(roast).toMatchObject({
      value: { patch: { ways: [{ care: 'leave', takes: { likely: 'PT37M' }, uses: [{ kind: 'oven' }] }] } },
    })
    expect(roast).not.toHaveProperty('value.patch.does')
  })

  test('U13 a chore of the house is offered no cooking', () => {
    const chore = sceneIn(evening, HARD, { ...blankStep('hard', null, undefined), order: 'zz' })
    expect(presetParts(chore).map(({ at }) => at)).toEqual(['preset.hand', 'preset.chill', 'preset.freeze'])
  })

  test('U13 “then” in the words of a step is where it can be split', () => {
    expect(splitWords('Peel the potatoes, then boil them')).toEqual(['Peel the potatoes', 'Boil them'])
    expect(splitWords('Whisk the eggs and then fold them in')).toEqual(['Whisk the eggs', 'Fold them in'])
    expect(splitWords('Salt it. Leave it')).toEqual(['Salt it', 'Leave it'])
    expect(splitWords('Blend, thenceforth smooth')).toBeNull()
    expect(splitWords('Bake at 1.5 times')).toBeNull()
  })
})

describe('what is refused or warned of', () => {
  test('U14 a circle of waits is refused with the steps that it goes through', () => {
    const [waited] = stepIn(evening, HARD).after
    const of = sceneIn(evening, waited?.step ?? '')
    expect(put(of, 'after.more', HARD)).toMatchObject({
      kind: 'wrong',
      why: expect.stringMatching(/waits for .* already.*Take that away first/),
    })
    expect(waitsThrough(evening.steps, HARD, HARD)).toEqual([HARD])
    expect(waitsThrough(evening.steps, waited?.step ?? '', HARD)).toBeNull()
    const chained = {
      ...evening,
      steps: evening.steps.map((step) => (step.id === 'B2' ? { ...step, after: [...step.after, lagTo(HARD)] } : step)),
    }
    const through = put(sceneIn(chained, waited?.step ?? ''), 'after.more', 'B2')
    expect(through).toMatchObject({ kind: 'wrong', why: expect.stringContaining(`by way of “${scene.names.stepName(HARD)}”`) })
  })

  test('U14 it cannot be over before it can begin, and the other end is named', () => {
    expect(put(scene, 'latest.day', '-3')).toMatchObject({ kind: 'wrong', why: expect.stringContaining('Thursday 17:00') })
    expect(put(scene, 'earliest.day', '1')).toMatchObject({ kind: 'wrong', why: expect.stringContaining('14:00') })
    expect(stepIn(filled(scene, 'earliest.day', '-1'), HARD).earliest).toEqual({ day: -1, time: '17:00' })
  })

  test('U14 the same pan: joined by both, shown by all, left by the last', () => {
    const vesselsIn = (of: Evening) => of.steps.filter((step) => step.vessel !== undefined).map((step) => [step.id, step.vessel])
    const left = filled(scene, 'vessel', '')
    expect(vesselsIn(left)).toEqual([])
    const joined = filled(sceneIn(left, HARD), 'vessel', 'B1')
    expect(vesselsIn(joined)).toEqual([
      ['B1', 'fresh'],
      [HARD, 'fresh'],
    ])
    for (const id of ['B1', HARD]) {
      const said = stepSentences(sceneIn(joined, id)).find(({ key }) => key === 'vessel')
      expect(readOut(said?.parts ?? [])).toMatch(/the same pan as .*keeps its ring from the first to the last of/)
    }
    const third = joined.steps.find(
      (step) => step.vessel === undefined && step.ways.some((way) => way.uses.some((use) => use.kind === 'ring')),
    )
    expect(vesselsIn(filled(sceneIn(joined, HARD), 'vessel', third?.id ?? '')).map(([id]) => id)).toEqual(
      [third?.id, HARD].toSorted(),
    )
  })

  test('U15 what the kitchen has not is said, in its own words', () => {
    const kitchen = scene.kitchen
    const lack = (use: Parameters<typeof lackText>[0]) => lackText(use, kitchen)
    expect(lack({ kind: 'ring', size: 'small' })).toBeNull()
    expect(lack({ kind: 'tool', tool: 'Blender', count: 1 })).toBeNull()
    expect(lack({ kind: 'tool', tool: 'deep tin', count: 1 })).toMatch(/has no deep tin yet/)
    expect(lack({ kind: 'tool', tool: 'blender', count: 2 })).toMatch(/only one/)
    expect(lack({ kind: 'cold', keep: 'frozen', places: 1 })).toMatch(/no freezer/)
    expect(lack({ kind: 'cold', keep: 'cold', places: 40 })).toMatch(/four places in the fridge/)
    expect(lack({ kind: 'oven', shelves: 4, lowC: 180, highC: 190, preheated: true })).toMatch(/two shelves/)
    expect(lack({ kind: 'oven', shelves: 1, lowC: 375, highC: 375, preheated: true })).toMatch(/write 375 F/)
    const oven = { kind: 'oven', name: '', upPerMin: 8, downPerMin: 3 } as const
    expect(
      lackText(
        { kind: 'oven', shelves: 2, lowC: 240, highC: 240, preheated: true },
        {
          id: 'k',
          name: 'The shed',
          toTable: 'PT0S',
          kit: [
            { ...oven, id: 'deep', shelves: 3, maxC: 200 },
            { ...oven, id: 'hot', shelves: 1, maxC: 275 },
          ],
        },
      ),
    ).toBe('The shed has no one oven with two shelves that reaches 240°.')
    expect(lackText({ kind: 'ring', size: 'large' }, { id: 'k', name: 'The shed', toTable: 'PT0S', kit: [] })).toBe(
      'The shed has no large ring.',
    )
  })

  test('U15 a temperature below a published one is said to be so; none is ever said to be safe', () => {
    // FoodSafety.gov, "Cook to a Safe Minimum Internal Temperature": poultry 165 °F (74 °C), whole cuts 145 °F (63 °C) and
    // 3 min of rest, ground meat and egg dishes 160 °F (71 °C), fish 145 °F (63 °C).
    const cores = (...foods: string[]) =>
      safeCores(foods.map((food) => ({ food, contains: [] }))).map(({ atLeastC, restMinutes }) => [atLeastC, restMinutes])
    expect(cores('chicken thighs, bone in', 'chicken stock')).toEqual([[74, 0]])
    expect(cores('minced beef')).toEqual([[71, 0]])
    expect(cores('lamb shoulder', 'eggs')).toEqual([
      [63, 3],
      [71, 0],
    ])
    expect(cores('salmon fillet')).toEqual([[63, 0]])
    expect(cores('carrots', 'fish sauce', 'eggplant', 'duck fat')).toEqual([])
    const chicken = {
      ...evening,
      ingredients: [
        {
          id: 'i1',
          dish: 'lamb',
          order: 'a',
          food: 'chicken thighs',
          amount: null,
          scales: 'yes',
          allergens: [],
          checked: 'unknown',
          contains: [],
        } as const,
      ],
    } as unknown as Evening
    const noteAt = (coreC: number | undefined) => {
      const part = partAt(sceneIn(chicken, HARD, { until: { ...(coreC === undefined ? {} : { coreC }) } }), 'until.safe')
      if (typeof part === 'string' || part.kind !== 'note') throw new Error('not a note')
      return part
    }
    expect(noteAt(63)).toMatchObject({ tone: 'amiss', words: expect.stringMatching(/less than .*74° for poultry.*local rules/) })
    for (const coreC of [undefined, 74, 80]) {
      expect(noteAt(coreC).tone).toBe('means')
      expect(noteAt(coreC).words).toMatch(/local rules; the thermometer decides/)
      expect(noteAt(coreC).words).not.toMatch(/\bsafe\b/i)
    }
  })
})

const lagTo = (step: string): After => ({ step, from: 'end', least: 'PT0S', kind: 'quality' })

test('U13 what the words of a blank step say is offered, and nothing where they say nothing for certain', () => {
  const blank = (does: string): Scene => sceneIn(evening, HARD, { ...blankStep(HARD, 'lamb', undefined), order: 'zz', does })
  const [told] = toldParts(blank('Roast the squash for 45 minutes at 200°C'))
  if (typeof told === 'string' || told?.kind !== 'press') throw new Error('nothing is offered')
  expect(told.words).toMatch(/^As the words say: Leave it in the oven at 195 to 210°, one shelf/)
  expect(told.press()).toMatchObject({
    value: { patch: { ways: [{ care: 'leave', takes: { least: 'PT40M', likely: 'PT45M', most: 'PT55M' } }] } },
  })
  for (const does of ['Peel the potatoes', '', 'Fry for a while', 'Boil for 5 minutes. Rest for 10 minutes'])
    expect(toldParts(blank(does)), does).toEqual([])
  expect(toldParts(sceneIn(evening, HARD, { does: 'Roast for 45 minutes at 200°C' }))).toEqual([])
})
