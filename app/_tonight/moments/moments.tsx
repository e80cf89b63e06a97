'use client'

import { type ComponentType, useEffect, useRef, useState } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { type Moment, momentWords, silentText } from '#app/_words/night-moment.ts'
import { AllergenIn } from './allergen-in.tsx'
import { CookGone } from './cook-gone.tsx'
import { DishFailed } from './dish-failed.tsx'
import { DishRaw } from './dish-raw.tsx'
import { LateGuests } from './late-guests.tsx'
import css from './moments.module.css'
import type { PathProps } from './path.ts'
import { Thermometers } from './thermometer.tsx'
import { useMissed } from './use-missed.ts'
import { WhereAreWe } from './where-are-we.tsx'

const PATHS: Readonly<Record<Moment, ComponentType<PathProps>>> = {
  late: LateGuests,
  raw: DishRaw,
  failed: DishFailed,
  gone: CookGone,
  allergen: AllergenIn,
  lost: WhereAreWe,
}
const ORDER: readonly Moment[] = ['late', 'raw', 'failed', 'gone', 'allergen', 'lost']

/** Below the taps: what to do when something has happened, each in at most three taps. */
export function Moments() {
  const { board } = useNight()
  const [isOpen, setOpen] = useState(false)
  const [path, setPath] = useState<Moment | null>(null)
  const missed = useMissed()
  const head = useRef<HTMLHeadingElement>(null)
  useEffect(() => {
    if (path !== null) head.current?.focus()
  }, [path])
  if (board === null || board.phase === 'before' || board.phase === 'after') return null

  const fold = () => {
    setPath(null)
    setOpen(false)
  }
  const Path = path === null ? null : PATHS[path]
  const isSilent = board.silent !== null && missed.length > 0
  return (
    <section className={css.moments} aria-label="Something has happened">
      {path === null ? <Thermometers /> : null}
      {isSilent && path === null ? (
        <p className={css.silent} role="status">
          {silentText(missed.length)}{' '}
          <button type="button" className={css.big} onClick={() => setPath('lost')}>
            {momentWords.lost.title}
          </button>
        </p>
      ) : null}
      {Path && path ? (
        <div className={css.path}>
          <h2 ref={head} tabIndex={-1}>
            {momentWords[path].title}
          </h2>
          <p className={css.asks}>{momentWords[path].asks}</p>
          <Path onTaken={fold} />
          <button type="button" className={css.back} onClick={() => setPath(null)}>
            Leave it
          </button>
        </div>
      ) : (
        <>
          <button type="button" className={css.line} aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
            Something has happened
          </button>
          {isOpen ? (
            <ul className={css.choices}>
              {ORDER.map((moment) => (
                <li key={moment}>
                  <button type="button" className={css.choice} onClick={() => setPath(moment)}>
                    {momentWords[moment].title}
                  </button>
                </li>
              ))}
            </ul>
          ) : null}
        </>
      )}
    </section>
  )
}
