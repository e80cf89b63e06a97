'use client'

import { type CSSProperties, type ReactNode, useEffect, useRef, useState } from 'react'
import css from './wall.module.css'

/** A page of paper as small as there is room for on the screen; on paper it is as large as it is. */
export function Scaled({ children }: { readonly children: ReactNode }) {
  const room = useRef<HTMLDivElement>(null)
  const page = useRef<HTMLDivElement>(null)
  const [scale, setScale] = useState(1)
  const [height, setHeight] = useState<number | null>(null)
  useEffect(() => {
    const observer = new ResizeObserver(() => {
      if (!room.current || !page.current) return
      const next = Math.min(1, room.current.clientWidth / page.current.offsetWidth)
      setScale(next)
      setHeight(page.current.offsetHeight * next)
    })
    if (room.current) observer.observe(room.current)
    if (page.current) observer.observe(page.current)
    return () => observer.disconnect()
  }, [])
  return (
    <div
      ref={room}
      className={css.room}
      style={{ '--tall': height === null ? 'auto' : `${height}px`, '--scale': scale } as CSSProperties}
    >
      <div ref={page} className={css.scaled}>
        {children}
      </div>
    </div>
  )
}
