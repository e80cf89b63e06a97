'use client'

import { type KeyboardEvent, useEffect, useId, useLayoutEffect, useRef, useState } from 'react'
import { bindText } from '#app/_sync/type-in.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { useDraft } from '#app/_ui/drafts.tsx'
import css from '#app/_ui/word.module.css'
import { WordText } from '#app/_ui/word.tsx'
import { faultText } from '#app/_words/fault.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { textDifference } from '#lib/plan/commands/text.ts'
import { sharedText, typeText } from '#lib/plan/commands/type-text.ts'
import { hasArrived, textField } from './text-draft.ts'

type Where =
  | { readonly root: 'steps'; readonly id: string; readonly field: 'does' }
  | { readonly root: 'dishes'; readonly id: string; readonly field: 'notes' }

type Props = Where & {
  readonly label: string
  readonly empty?: string
  readonly display?: boolean
  readonly autoFocus?: boolean
  readonly disabled?: boolean
  /** Enter was pressed in a text of one line. */
  readonly onEnter?: () => void
}

/** Words of several people: shared letter by letter as they are typed, the caret kept where it is. */
export function TextWords(props: Props) {
  const { doc, edit, undo, redo, link } = usePlan()
  const { root, id, field, label, empty = '…', display = false, autoFocus = false, disabled = false, onEnter } = props
  const text = sharedText(doc, root, id, field)
  const box = useRef<HTMLTextAreaElement>(null)
  const [wrong, setWrong] = useState<string | null>(null)
  const wrongId = useId()
  // Letters are kept on this device until the server has them: the page may be closed while they are on their way.
  const unsaved = useDraft(textField(root, id, field), { label, base: text?.toString() ?? '' })
  const doing = { edit, unsaved }
  const latest = useRef(doing)
  latest.current = doing
  /** The caret goes into it once, when it comes onto the screen. */
  const isFresh = useRef(autoFocus)

  useLayoutEffect(() => {
    const area = box.current
    if (!area || !text) return
    if (isFresh.current) area.focus()
    isFresh.current = false
    return bindText(area, text, {
      hasCaret: () => document.activeElement === area,
      type(change, run) {
        const before = text.toString()
        const made = latest.current.edit((plan) => typeText(plan, root, id, field, change), run)
        setWrong(made.ok ? null : faultText(made.error))
        if (made.ok && text.toString() !== before) latest.current.unsaved.write(text.toString())
        return made.ok
      },
    })
  }, [text, root, id, field])

  const isSaved = link.kind === 'saved'
  const now = text?.toString() ?? ''
  const typed = unsaved.text === null ? null : textDifference(unsaved.base ?? '', unsaved.text)
  const isThere = typed === null || hasArrived(typed, now)
  const { clear } = unsaved
  useEffect(() => {
    if (isSaved && isThere) clear()
  })

  if (!text)
    return (
      <WordText
        {...{ label, empty, display, autoFocus, disabled }}
        long
        text=""
        onWrite={(words) => {
          const made = edit((plan) =>
            root === 'steps' ? setFields(plan, root, id, { does: words }) : setFields(plan, root, id, { notes: words }),
          )
          return made.ok ? null : faultText(made.error)
        }}
      />
    )
  const onKeyDown = (event: KeyboardEvent) => {
    const isUndo = (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'z'
    if (isUndo || (event.ctrlKey && event.key.toLowerCase() === 'y')) {
      event.preventDefault()
      if (isUndo && !event.shiftKey) undo()
      else redo()
    }
    if (event.key === 'Enter' && field === 'does') {
      event.preventDefault()
      onEnter?.()
    }
  }
  return (
    <span className={css.longHolder}>
      <textarea
        ref={box}
        rows={1}
        className={`${css.word} ${css.long} ${display ? css.display : ''}`}
        aria-label={label}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={wrong ? wrongId : undefined}
        placeholder={empty}
        disabled={disabled}
        autoComplete="off"
        onKeyDown={onKeyDown}
      />
      {unsaved.isRestored && isSaved && typed !== null && !isThere ? (
        <Lost
          words={typed.put}
          putIn={() => {
            const at = Math.min(typed.at, text.length)
            edit((plan) => typeText(plan, root, id, field, { at, cut: 0, put: typed.put }))
            clear()
          }}
          letGo={clear}
        />
      ) : null}
      {wrong ? (
        <span className={css.wrong} id={wrongId} role="alert">
          {wrong}
        </span>
      ) : null}
    </span>
  )
}

/** Letters that never reached the plan: the page was closed while they were on their way. */
function Lost({ words, putIn, letGo }: { readonly words: string; readonly putIn: () => void; readonly letGo: () => void }) {
  return (
    <span className={css.unsent} role="status">
      What you typed last did not reach the plan: “{words}”.{' '}
      <button type="button" onClick={putIn}>
        Put it in
      </button>{' '}
      <button type="button" onClick={letGo}>
        Let it go
      </button>
    </span>
  )
}
