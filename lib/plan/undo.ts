import * as Y from 'yjs'
import { ENTRY_ROOTS, isEveningField, mayLack } from './layout.ts'

/** Undo and redo of what one person did on this device; what others did is never taken back. */
export interface Undo {
  /**
   * Makes an edit: one update, and one step of undo, however many commands run in it. Edits in a row that give the same
   * `run` are one step together: the letters of a word.
   */
  edit<T>(change: (doc: Y.Doc) => T, run?: string): T
  /** Takes back the last step of which anything is left to take back; false when there is none. */
  undo(): boolean
  redo(): boolean
  canUndo(): boolean
  canRedo(): boolean
  close(): void
}

/** A field and what an edit made of it; undefined: it is not there. */
interface FieldChange {
  readonly map: Y.Map<unknown>
  readonly name: string
  readonly before: unknown
  readonly after: unknown
}

interface Step {
  readonly fields: readonly FieldChange[]
  /** Letters were typed or deleted as well: one item of the library's own stack. */
  readonly letters: boolean
}

/**
 * A field goes back to what it was only while it still is what the edit made of it: what others made of it since stays. An
 * addition is taken back as a removal, so that nothing others wrote into the entry is lost. Letters are taken back one by
 * one, wherever they have got to.
 */
export const openUndo = (doc: Y.Doc): Undo => {
  const own = { editOf: doc.clientID }
  const back = { undoOf: doc.clientID }
  const letters = new Y.UndoManager([], { doc, trackedOrigins: new Set([own]), captureTimeout: 0 })
  const evening = doc.getMap('evening')
  const roots: readonly Y.Map<unknown>[] = [...ENTRY_ROOTS.map((root) => doc.getMap(root)), evening]
  let done: Step[] = []
  let undone: Step[] = []
  let noted: FieldChange[] = []
  let typed = false
  let lastRun: string | undefined

  const note = (events: readonly Y.YEvent<Y.AbstractType<unknown>>[], transaction: Y.Transaction) => {
    if (transaction.origin !== own) return
    for (const { target, changes } of events) {
      if (target instanceof Y.Text) {
        letters.addToScope(target)
        typed = true
      }
      if (!(target instanceof Y.Map)) continue
      for (const [name, { oldValue }] of changes.keys) {
        const after: unknown = target.get(name)
        if (after instanceof Y.Map) noted.push({ map: after, name: 'gone', before: true, after: undefined })
        else if (!(after instanceof Y.AbstractType || oldValue instanceof Y.AbstractType))
          noted.push({ map: target, name, before: oldValue, after })
      }
    }
  }
  for (const root of roots) root.observeDeep(note)

  const turnLetters = (stack: 'undoStack' | 'redoStack'): boolean => {
    // The library goes on to earlier items when nothing is left of the last one; whether to do so is decided here.
    const rest = letters[stack].splice(0, letters[stack].length - 1)
    const turned = stack === 'undoStack' ? letters.undo() : letters.redo()
    letters[stack].unshift(...rest)
    return turned !== null
  }

  const turnFields = (fields: readonly FieldChange[], from: 'before' | 'after', to: 'before' | 'after'): boolean => {
    const still = fields.filter((field) => isSame(field.map.get(field.name), field[from]))
    doc.transact(() => {
      for (const { map, name, [to]: value } of still) {
        if (value !== undefined) map.set(name, value)
        else if (map !== evening || (isEveningField(name) && mayLack(name))) map.delete(name)
      }
    }, back)
    return still.length > 0
  }

  return {
    edit(change, run) {
      noted = []
      typed = false
      const last = run !== undefined && run === lastRun ? done.at(-1) : undefined
      letters.captureTimeout = last?.letters ? Number.MAX_SAFE_INTEGER : 0
      const result = doc.transact(() => change(doc), own)
      if (noted.length === 0 && !typed) return result
      if (last) done = done.slice(0, -1)
      done = [...done, { fields: merged([...(last?.fields ?? []), ...noted]), letters: typed || last?.letters === true }]
      undone = []
      letters.clear(false, true)
      lastRun = run
      return result
    },
    undo() {
      lastRun = undefined
      for (let step = done.pop(); step; step = done.pop()) {
        const fields = turnFields(step.fields, 'after', 'before')
        const text = step.letters && turnLetters('undoStack')
        if (!fields && !text) continue
        undone.push({ fields: step.fields, letters: text })
        return true
      }
      return false
    },
    redo() {
      lastRun = undefined
      for (let step = undone.pop(); step; step = undone.pop()) {
        const fields = turnFields(step.fields, 'before', 'after')
        const text = step.letters && turnLetters('redoStack')
        if (!fields && !text) continue
        done.push({ fields: step.fields, letters: text })
        return true
      }
      return false
    },
    canUndo: () => done.length > 0,
    canRedo: () => undone.length > 0,
    close() {
      for (const root of roots) root.unobserveDeep(note)
      letters.destroy()
    },
  }
}

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

/** One change a field: from what it was first to what it is last. */
const merged = (changes: readonly FieldChange[]): readonly FieldChange[] => {
  const fields = new Map<Y.Map<unknown>, Map<string, FieldChange>>()
  for (const change of changes) {
    const known = fields.get(change.map) ?? new Map<string, FieldChange>()
    const first = known.get(change.name)
    known.set(change.name, first ? { ...change, before: first.before } : change)
    fields.set(change.map, known)
  }
  return [...fields.values()].flatMap((known) => [...known.values()])
}
