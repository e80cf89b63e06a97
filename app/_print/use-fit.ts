'use client'

import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** Sizes of type in points, the largest first; what hangs on a wall cannot be read in less than the last. */
const SIZES: readonly number[] = [14, 13, 12, 11, 10.5, 10, 9.5, 9, 8.5, 8, 7.5, 7]

export interface Fit {
  readonly ref: RefObject<HTMLDivElement | null>
  readonly points: number
  /** How many pages it takes at that size, at most: those after the first have no head. */
  readonly pages: number
}

/** The largest type in which a box of columns holds what is in it; where the smallest does not do, how many such boxes it takes. */
export const useFit = (of: unknown): Fit => {
  const ref = useRef<HTMLDivElement>(null)
  const [fit, setFit] = useState({ points: SIZES[0] ?? 14, pages: 1 })
  // biome-ignore lint/correctness/useExhaustiveDependencies: measured again when what is in the box is another
  useLayoutEffect(() => {
    const box = ref.current
    if (!box) return
    const measure = () => {
      for (const points of SIZES) {
        box.style.setProperty('--points', `${points}pt`)
        if (box.scrollWidth <= box.clientWidth + 1 && box.scrollHeight <= box.clientHeight + 1) return { points, pages: 1 }
      }
      const gap = Number.parseFloat(getComputedStyle(box).columnGap) || 0
      // Never one: it does not fit.
      return { points: SIZES.at(-1) ?? 7, pages: Math.max(2, Math.ceil((box.scrollWidth + gap) / (box.clientWidth + gap))) }
    }
    setFit(measure())
    // The letters of the page's own type may come after it, and are of another width.
    let isHere = true
    void document.fonts.ready.then(() => isHere && setFit(measure()))
    return () => {
      isHere = false
    }
  }, [of])
  return { ref, ...fit }
}
