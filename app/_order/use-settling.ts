'use client'

import { useEffect, useState } from 'react'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Doing } from './picture/doings.ts'
import type { Picture } from './picture/picture.ts'

/** How long it shows that something moved. */
const SHOWN_MS = 60_000

export interface Settling {
  /** The picture on the screen differs from the one before by the plan and its order, not by the view: what moved may glide to its place. */
  readonly isGliding: boolean
  /** Keys of what moved within the last minute. */
  readonly moved: ReadonlyMap<string, number>
}

interface Seen extends Settling {
  readonly order: RunningOrder
  readonly picture: Picture | null
  /** The last order that was no first answer; null before there was one. */
  readonly settled: readonly Doing[] | null
}

const isSameView = (a: Picture | null, b: Picture | null): boolean =>
  a !== null &&
  b !== null &&
  a.width === b.width &&
  a.zoom === b.zoom &&
  a.columns.cooks.map((column) => column.id).join() === b.columns.cooks.map((column) => column.id).join()

/** Until when each line is shown as moved: what begins at another moment or is new, and what still counts from before. */
export const movesOf = (
  before: readonly Doing[],
  after: readonly Doing[],
  moved: ReadonlyMap<string, number>,
  now: number,
): ReadonlyMap<string, number> => {
  const was = new Map(before.map((doing) => [doing.key, doing.from]))
  const moves = after.filter((doing) => was.get(doing.key) !== doing.from)
  return new Map([
    ...[...moved].filter(([, until]) => until > now),
    ...moves.map((doing) => [doing.key, now + SHOWN_MS] as const),
  ])
}

/**
 * What a new running order moved, for a minute, and whether the eye should be led there. While a better order is being
 * looked for nothing has moved yet: what settles is compared with what was settled before.
 */
export const useSettling = (
  order: RunningOrder,
  all: readonly Doing[],
  picture: Picture | null,
  isEarly: boolean,
  clock: () => number,
): Settling => {
  const [seen, setSeen] = useState<Seen>({
    order,
    picture,
    settled: isEarly ? null : all,
    isGliding: false,
    moved: new Map(),
  })
  let shown = seen
  const settles = !isEarly && seen.settled !== all
  if (seen.picture !== picture || seen.order !== order || settles) {
    shown = {
      order,
      picture,
      settled: isEarly ? seen.settled : all,
      isGliding: seen.picture === picture ? seen.isGliding : isSameView(seen.picture, picture),
      moved: settles && seen.settled ? movesOf(seen.settled, all, seen.moved, clock()) : seen.moved,
    }
    setSeen(shown)
  }
  const { moved } = shown
  useEffect(() => {
    if (moved.size === 0) return
    const now = clock()
    const timer = setTimeout(
      () =>
        setSeen((current) => ({
          ...current,
          moved: new Map([...current.moved].filter(([, until]) => until > clock())),
        })),
      Math.max(0, Math.min(...moved.values()) - now) + 50,
    )
    return () => clearTimeout(timer)
  }, [moved, clock])
  return shown
}
