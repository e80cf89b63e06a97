import { expect, test } from 'vitest'
import type * as Y from 'yjs'
import { checkEvening } from '#lib/domain/check.ts'
import { addDish, addStep } from '#lib/plan/commands/add.ts'
import { setLag, setUses } from '#lib/plan/commands/method.ts'
import { moveCourse, moveDish, moveStep } from '#lib/plan/commands/move.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { renameCourse, renameDish, setFields } from '#lib/plan/commands/set.ts'
import { sharedText, typeText } from '#lib/plan/commands/type-text.ts'
import type { EntryRoot } from '#lib/plan/layout.ts'
import type { Place } from '#lib/plan/order-keys.ts'
import { readPlan } from '#lib/plan/read.ts'
import { type Dice, dice } from '#tests/support/dice.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { type ModelCook, modelCook, rawOf } from '#tests/support/undo-model.ts'
import { copyOf, exchange, planOf } from '#tests/unit/plan/open-plan.ts'
import { holdsOnAll, seeds } from './seeds.ts'

const lamb = readEvening('a-lamb')
const [dish1] = lamb.dishes
const [step1] = lamb.steps
if (!dish1 || !step1) throw new Error('the evening is too small')
const { order: _dishOrder, ...plainDish } = dish1
const { order: _stepOrder, ...plainStep } = step1
const HAPPENINGS = 70

/** Names, ids and letters that are never used twice in a run. */
const fresh = () => {
  let count = 0
  return () => {
    count += 1
    return count
  }
}
const letter = (n: number): string => String.fromCodePoint(0x4e00 + n)

/** One edit as a cook at a screen makes it; what the commands refuse is no edit. */
const randomEdit = (cook: ModelCook, chance: Dice, next: () => number): void => {
  const ids = (root: EntryRoot) => [...cook.doc.getMap(root).keys()]
  const idIn = (root: EntryRoot): string => chance.pick(ids(root).toSorted())
  const place = (root: EntryRoot): Place =>
    chance.pick<Place>([{ kind: 'first' }, { kind: 'last' }, { kind: 'after', id: idIn(root) }])
  const [step, dish] = [idIn('steps'), idIn('dishes')]
  const type = (doc: Y.Doc, at: number, put: string, cut: number) => typeText(doc, 'steps', step, 'does', { at, cut, put })
  const edits: (() => void)[] = [
    () => cook.edit((doc) => moveDish(doc, dish, idIn('courses'), place('dishes'))),
    () => cook.edit((doc) => moveDish(doc, dish, idIn('courses'), place('dishes'))),
    () => cook.edit((doc) => moveStep(doc, step, chance.int(0, 5) ? dish : null, place('steps'))),
    () => cook.edit((doc) => moveCourse(doc, idIn('courses'), place('courses'))),
    () => cook.edit((doc) => renameDish(doc, dish, `Dish ${next()}`)),
    () => cook.edit((doc) => renameDish(doc, dish, `Dish ${next()}`)),
    () => cook.edit((doc) => renameCourse(doc, idIn('courses'), `Course ${next()}`)),
    () => cook.edit((doc) => setFields(doc, 'dishes', dish, { portions: chance.int(0, 2) ? next() : undefined, yields: next() })),
    () => cook.edit((doc) => remove(doc, 'dishes', dish)),
    () => cook.edit((doc) => remove(doc, 'steps', step)),
    () => cook.edit((doc) => restore(doc, 'dishes', dish)),
    () => cook.edit((doc) => restore(doc, 'steps', step)),
    () => cook.edit((doc) => setUses(doc, step, 0, [{ kind: 'worktop', places: 1 + (next() % 40) }])),
    () => cook.edit((doc) => setLag(doc, step, { step: idIn('steps'), from: 'end', least: `PT${next()}M`, kind: 'quality' })),
    () =>
      cook.edit((doc) =>
        addStep(doc, { ...plainStep, id: `s-${next()}`, does: letter(next()), dish, after: [] }, place('steps')),
      ),
    // A dish with its steps, brought in at once.
    () =>
      cook.edit((doc) => {
        const id = `d-${next()}`
        addDish(doc, { ...plainDish, id, course: idIn('courses') }, place('dishes'))
        for (let n = chance.int(1, 3); n > 0; n -= 1)
          addStep(doc, { ...plainStep, id: `s-${next()}`, does: letter(next()), dish: id, after: [] })
      }),
    // A word, letter by letter.
    () => {
      const run = `word-${next()}`
      const at = chance.int(0, sharedText(cook.doc, 'steps', step, 'does')?.length ?? 0)
      for (let n = 0; n < 4; n += 1) cook.edit((doc) => type(doc, at + n, letter(next()), 0), run)
      if (chance.chance(0.3)) cook.edit((doc) => type(doc, at + 3, '', 1), run)
    },
    () => {
      const length = sharedText(cook.doc, 'steps', step, 'does')?.length ?? 0
      const at = chance.int(0, length)
      cook.edit((doc) => type(doc, at, chance.chance(0.5) ? letter(next()) : '', Math.min(length - at, chance.int(0, 3))))
    },
  ]
  chance.pick(edits)()
}

