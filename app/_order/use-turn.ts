'use client'

import { startTransition, useEffect, useLayoutEffect, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import { isTaken } from './frames.ts'

/** In which frame after the first each part is written. */
export const TURNS = {
  aside: 1,
  board: 2,
  kit: 3,
  /** And those after it: as many as there are shares of the lines. */
  lines: 4,
  hand: 10,
} as const
export const SHARES = TURNS.hand - TURNS.lines

/** Calls back in the frame after `frames` others; gives what calls it off. A frame that somebody has claimed is not counted. */
const afterFrames = (frames: number, call: () => void): (() => void) => {
  let waiting = 0
  const wait = (left: number) => {
    waiting = requestAnimationFrame((frame) => (isTaken(frame) ? wait(left) : left === 0 ? call() : wait(left - 1)))
  }
  wait(frames)
  return () => cancelAnimationFrame(waiting)
}

interface How {
  /** Without waiting for its turn. */
  readonly isAtOnce?: boolean
  /** It is much by itself: drawn in the gaps between other work. */
  readonly inGaps?: boolean
}

/**
 * A part of the drawing takes its turn: a new running order is written onto the page a part at a time, in frames that follow each other, so
 * that no key waits until all of it is laid out. What is asked for by hand, another zoom or another cook, is there at once.
 */
export const useTurn = <Part>(latest: Part, turn: number, { isAtOnce = false, inGaps = false }: How): Part => {
  const [shown, setShown] = useState(latest)
  const newest = useRef(latest)
  const callOff = useRef<(() => void) | null>(null)
  useLayoutEffect(() => {
    newest.current = latest
  })
  if (isAtOnce && shown !== latest) setShown(latest)
  useEffect(() => {
    // One that already waits keeps its turn and takes the newest: orders that follow each other fast put nobody off.
    if (latest === shown || callOff.current) return
    callOff.current = afterFrames(turn, () => {
      callOff.current = null
      const write = () => setShown(newest.current)
      // Written in its frame: left to React's own time, several frames may come first, and their parts in one piece.
      if (inGaps) startTransition(write)
      else flushSync(write)
    })
  }, [latest, shown, turn, inGaps])
  useEffect(
    () => () => {
      callOff.current?.()
      callOff.current = null
    },
    [],
  )
  return isAtOnce ? latest : shown
}
