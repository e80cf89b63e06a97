'use client'

import { type ReactNode, type PointerEvent as ReactPointerEvent, useCallback, useEffect, useId, useRef, useState } from 'react'
import type { Place } from '#lib/plan/order-keys.ts'
import css from './drag.module.css'
import { type Landing, landingAt, type Measured, scrollBy } from './drag-place.ts'

export interface Drop {
  readonly id: string
  /** The list it was dropped in, as named by `list`. */
  readonly list: string
  readonly place: Place
}

export interface Drag {
  /** For the element that holds the items of one list. */
  readonly list: (id: string, className?: string) => Attributes
  /** For one item. */
  readonly item: (id: string, className?: string) => Attributes
  /** What the item is taken by; put it inside the item. Pointers alone see it: keys have the buttons beside it. */
  readonly handle: (id: string) => ReactNode
  /** Says something to screen readers, such as where an item went when it was moved by a button. */
  readonly say: (words: string) => void
  /** Where it is said; put it on the screen once. */
  readonly said: ReactNode
}

interface Attributes {
  readonly className: string
  readonly 'data-drag-list'?: string
  readonly 'data-drag-item'?: string
  readonly 'data-drag-of'?: string
}

interface Held {
  readonly id: string
  readonly pointer: number
  readonly element: HTMLElement
  readonly from: number
  readonly scrolled: number
  readonly y: number
}

const SLACK = 5

/**
 * Orders the items of one or several lists by pointer: taken by the handle, dropped at the stitched line, taken back with Escape.
 * `onDrop` writes the move down and says in words where the item is now; null when nothing came of it.
 */
export function useDrag(onDrop: (drop: Drop) => string | null): Drag {
  const own = useId()
  const [held, setHeld] = useState<{ readonly id: string; readonly landing: Landing | null } | null>(null)
  const [words, setWords] = useState('')
  const drop = useRef(onDrop)
  drop.current = onDrop
  const letGo = useRef<(() => void) | null>(null)
  useEffect(() => () => letGo.current?.(), [])

  const take = useCallback(
    (id: string, event: ReactPointerEvent<HTMLElement>) => {
      const element = event.currentTarget.closest<HTMLElement>('[data-drag-item]')
      if (!element || event.button !== 0 || letGo.current) return
      event.preventDefault()
      letGo.current = follow(
        own,
        { id, pointer: event.pointerId, element, from: event.clientY, scrolled: window.scrollY, y: event.clientY },
        (landing) => setHeld({ id, landing }),
        (landing) => {
          letGo.current = null
          setHeld(null)
          if (!landing) return
          const place: Place = landing.after === null ? { kind: 'first' } : { kind: 'after', id: landing.after }
          const said = drop.current({ id, list: landing.list, place })
          if (said) setWords(said)
        },
      )
    },
    [own],
  )

  const landing = held?.landing ?? null
  return {
    list: (id, className = '') => ({
      'data-drag-list': id,
      'data-drag-of': own,
      className: `${className} ${held ? css.open : ''} ${landing?.list === id && landing.after === null ? css.first : ''}`,
    }),
    item: (id, className = '') => ({
      'data-drag-item': id,
      'data-drag-of': own,
      className: `${className} ${css.item} ${held?.id === id ? css.held : ''} ${landing?.after === id ? css.before : ''}`,
    }),
    handle: (id) => (
      <span className={css.handle} aria-hidden="true" title="Drag to move" onPointerDown={(event) => take(id, event)}>
        <svg width="18" height="22" viewBox="0 0 18 22" aria-hidden="true">
          <path d="M6 3v4M6 9v4M6 15v4M12 3v4M12 9v4M12 15v4" />
        </svg>
      </span>
    ),
    say: setWords,
    said: (
      <span className="vh" role="status">
        {words}
      </span>
    ),
  }
}

const measure = (own: string, held: string): Measured[] => {
  const of = `[data-drag-of="${CSS.escape(own)}"]`
  return Array.from(document.querySelectorAll<HTMLElement>(`[data-drag-list]${of}`), (list) => ({
    id: list.dataset.dragList ?? '',
    ...edges(list),
    items: Array.from(list.querySelectorAll<HTMLElement>(`[data-drag-item]${of}`))
      .filter((item) => item.dataset.dragItem !== held)
      .map((item) => ({ id: item.dataset.dragItem ?? '', ...edges(item) })),
  }))
}

const edges = (element: HTMLElement) => {
  const { top, bottom } = element.getBoundingClientRect()
  return { top, bottom }
}

/** Follows the pointer until it is let go of or taken back; `done` is told the landing, null for none. Gives the way to stop it. */
const follow = (
  own: string,
  held: Held,
  show: (landing: Landing | null) => void,
  done: (landing: Landing | null) => void,
): (() => void) => {
  const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches
  let { y } = held
  let moving = false
  let landing: Landing | null = null
  let frame = 0

  const look = () => {
    const next = landingAt(measure(own, held.id), y)
    if (!still) held.element.style.translate = `0 ${y - held.from + window.scrollY - held.scrolled}px`
    if (next?.list === landing?.list && next?.after === landing?.after) return
    landing = next
    show(landing)
  }
  const scroll = () => {
    const by = scrollBy(y, window.innerHeight)
    if (by !== 0) {
      window.scrollBy(0, by)
      look()
    }
    frame = requestAnimationFrame(scroll)
  }
  const onMove = (event: PointerEvent) => {
    if (event.pointerId !== held.pointer) return
    y = event.clientY
    if (!moving && Math.abs(y - held.from) < SLACK) return
    if (!moving) frame = requestAnimationFrame(scroll)
    moving = true
    look()
  }
  const stop = (result: Landing | null) => {
    cancelAnimationFrame(frame)
    window.removeEventListener('pointermove', onMove)
    window.removeEventListener('pointerup', onUp)
    window.removeEventListener('pointercancel', onCancel)
    window.removeEventListener('keydown', onKey, true)
    held.element.style.translate = ''
    done(result)
  }
  const onUp = (event: PointerEvent) => event.pointerId === held.pointer && stop(moving ? landing : null)
  const onCancel = (event: PointerEvent) => event.pointerId === held.pointer && stop(null)
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return
    event.preventDefault()
    event.stopPropagation()
    stop(null)
  }
  window.addEventListener('pointermove', onMove)
  window.addEventListener('pointerup', onUp)
  window.addEventListener('pointercancel', onCancel)
  window.addEventListener('keydown', onKey, true)
  return () => stop(null)
}
