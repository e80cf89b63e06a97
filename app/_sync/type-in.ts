import type * as Y from 'yjs'
import { placeAfter, type TextDifference, typedDifference } from '#lib/plan/commands/text.ts'

/** What is needed of a textarea. */
export type TextBox = Pick<
  HTMLTextAreaElement,
  'value' | 'selectionStart' | 'selectionEnd' | 'scrollTop' | 'setSelectionRange' | 'addEventListener' | 'removeEventListener'
>

export interface Typing {
  /** Writes what was typed into the plan, as part of a step of undo; false when it was refused, and is taken out again. */
  readonly type: (change: TextDifference, run: string) => boolean
  /** Whether the caret is in the box just now. */
  readonly hasCaret: () => boolean
}

/**
 * Keeps a box and a shared text the same, letter by letter: what is typed goes into the text where the caret is, what
 * others type comes into the box without moving the caret within its words. While a letter is being composed (an accent,
 * a word of a phone's keyboard) the box is left alone: what others type meanwhile is shown when it is done.
 */
export const bindText = (box: TextBox, text: Y.Text, { type, hasCaret }: Typing): (() => void) => {
  let shown = text.toString()
  let isOwn = false
  let isComposing = false
  /** What others changed and the box does not show yet. */
  let ahead: readonly TextDifference[] = []
  const runOf = openRuns()
  box.value = shown

  const paint = (changes: readonly TextDifference[], caret: number | null) => {
    const places = [box.selectionStart, box.selectionEnd].map((place) => caret ?? changes.reduce(placeAfter, place))
    const { scrollTop } = box
    shown = text.toString()
    ahead = []
    if (box.value === shown) return
    box.value = shown
    if (hasCaret()) box.setSelectionRange(places[0] ?? 0, places[1] ?? 0)
    box.scrollTop = scrollTop
  }

  const write = () => {
    const typed = typedDifference(shown, box.value, box.selectionEnd)
    if (typed.cut > 0 || typed.put !== '') {
      const [at, end] = [ahead.reduce(placeAfter, typed.at), ahead.reduce(placeAfter, typed.at + typed.cut)]
      isOwn = true
      const done = type({ at, cut: end - at, put: typed.put }, runOf(typed))
      isOwn = false
      if (done) shown = box.value
      else box.value = shown
    }
    if (!isComposing) paint(ahead, null)
  }

  const onInput = () => {
    if (!isComposing || ahead.length === 0) write()
  }
  const onComposing = () => {
    isComposing = true
  }
  const onComposed = () => {
    isComposing = false
    write()
  }
  const onBlur = () => {
    onComposed()
    runOf.end()
  }
  const onChange = (event: Y.YTextEvent, transaction: Y.Transaction) => {
    if (isOwn) return
    const changes = differencesOf(event.delta)
    const last = changes.at(-1)
    if (isComposing) ahead = [...ahead, ...changes]
    // One's own undo: the caret goes where something came back.
    else paint(changes, transaction.local && last ? last.at + last.put.length : null)
  }

  box.addEventListener('input', onInput)
  box.addEventListener('compositionstart', onComposing)
  box.addEventListener('compositionend', onComposed)
  box.addEventListener('blur', onBlur)
  text.observe(onChange)
  return () => {
    box.removeEventListener('input', onInput)
    box.removeEventListener('compositionstart', onComposing)
    box.removeEventListener('compositionend', onComposed)
    box.removeEventListener('blur', onBlur)
    text.unobserve(onChange)
  }
}

/** A change of a text as stretches, each in the text that the one before it leaves. */
const differencesOf = (delta: Y.YTextEvent['delta']): TextDifference[] => {
  const changes: TextDifference[] = []
  let at = 0
  for (const { retain, insert, delete: cut } of delta) {
    if (retain !== undefined) at += retain
    if (cut !== undefined) changes.push({ at, cut, put: '' })
    if (typeof insert !== 'string') continue
    changes.push({ at, cut: 0, put: insert })
    at += insert.length
  }
  return changes
}

let runs = 0

/** Names the run that a change belongs to: one typed word, or one stretch of deleting. */
const openRuns = () => {
  let last: TextDifference | null = null
  const goesOn = ({ at, cut, put }: TextDifference): boolean => {
    if (!last) return false
    const wasTyping = last.put !== '' && last.cut === 0
    if (wasTyping) return cut === 0 && at === last.at + last.put.length && !(/\s$/.test(last.put) && !/^\s/.test(put))
    return last.put === '' && put === '' && (at + cut === last.at || at === last.at)
  }
  const runOf = (change: TextDifference): string => {
    if (!goesOn(change)) runs += 1
    last = change
    return `typing-${runs}`
  }
  runOf.end = () => {
    last = null
  }
  return runOf
}
