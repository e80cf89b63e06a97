'use client'

import { type RefObject, useLayoutEffect, useRef } from 'react'
import type { Label } from './picture/labels.ts'
import type { Picture } from './picture/picture.ts'

/** Where on the screen the eye is. */
const EYE = 0.42

/**
 * Keeps the moment that was looked at in its place when the zoom changes: the chosen line, else now if that was in sight,
 * else what was in the middle of the screen.
 */
export const useAnchor = (picture: Picture, current: Label | null, now: number | null): RefObject<HTMLElement | null> => {
  const frame = useRef<HTMLElement | null>(null)
  const last = useRef<Picture | null>(null)
  useLayoutEffect(() => {
    const before = last.current
    last.current = picture
    if (!before || before.zoom === picture.zoom || !frame.current) return
    const top = frame.current.getBoundingClientRect().top
    const eye = window.innerHeight * EYE
    const isSeen = (ms: number) => {
      const y = top + before.scale.y(ms)
      return y > 0 && y < window.innerHeight
    }
    const wanted = [current?.doing.from, now].find((ms) => ms !== null && ms !== undefined && isSeen(ms))
    const moment = wanted ?? before.scale.at(Math.max(0, eye - top))
    window.scrollBy({ top: top + picture.scale.y(moment) - eye, behavior: 'instant' })
  }, [picture, current, now])
  return frame
}
