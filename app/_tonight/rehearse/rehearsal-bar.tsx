'use client'

import { useId, useState } from 'react'
import { Button } from '#app/_ui/button.tsx'
import { REHEARSAL, speedShort, speedText } from '#app/_words/rehearsal.ts'
import css from './rehearse.module.css'
import { useRehearsing } from './use-rehearsal.ts'

const SPEEDS = [1, 10, 60, 300] as const

/** Over everything while a rehearsal plays: that it is one, how fast its clock goes, and the way out. */
export function RehearsalBar() {
  const { played, rehearsal, leave } = useRehearsing()
  const [isOver, setOver] = useState(false)
  const [isOpen, setOpen] = useState(false)
  const id = useId()
  if (!played || !rehearsal) return null
  return (
    <section className={css.bar} aria-label="Rehearsal">
      <p className={css.says} role="status">
        {REHEARSAL}
      </p>
      <fieldset className={css.speeds} data-folded={!isOpen || undefined}>
        <legend className="vh">How fast the clock goes</legend>
        {SPEEDS.map((speed) => (
          <label key={speed} title={speedText(speed)}>
            <input
              type="radio"
              name={`${id}-speed`}
              checked={!played.isPaused && played.speed === speed}
              onChange={() => {
                rehearsal.setSpeed(speed)
                rehearsal.pause(false)
              }}
            />
            <span>
              {speedShort(speed)}
              <span className="vh">: {speedText(speed)}</span>
            </span>
          </label>
        ))}
      </fieldset>
      <Button tone="soft" onClick={() => rehearsal.pause(!played.isPaused)}>
        {played.isPaused ? 'Go on' : 'Pause'}
      </Button>
      <Button tone="soft" onClick={() => setOver(!rehearsal.jump())}>
        Next thing
      </Button>
      <button type="button" className={css.fold} aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        How it plays
      </button>
      <label className={css.self} data-folded={!isOpen || undefined}>
        <input type="checkbox" checked={played.byItself} onChange={(event) => rehearsal.setByItself(event.target.checked)} />
        Everybody does their part on time
      </label>
      <Button tone="word" onClick={leave}>
        <span>
          Leave<span className={css.long}> the rehearsal</span>
        </span>
      </Button>
      {isOver ? <p role="status">Nothing comes after this: the evening is over.</p> : null}
    </section>
  )
}
