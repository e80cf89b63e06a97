'use client'

import { type RefCallback, useCallback, useState } from 'react'

/** The width of an element in pixels, and again whenever it changes; null before it is known. */
export const useWidth = (): readonly [RefCallback<HTMLElement>, number | null] => {
  const [width, setWidth] = useState<number | null>(null)
  const ref = useCallback((element: HTMLElement | null) => {
    if (!element) return
    const observer = new ResizeObserver(([entry]) => {
      if (entry) setWidth(entry.contentRect.width)
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return [ref, width]
}
