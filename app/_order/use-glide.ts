'use client'

import { type RefObject, useLayoutEffect, useRef } from 'react'
import type { Picture } from './picture/picture.ts'

/** As the cloth beneath it: --calm and --ease of the tokens. */
const GLIDE: KeyframeAnimationOptions = { duration: 420, easing: 'cubic-bezier(0.3, 0.7, 0.2, 1)' }

interface Place {
  readonly x: number
  readonly y: number
}

const placesOf = (picture: Picture): ReadonlyMap<string, Place> =>
  new Map([
    ...picture.labels.map(({ key, x, box }) => [key, { x, y: box.y }] as const),
    ...picture.marks.map(({ key, x, y }) => [`${key} mark`, { x, y }] as const),
  ])

/**
 * Lets what has moved on the screen glide from where it stood, so that the eye can follow. What is out of sight is there at
 * once: hundreds of lines may move with one order, and every one that glides is a layer of its own while it does.
 */
export const useGlide = (picture: Picture, isGliding: boolean): RefObject<HTMLDivElement | null> => {
  const sheet = useRef<HTMLDivElement | null>(null)
  const last = useRef<Picture | null>(null)
  useLayoutEffect(() => {
    const before = last.current
    last.current = picture
    if (!before || before === picture || !isGliding || !sheet.current) return
    if (window.matchMedia('(prefers-reduced-motion: reduce)').matches) return
    const top = sheet.current.getBoundingClientRect().top
    const isSeen = ({ y }: Place) => top + y > -40 && top + y < window.innerHeight
    const from = placesOf(before)
    const moves = new Map(
      [...placesOf(picture)].flatMap(([key, to]) => {
        const was = from.get(key)
        const isStill = !was || (was.x === to.x && was.y === to.y)
        return isStill || !(isSeen(was) || isSeen(to)) ? [] : [[key, { x: was.x - to.x, y: was.y - to.y }] as const]
      }),
    )
    if (moves.size === 0) return
    for (const element of sheet.current.querySelectorAll<SVGElement>('[data-glides]')) {
      const move = moves.get(element.dataset.glides ?? '')
      if (move) element.animate([{ transform: `translate(${move.x}px, ${move.y}px)` }, { transform: 'none' }], GLIDE)
    }
  }, [picture, isGliding])
  return sheet
}