const threeCooks = (next: () => number): ModelCook[] => {
  const doc = planOf(lamb)
  for (const step of lamb.steps)
    setFields(doc, 'steps', step.id, { does: Array.from({ length: 5 }, () => letter(next())).join('') })
  return [doc, copyOf(doc), copyOf(doc)].map(modelCook)
}

const meet = (cooks: readonly ModelCook[], chance: Dice): void => {
  const [a, b] = chance.some(cooks, 2)
  if (a && b) exchange(a.doc, b.doc)
}

const meetAll = (cooks: readonly ModelCook[]): void => {
  for (let round = 0; round < 2; round += 1) for (const a of cooks) for (const b of cooks) if (a !== b) exchange(a.doc, b.doc)
}

const allEqual = (cooks: readonly ModelCook[]): void => {
  meetAll(cooks)
  const [first] = cooks
  if (!first) throw new Error('no cooks')
  const reading = readPlan(first.doc)
  for (const { doc } of cooks) {
    expect(rawOf(doc)).toEqual(rawOf(first.doc))
    expect(readPlan(doc)).toEqual(reading)
  }
  expect(checkEvening(reading.evening)).toEqual([])
  const odd = reading.reports.filter((report) => !report.includes('wait for each other in a circle'))
  if (odd.length > 0) throw new Error(odd.join(' / '))
}

let turns = 0

test('L5 three cooks move, rename, remove, bring back, type, add, undo and redo at once, 60 seeds: all copies equal, each undo exact', {
  timeout: 600_000,
}, () => {
  turns = 0
  holdsOnAll(seeds(1, 60), (seed) => {
    const chance = dice(seed)
    const next = fresh()
    const cooks = threeCooks(next)
    for (let n = 0; n < HAPPENINGS; n += 1) {
      const cook = chance.pick(cooks)
      const what = chance.int(0, 9)
      if (what < 5) randomEdit(cook, chance, next)
      else if (what < 7) meet(cooks, chance)
      else {
        const wrong = cook.turn(what < 9 ? 'undo' : 'redo')
        if (wrong !== null) return `after ${n} happenings, ${wrong}`
      }
    }
    allEqual(cooks)
    turns += cooks.reduce((sum, cook) => sum + cook.turns, 0)
    return null
  })
  if (process.env.SEED === undefined) expect(turns).toBeGreaterThan(500)
})

test('L5 one cook moves a dish while a second renames it and a third removes it, 60 seeds: the name is kept, and each takes back their own alone', {
  timeout: 600_000,
}, () => {
  holdsOnAll(seeds(1, 60), (seed) => {
    const chance = dice(seed)
    const next = fresh()
    const cooks = threeCooks(next)
    const [mover, renamer, remover] = chance.some(cooks, 3).toSorted(() => (chance.chance(0.5) ? 1 : -1))
    if (!mover || !renamer || !remover) throw new Error('three cooks')
    const dish = chance.pick(lamb.dishes)
    const course = chance.pick(lamb.courses.filter((one) => one.id !== dish.course)).id
    const edits = [
      () => mover.edit((doc) => moveDish(doc, dish.id, course, chance.pick<Place>([{ kind: 'first' }, { kind: 'last' }]))),
      () => renamer.edit((doc) => renameDish(doc, dish.id, 'The last name')),
      () => remover.edit((doc) => remove(doc, 'dishes', dish.id)),
    ]
    // The removal last, or apart: a dish that one sees gone cannot be moved or renamed.
    for (const edit of chance.chance(0.5) ? edits : [edits[1], edits[0], edits[2]]) {
      edit?.()
      if (chance.chance(0.4)) exchange(mover.doc, renamer.doc)
    }
    for (let n = chance.int(0, 3); n > 0; n -= 1) meet(cooks, chance)
    meetAll(cooks)
    const field = (cook: ModelCook, name: string) => rawOf(cook.doc).get(`dishes/${dish.id}/${name}`)
    const gone = { name: '"The last name"', course: JSON.stringify(course), gone: 'true' }
    const seen = (cook: ModelCook) => ({ name: field(cook, 'name'), course: field(cook, 'course'), gone: field(cook, 'gone') })
    for (const cook of cooks) expect(seen(cook)).toEqual(gone)

    const backs = [
      { cook: mover, now: { course: JSON.stringify(dish.course) } },
      { cook: renamer, now: { name: JSON.stringify(dish.name) } },
      { cook: remover, now: { gone: undefined } },
    ].toSorted(() => (chance.chance(0.5) ? 1 : -1))
    let wanted: Record<string, string | undefined> = gone
    for (const { cook, now } of backs) {
      const wrong = cook.turn('undo')
      if (wrong !== null) return wrong
      wanted = { ...wanted, ...now }
      meetAll(cooks)
      for (const one of cooks) expect(seen(one)).toEqual(wanted)
      const read = readPlan(cook.doc).evening.dishes.find((one) => one.id === dish.id)
      expect(read?.name).toBe(wanted.gone === 'true' ? undefined : JSON.parse(wanted.name ?? ''))
    }
    for (const { cook } of backs) {
      const wrong = cook.turn('redo')
      if (wrong !== null) return wrong
      if (chance.chance(0.5)) meet(cooks, chance)
    }
    allEqual(cooks)
    for (const one of cooks) expect(seen(one)).toEqual(gone)
    return null
  })
})
