'use client'

import { useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { calledText, callText } from '#app/_words/alert.ts'
import { alertsLine, CALLS_FAILED, lackTexts, lockedText, SILENT_SWITCH } from '#app/_words/alerts-here.ts'
import { clockText } from '#app/_words/clock.ts'
import { namesOf } from '#app/_words/names.ts'
import css from './alerts.module.css'
import { AlertsSentence } from './alerts-sentence.tsx'
import { ALARM, chimeOf, inTurn, TABLE_CHIME, type Tone } from './chime.ts'
import type { Shape } from './choices.ts'
import { type Due, isLive } from './ringing.ts'
import { useDevice } from './use-device.ts'
import { useRinging } from './use-ringing.ts'

interface Props {
  readonly eveningId: string
  /** For whom it rings; null: for every cook. */
  readonly cook: string | null
  readonly shape: Shape
}

/** Several at once are one after another, but nobody listens to more. */
const MOST_AT_ONCE = 4
const SHAKE = { worktop: [200, 100, 200], mine: [200, 100, 200], table: [400] } as const

/** Rings, vibrates and speaks on this device, and says in one line how. */
export function Alerts({ eveningId, cook, shape }: Props) {
  const plan = usePlan()
  const { evening } = plan
  const names = namesOf(evening)
  const device = useDevice(eveningId, shape, isLive(evening))
  const { here } = device
  const { choices } = here
  const [failed, setFailed] = useState(false)

  const chimeFor = ({ kind, cooks }: Due): readonly Tone[] => {
    if (kind === 'alarm') return ALARM
    const place = evening.cooks.findIndex(({ id }) => id === cooks[0])
    const chime = place < 0 ? TABLE_CHIME : chimeOf(place)
    return kind === 'overdue' ? inTurn([chime, chime]) : chime
  }
  const ring = (due: readonly Due[]) => {
    const told = due.slice(0, MOST_AT_ONCE)
    if (choices.vibration && here.canVibrate) navigator.vibrate([...SHAKE[shape]])
    if (shape === 'table') return
    if (choices.sound) device.sound()?.play(inTurn(told.map(chimeFor)))
    if (choices.speech && here.canSpeak)
      for (const call of told) say(cook === null ? calledText(call, names) : callText(call, names))
  }
  const canRing = () => shape !== 'table' && choices.sound && device.sound()?.state() === 'ready' && plan.link.kind !== 'closed'
  const { missed, seen, last } = useRinging(eveningId, cook, ring, canRing)

  const locked = lockedText(here)
  const own = evening.cooks.findIndex(({ id }) => id === cook)
  const tryIt = () => {
    device.sound()?.unlock()
    if (here.canVibrate && choices.vibration) navigator.vibrate([...SHAKE[shape]])
    if (shape === 'table') return
    if (choices.sound) device.sound()?.play(own < 0 ? TABLE_CHIME : chimeOf(own))
    if (choices.speech && here.canSpeak) say('This is how this device calls.')
  }

  return (
    <section className={css.alerts} aria-label="How this device calls">
      <p className={css.heard} role="status">
        {last.map((call) => calledText(call, names)).join(' ')}
      </p>
      {missed.length > 0 ? (
        <div className={css.missed}>
          <h2>While you were away</h2>
          <ul>
            {missed.map((call) => (
              <li key={call.id}>
                <b>{clockText(call.firedAt, evening.zone)}</b> {cook === null ? calledText(call, names) : callText(call, names)}
              </li>
            ))}
          </ul>
          <Button tone="soft" onClick={seen}>
            I have seen it
          </Button>
        </div>
      ) : null}
      {locked ? <p className={css.locked}>{locked}</p> : null}
      <Fold title={alertsLine(here)}>
        <div className={css.more}>
          <AlertsSentence here={here} choose={device.choose} call={async (wanted) => setFailed(!(await device.call(wanted)))} />
          <p className={css.row}>
            <Button tone="soft" onClick={tryIt}>
              Try it
            </Button>
            <span>{SILENT_SWITCH}</span>
          </p>
          {failed ? <p role="alert">{CALLS_FAILED}</p> : null}
          {lackTexts(here).map((text) => (
            <p key={text}>{text}</p>
          ))}
        </div>
      </Fold>
    </section>
  )
}

const say = (text: string): void => {
  const words = new SpeechSynthesisUtterance(text)
  words.lang = document.documentElement.lang
  window.speechSynthesis.speak(words)
}
