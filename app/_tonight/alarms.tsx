'use client'

import { useEffect, useRef } from 'react'
import { listText } from '#app/_words/clock.ts'
import { alarmText } from '#app/_words/night-alarm.ts'
import { openAlarms } from '#lib/night/alarms.ts'
import css from './alarms.module.css'
import { useNight } from './use-night.ts'

/** An allergen got in: above all else, until every cook who is there has said that they heard it; also where there is no running order. */
export function Alarms() {
  const { evening, nowMs, names, cook, own, tell } = useNight()
  const alarms = openAlarms(evening, nowMs)
  const box = useRef<HTMLDivElement>(null)
  const newest = alarms.at(-1)?.alarm
  // Whoever has scrolled down sees it all the same.
  useEffect(() => {
    if (newest !== undefined) box.current?.scrollIntoView({ block: 'nearest' })
  }, [newest])
  return (
    <div ref={box} role="alert">
      {alarms.map((alarm) => {
        const heard = cook ?? own
        const mine = cook === null ? alarm.missing : alarm.missing.filter((one) => one === heard)
        return (
          <section key={alarm.alarm} className={css.alarm} aria-label="An allergen got in">
            <p className={css.what}>{alarmText(alarm.dish, alarm.need, names)}</p>
            <p className={css.todo}>
              Set it aside. Make a new one from the start: clean hands, clean board, clean tools. When in doubt, ask the guest and
              serve nothing. Somebody may have eaten of it? Ask them now; a reaction is an emergency, call for help at once.
            </p>
            <div className={css.taps}>
              {mine.map((one) => (
                <button key={one} type="button" onClick={() => tell({ kind: 'confirm', alarm: alarm.alarm, cook: one }, one)}>
                  {cook === null ? `${names.cookName(one)} has heard this` : 'I have heard this'}
                </button>
              ))}
              {mine.length === 0 ? <p>Still to hear it: {listText(alarm.missing.map(names.cookName))}.</p> : null}
            </div>
          </section>
        )
      })}
    </div>
  )
}
