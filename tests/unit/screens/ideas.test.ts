import { expect, test } from 'vitest'
import { carryOut, firstIdea, type Idea, isForHosts } from '#app/_order/idea.ts'
import { ideaParts, ideaText } from '#app/_order/idea-sentence.ts'
import type { ChoiceBlank, TextBlank } from '#app/_ui/parts.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { planOf } from '../plan/open-plan.ts'
import { planned } from './planned.ts'

const pork = planned(loadEvening('c-pork'))
const withWays = {
  ...pork.evening,
  steps: pork.evening.steps.map((step, index) => (index === 0 ? { ...step, ways: [...step.ways, ...step.ways] } : step)),
}
const around = { evening: withWays, order: pork.order, names: pork.names, freshId: 'fresh-1' }
const KINDS: readonly Idea['kind'][] = ['sit-down', 'course', 'cook', 'covers', 'way']

const first = (kind: Idea['kind']): Idea => {
  const idea = firstIdea(kind, withWays, pork.order, around.freshId)
  if (!idea) throw new Error(`there is nothing of the kind ${kind}`)
  return idea
}

test('U28 every idea is one edit that makes a sound evening, and one undo takes it back', () => {
  for (const kind of KINDS) {
    const doc = planOf(withWays)
    const before = readPlan(doc).evening
    const undo = openUndo(doc)
    let updates = 0
    doc.on('update', () => updates++)
    expect(undo.edit((of) => carryOut(of, first(kind))).ok, kind).toBe(true)
    expect(updates, kind).toBe(1)
    const after = readPlan(doc)
    expect(after.reports, kind).toEqual([])
    expect(after.evening, kind).not.toEqual(before)
    expect(parseEvening(JSON.parse(JSON.stringify(after.evening))).ok, kind).toBe(true)
    undo.undo()
    expect(readPlan(doc).evening, kind).toEqual(before)
  }
})

test('U28 a course that comes sooner is never wanted before the plates are off, and the first one moves the sit-down', () => {
  const [starter, main] = pork.order.courses.map(({ course }) => course)
  const doc = planOf(withWays)
  carryOut(doc, { kind: 'course', course: main ?? '', minutes: -120 })
  const { wait } = readPlan(doc).evening.courses.find(({ id }) => id === main) ?? {}
  expect(wait).toEqual({ ideal: ['PT0S', 'PT0S'], most: 'PT0S' })
  carryOut(doc, { kind: 'course', course: starter ?? '', minutes: -30 })
  const sitDown = (of: typeof withWays) => epochMsOf(of, of.sitDown)
  expect(sitDown(readPlan(doc).evening)).toBe(sitDown(withWays) - 30 * 60_000)
})

test('U28 what is the host’s to say is said to be', () => {
  const [starter, main] = pork.order.courses.map(({ course }) => course)
  expect(isForHosts(withWays, first('sit-down'))).toBe(true)
  expect(isForHosts(withWays, first('covers'))).toBe(true)
  expect(isForHosts(withWays, { kind: 'course', course: starter ?? '', minutes: 5 })).toBe(true)
  expect(isForHosts(withWays, { kind: 'course', course: main ?? '', minutes: 5 })).toBe(false)
  expect(isForHosts(withWays, first('cook'))).toBe(false)
  expect(isForHosts(withWays, first('way'))).toBe(false)
})

test('U28 every blank of the sentence has a name of its own and changes the idea; what it means is read back', () => {
  for (const kind of KINDS) {
    const blanks = ideaParts(first(kind), around).filter(
      (part): part is TextBlank<Idea> | ChoiceBlank<Idea> =>
        typeof part !== 'string' && (part.kind === 'text' || part.kind === 'choice'),
    )
    expect(new Set(blanks.map(({ label }) => label)).size, kind).toBe(blanks.length)
    for (const blank of blanks) {
      if (blank.kind === 'text') {
        expect(blank.write(blank.text), `${kind} ${blank.at}`).toMatchObject({ kind: 'means', value: first(kind) })
        expect(blank.write('').kind, `${kind} ${blank.at}`).toBe('wrong')
      } else for (const [value] of blank.options) expect(blank.choose(value).kind, `${kind} ${blank.at} ${value}`).toBe('means')
    }
  }
})

test('U28 an idea is said as a sentence', () => {
  expect(ideaText(first('sit-down'), around)).toBe('what if everybody sat down at 19:45')
  expect(ideaText(first('covers'), around)).toBe('what if you were 10 people')
  const said = ideaText({ ...first('course'), minutes: -20 } as Idea, around)
  expect(said).toMatch(/^what if a course came .+ 20 min sooner$/)
  expect(ideaText(first('cook'), around)).toMatch(
    /^what if somebody helped: A helper, from 17:30 to \d\d:\d\d and did not sit down$/,
  )
})
