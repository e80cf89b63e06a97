'use client'

import { alarmToldText, guardHead, guardText } from '#app/_words/night-alarm.ts'
import type { GuardLine } from '#lib/night/board.ts'
import css from './board.module.css'
import { GuardedPlate } from './guarded-plate.tsx'
import { useNight } from './use-night.ts'

const byPlate = (guards: readonly GuardLine[]): readonly (readonly GuardLine[])[] => {
  const found = new Map<string, GuardLine[]>()
  for (const guard of guards) {
    const key = `${guard.dish} ${guard.need}`
    found.set(key, [...(found.get(key) ?? []), guard])
  }
  return [...found.values()]
}

/** When plating is near: what must not be served, the plates that are kept apart, and who does what for them. */
export function GuardLines() {
  const { evening, board, names } = useNight()
  const plates = byPlate(board?.plateNear?.guards ?? [])
  return (
    <>
      {(board?.plateNear?.alarms ?? []).map((alarm) => (
        <section key={alarm.alarm} className={css.guard} aria-label="What must not be served">
          <p>
            <b>An allergen got in</b> {alarmToldText(alarm, evening.zone, names)}
          </p>
        </section>
      ))}
      {plates.map((guards) => {
        const [first] = guards
        return first ? (
          <section key={`${first.dish} ${first.need}`} className={css.guard} aria-label="A plate kept apart">
            <GuardedPlate size={72} />
            <p>
              <b>{guardHead(first.need)}</b> {guardText(guards, names)}
            </p>
          </section>
        ) : null
      })}
    </>
  )
}
