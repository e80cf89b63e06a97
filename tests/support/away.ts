import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { addStep } from '#lib/plan/commands/add.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { typeText } from '#lib/plan/commands/type-text.ts'
import { cook, course, dish, dishWith, evening, step } from './evening-builders.ts'

export const cooksOf = (count: number): string[] => Array.from({ length: count }, (_, n) => `cook${n}`)

/** A dish for each cook, and one with notes that all write in. */
export const awayEvening = (id: string, count: number): Evening =>
  evening(
    { id, cooks: cooksOf(count).map((name) => cook(name)) },
    course(
      'main',
      dish('shared', dishWith({ notes: NOTES }), step('common', 5)),
      ...cooksOf(count).map((_, n) => dish(`dish${n}`, step(`step${n}`, 5))),
    ),
  )

const NOTES = 'Together.'

/** What must be there when a cook's edits have come home. */
export interface Away {
  readonly added: readonly string[]
  readonly typed: readonly string[]
  /** The last word on the cook's own step. */
  readonly last: string
}

/** One cook's edits from this number to that: a new step now and then, words in the notes that all write in, the own step over and over. */
export const editAway = (doc: Y.Doc, n: number, from: number, to: number): Away => {
  const pattern = awayEvening('pattern', 1).steps.find(({ id }) => id === 'common')
  if (!pattern) throw new Error('no common step')
  const { order: _order, ...common } = pattern
  const away = { added: [] as string[], typed: [] as string[], last: '' }
  for (let edit = from; edit < to; edit += 1) {
    const [id, word, does] = [`added-${n}-${edit}`, ` ${n}.${edit};`, `Edit ${edit}`]
    if (edit % 20 === 0) {
      must(addStep(doc, { ...common, id, after: [] }))
      away.added.push(id)
    } else if (edit % 5 === 1) {
      must(typeText(doc, 'dishes', 'shared', 'notes', { at: NOTES.length, cut: 0, put: word }))
      away.typed.push(word)
    } else {
      must(setFields(doc, 'steps', `step${n}`, { does }))
      away.last = does
    }
  }
  return away
}

const must = (result: { readonly ok: boolean }) => {
  if (!result.ok) throw new Error(`an edit was refused: ${JSON.stringify(result)}`)
}

/** What of it is not in the plan as it came together, or is in it twice. */
export const lostOf = (n: number, { added, typed, last }: Away, plan: Evening): string[] => {
  const notes = plan.dishes.find(({ id }) => id === 'shared')?.notes ?? ''
  const times = (word: string) => notes.split(word).length - 1
  return [
    ...added.filter((id) => !plan.steps.some((one) => one.id === id)),
    ...typed.filter((word) => times(word) !== 1),
    ...(plan.steps.find(({ id }) => id === `step${n}`)?.does === last ? [] : [last]),
  ]
}
