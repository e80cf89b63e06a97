'use client'

import { useEffect } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import css from './tools.module.css'

/** In a line being written the keys are the line's; in one where nothing is being written they are the plan's. */
const isTyping = (target: EventTarget | null): boolean => {
  if (!(target instanceof HTMLElement)) return false
  if (target.isContentEditable) return true
  const isLine =
    target instanceof HTMLTextAreaElement ||
    (target instanceof HTMLInputElement && target.type !== 'checkbox' && target.type !== 'radio')
  return isLine && (target.dataset.draft !== undefined || target.dataset.words === undefined)
}

/** Undo and redo of one's own edits: two buttons, and the keys everybody knows. */
export function Tools() {
  const { undo, redo, canUndo, canRedo } = usePlan()
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented || isTyping(event.target)) return
      const key = event.key.toLowerCase()
      const isRedo = (key === 'z' && event.shiftKey) || key === 'y'
      if (key !== 'z' && !isRedo) return
      event.preventDefault()
      if (isRedo) redo()
      else undo()
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [undo, redo])
  return (
    <>
      <button className={css.tool} type="button" onClick={undo} disabled={!canUndo} title="Take back what you did last (Ctrl Z)">
        <svg width="20" height="20" viewBox="0 0 22 22" aria-hidden="true">
          <path d="M8 5L3.500 9.500L8 14M4 9.500H13a5 5 0 0 1 0 9H9" />
        </svg>
        Undo
      </button>
      <button className={css.tool} type="button" onClick={redo} disabled={!canRedo} title="Do it again after all (Ctrl Shift Z)">
        <svg width="20" height="20" viewBox="0 0 22 22" aria-hidden="true">
          <path d="M14 5L18.500 9.500L14 14M18 9.500H9a5 5 0 0 0 0 9H13" />
        </svg>
        Redo
      </button>
    </>
  )
}
