'use client'

import { type RefCallback, useCallback, useState } from 'react'

/** The width of an element in pixels, and again whenever it changes; `probably` before it is measured. */
export const useWidth = (probably: number): readonly [RefCallback<HTMLElement>, number] => {
  const [width, setWidth] = useState(probably)
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
