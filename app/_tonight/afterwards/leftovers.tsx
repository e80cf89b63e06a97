'use client'

import { useMemo } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { keptText, leftoverText } from '#app/_words/afterwards.ts'
import { alarmToldText } from '#app/_words/night-alarm.ts'
import { DEFER } from '#app/_words/safety.ts'
import { leftoversOf } from '#lib/night/afterwards.ts'
import { safetyRules } from '#lib/safety/rules.ts'
import { dishTimes } from '#lib/safety/safety-of.ts'
import css from './afterwards.module.css'

/** What is left of each dish, and until when it may go in the fridge. What cannot be said of a dish is said too, and what got into it. */
export function Leftovers() {
  const { evening, order, names, nowMs } = useNight()
  const times = useMemo(() => (order ? dishTimes(evening, order) : []), [evening, order])
  if (order === null) return null
  const served = leftoversOf(evening, order)
  return (
    <section className={css.part} aria-labelledby="leftovers">
      <h2 id="leftovers">What is left</h2>
      <ul className={css.rows}>
        {served.map(({ dish: id }) => {
          const alarms = evening.night.flatMap((fact) => ('alarm' in fact && fact.dish === id ? [fact] : []))
          const { says, isLate } = leftoverText(
            times.find(({ dish }) => dish === id),
            nowMs,
            evening,
          )
          return (
            <li key={id}>
              <b>{names.dishName(id)}</b> <span className={isLate ? css.late : undefined}>{says}</span>
              {alarms.map((alarm) => (
                <p key={alarm.alarm} className={css.late}>
                  {alarmToldText(alarm, evening.zone, names)}
                </p>
              ))}
            </li>
          )
        })}
      </ul>
      <p className={css.quiet}>
        {keptText(safetyRules(evening.rules))} {DEFER}
      </p>
    </section>
  )
}
