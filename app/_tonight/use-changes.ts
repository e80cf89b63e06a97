'use client'

import { createContext, useContext, useEffect, useRef, useState } from 'react'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { type Change, changesFor } from '#lib/night/changes.ts'
import type { Night } from './use-night.ts'

/** So long what moved is marked, and what changed is told. */
const TOLD_MS = 60_000

/** What a new order changes for one cook; null: for the courses, and so for everybody. */
export interface CookChanges {
  readonly cook: string | null
  readonly changes: readonly Change[]
}

const NONE: readonly CookChanges[] = []

export const ChangesContext = createContext(NONE)

/** What the last new order changed for those whose board it is; nothing after a minute. */
export const useChanges = (): readonly CookChanges[] => useContext(ChangesContext)

/** Whether a step has just been moved. */
export const useChanged = (step: string): boolean =>
  useChanges().some(({ changes }) => changes.some((change) => 'step' in change && change.step === step))

interface Seen {
  readonly order: RunningOrder
  readonly evening: Evening
}

type Looked = Pick<Night, 'evening' | 'order' | 'orderState' | 'cook' | 'board' | 'isFromBefore'>

const isOfCourse = ({ kind }: Change): boolean => kind === 'course-moved' || kind === 'course-gone'

const found = (was: Seen, { evening, order }: Seen, cook: string | null): readonly CookChanges[] => {
  if (cook !== null) return [{ cook, changes: changesFor(was.order, order, evening, cook) }]
  const own = evening.cooks.map(({ id }) => ({
    cook: id,
    changes: changesFor(was.order, order, evening, id).filter((change) => !isOfCourse(change)),
  }))
  return [{ cook: null, changes: changesFor(was.order, order, evening, null).filter(isOfCourse) }, ...own]
}

/** Compares each new order with the one before it, once the evening has begun. */
export const useComparing = ({ evening, order, orderState, cook, board, isFromBefore }: Looked): readonly CookChanges[] => {
  const before = useRef<Seen | null>(null)
  const [changes, setChanges] = useState(NONE)
  const isOn = board !== null && board.phase !== 'before' && board.phase !== 'after' && !isFromBefore
  useEffect(() => {
    if (!isOn) {
      before.current = null
      setChanges(NONE)
      return
    }
    if (orderState.kind !== 'current' || !order) return
    const was = before.current
    const is = { order, evening }
    before.current = is
    if (!was || was.order === order || was.evening.id !== evening.id) return
    const told = found(was, is, cook).filter((one) => one.changes.length > 0)
    if (told.length > 0) setChanges(told)
  }, [evening, order, orderState.kind, cook, isOn])
  useEffect(() => {
    if (changes.length === 0) return
    const timer = setTimeout(() => setChanges(NONE), TOLD_MS)
    return () => clearTimeout(timer)
  }, [changes])
  return changes
}
