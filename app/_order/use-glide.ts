'use client'

import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react'
import type { Picture } from './picture/picture.ts'
import { remember } from './remember.ts'

/** As the cloth beneath it: --calm and --ease of the tokens. */
const GLIDE: KeyframeAnimationOptions = { duration: 420, easing: 'cubic-bezier(0.3, 0.7, 0.2, 1)' }

interface Place {
  readonly x: number
  readonly y: number
}

const placesOf = remember(
  (picture: Picture): ReadonlyMap<string, Place> =>
    new Map([
      ...picture.labels.map(({ key, x, box }) => [key, { x, y: box.y }] as const),
      ...picture.marks.map(({ key, x, y }) => [`${key} mark`, { x, y }] as const),
    ]),
)

/** Where an element begins on the screen, in pixels: to ask when a new order has just been written would lay out the whole page for it. */
export const useTop = (): readonly [element: RefObject<HTMLDivElement | null>, top: RefObject<number>] => {
  const element = useRef<HTMLDivElement | null>(null)
  const top = useRef(0)
  useEffect(() => {
    const look = () => {
      top.current = element.current?.getBoundingClientRect().top ?? 0
    }
    const frame = requestAnimationFrame(look)
    window.addEventListener('scroll', look, { passive: true })
    return () => {
      cancelAnimationFrame(frame)
      window.removeEventListener('scroll', look)
    }
  }, [])
  return [element, top]
}

interface Move extends Place {
  readonly key: string
  /** Where it was and is, from the top of the drawing. */
  readonly from: number
  readonly to: number
}

const movesOf = remember((before: Picture, picture: Picture): readonly Move[] => {
  const from = placesOf(before)
  return [...placesOf(picture)].flatMap(([key, to]) => {
    const was = from.get(key)
    const isStill = !was || (was.x === to.x && was.y === to.y)
    return isStill ? [] : [{ key, x: was.x - to.x, y: was.y - to.y, from: was.y, to: to.y }]
  })
})

/** More than these nobody could follow, and every one that glides is a layer of its own while it does. */
const MOST = 16

/**
 * Lets what has moved on the screen glide from where it stood, so that the eye can follow: what is nearest to the middle of it. What is
 * further away, and the hundreds that are out of sight, are there at once.
 */
export const useGlide = (picture: Picture, isGliding: boolean, top: RefObject<number>): RefObject<SVGGElement | null> => {
  const lines = useRef<SVGGElement | null>(null)
  const last = useRef<Picture | null>(null)
  useLayoutEffect(() => {
    const before = last.current
    last.current = picture
    if (!before || before === picture || !isGliding || !lines.current) return
    if (window.matchMedia('(prefers-reduced-motion: reduce)').matches) return
    const height = window.innerHeight
    const isSeen = (y: number) => top.current + y > -40 && top.current + y < height
    const away = ({ to }: Move) => Math.abs(top.current + to - height / 2)
    const moves = movesOf(before, picture)
      .filter(({ from, to }) => isSeen(from) || isSeen(to))
      .toSorted((a, b) => away(a) - away(b))
      .slice(0, MOST)
    for (const { key, x, y } of moves)
      lines.current
        .querySelector(`[data-glides="${CSS.escape(key)}"]`)
        ?.animate([{ transform: `translate(${x}px, ${y}px)` }, { transform: 'none' }], GLIDE)
  }, [picture, isGliding, top])
  return lines
}
