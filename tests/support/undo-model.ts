import * as Y from 'yjs'
import { ENTRY_ROOTS } from '#lib/plan/layout.ts'
import { openUndo } from '#lib/plan/undo.ts'

/** Every field of every entry as it stands in the document, also of removed ones: "dishes/ID/name" → JSON, or a text after "~". */
export type Raw = ReadonlyMap<string, string>

export const rawOf = (doc: Y.Doc): Raw => {
  const raw = new Map<string, string>()
  const add = (path: string, map: Y.Map<unknown>) => {
    for (const [name, value] of map.entries())
      raw.set(`${path}/${name}`, value instanceof Y.Text ? `~${value.toString()}` : JSON.stringify(value))
  }
  for (const root of ENTRY_ROOTS)
    for (const [id, map] of doc.getMap(root).entries()) if (map instanceof Y.Map) add(`${root}/${id}`, map)
  add('evening/-', doc.getMap('evening'))
  return raw
}

/** What one step of undo is, found by comparing the whole document before and after the edit. Letters are all different. */
interface ModelStep {
  readonly fields: Map<string, { before: string | undefined; after: string | undefined }>
  readonly letters: Map<string, { put: Set<string>; cut: Set<string> }>
}

const isText = (value: string | undefined): boolean => value?.startsWith('~') === true
const lettersOf = (value: string | undefined): string[] => Array.from((value ?? '~').slice(1))
const entryOf = (path: string): string => path.slice(0, path.lastIndexOf('/'))

const stepBetween = (before: Raw, after: Raw): ModelStep | null => {
  const step: ModelStep = { fields: new Map(), letters: new Map() }
  const entries = new Set([...before.keys()].map(entryOf))
  for (const path of new Set([...before.keys(), ...after.keys()])) {
    const [was, is] = [before.get(path), after.get(path)]
    if (was === is) continue
    if (!entries.has(entryOf(path))) step.fields.set(`${entryOf(path)}/gone`, { before: 'true', after: undefined })
    else if (isText(was) && isText(is)) {
      const [old, now] = [new Set(lettersOf(was)), new Set(lettersOf(is))]
      step.letters.set(path, {
        put: new Set([...now].filter((letter) => !old.has(letter))),
        cut: new Set([...old].filter((letter) => !now.has(letter))),
      })
    } else step.fields.set(path, { before: was, after: is })
  }
  return step.fields.size + step.letters.size > 0 ? step : null
}

/** What undoing (or redoing) the step may do to a document, said of it before; and whether there is anything to do. */
const turned = (raw: Raw, step: ModelStep, way: 'undo' | 'redo') => {
  const [from, to] = way === 'undo' ? (['after', 'before'] as const) : (['before', 'after'] as const)
  const fields = new Map(raw)
  let any = step.letters.size > 0
  for (const [path, change] of step.fields) {
    if (raw.get(path) !== change[from]) continue
    const value = change[to]
    if (value === undefined) fields.delete(path)
    else fields.set(path, value)
    any = true
  }
  return { fields, any }
}

/** Why the document is not as the step's undoing should have left it, or null. */
const wrongAfter = (before: Raw, after: Raw, step: ModelStep, way: 'undo' | 'redo'): string | null => {
  const wanted = turned(before, step, way).fields
  for (const path of new Set([...wanted.keys(), ...after.keys()])) {
    const [should, is] = [wanted.get(path), after.get(path)]
    const letters = step.letters.get(path)
    if (!letters) {
      if (should !== is) return `${way}: ${path} should be ${should} and is ${is}`
      continue
    }
    const [gone, back] = way === 'undo' ? [letters.put, letters.cut] : [letters.cut, letters.put]
    const now = lettersOf(is)
    const left = now.filter((letter) => gone.has(letter))
    const missing = [...back].filter((letter) => !now.includes(letter))
    if (left.length + missing.length > 0) return `${way}: ${path} still has "${left}" or has not "${missing}"`
    const isOthers = (letter: string) => !gone.has(letter) && !back.has(letter)
    const [old, others] = [lettersOf(should).filter(isOthers).join(''), now.filter(isOthers).join('')]
    if (old !== others) return `${way}: ${path} had "${old}" of others and has "${others}"`
  }
  return null
}

/** A cook's copy of the plan and a second, independent account of what their undo must do. */
export interface ModelCook {
  readonly doc: Y.Doc
  edit(change: (doc: Y.Doc) => unknown, run?: string): void
  /** Undoes or redoes, and says what was wrong with it; null when all was right. `turns` counts those that did something. */
  turn(way: 'undo' | 'redo'): string | null
  readonly turns: number
}

export const modelCook = (doc: Y.Doc): ModelCook => {
  const undo = openUndo(doc)
  const done: ModelStep[] = []
  const undone: ModelStep[] = []
  let lastRun: string | undefined
  let turns = 0
  return {
    doc,
    get turns() {
      return turns
    },
    edit(change, run) {
      const before = rawOf(doc)
      undo.edit(change, run)
      const step = stepBetween(before, rawOf(doc))
      if (!step) return
      undone.length = 0
      const last = run !== undefined && run === lastRun ? done.at(-1) : undefined
      lastRun = run
      if (!last) done.push(step)
      else
        for (const [path, { put, cut }] of step.letters) {
          const known = last.letters.get(path) ?? { put: new Set(), cut: new Set() }
          last.letters.set(path, {
            put: new Set([...known.put, ...put].filter((letter) => !cut.has(letter))),
            cut: new Set([...known.cut, ...[...cut].filter((letter) => !known.put.has(letter))]),
          })
        }
    },
    turn(way) {
      lastRun = undefined
      const [from, to] = way === 'undo' ? [done, undone] : [undone, done]
      const before = rawOf(doc)
      let step = from.pop()
      while (step && !turned(before, step, way).any) step = from.pop()
      const did = way === 'undo' ? undo.undo() : undo.redo()
      if (did !== (step !== undefined)) return `${way}: did ${did ? 'something' : 'nothing'} and should have done the other`
      if (!step) return null
      to.push(step)
      turns += 1
      return wrongAfter(before, rawOf(doc), step, way)
    },
  }
}
