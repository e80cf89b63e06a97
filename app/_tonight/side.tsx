'use client'

import { clockText, sentence } from '#app/_words/clock.ts'
import { callText, guestsText, insideText, ovenText, taskText } from '#app/_words/night-call.ts'
import { inText, wholeMinutes } from '#app/_words/night-time.ts'
import type { CookNow } from '#lib/night/board.ts'
import css from './board.module.css'
import { OvenRibbon } from './oven-ribbon.tsx'
import { sitsNext } from './sits.ts'
import { useNight } from './use-night.ts'

/** The next thing that will call somebody. */
export function CallsNext() {
  const { board, evening, nowMs, names, cook, own } = useNight()
  const [call] = board?.calls ?? []
  if (!call) return null
  return (
    <section>
      <h2>Calls next</h2>
      <p className={css.value}>
        {clockText(call.at, evening.zone)}, {inText(wholeMinutes(nowMs, call.at))}
      </p>
      <p>{callText(call, cook === null ? null : (cook ?? own), names)}</p>
    </section>
  )
}

/** What the cook who works has after it, and until when they sit. */
export function AfterThis({ one }: { readonly one: CookNow }) {
  const { order, evening, nowMs, names } = useNight()
  if (!order || !one.next || !one.hands) return null
  const until = sitsNext(order, one, nowMs)
  const at = clockText(one.next.at, evening.zone)
  return (
    <section>
      <h2>{names.cookName(one.cook)}, after this</h2>
      <p className={css.value}>{until === null ? at : `Sit until ${at}`}</p>
      <p>{until === null ? sentence(taskText(one.next.task, names)) : `then ${taskText(one.next.task, names)}`}</p>
    </section>
  )
}

const MOST_OVENS = 2

/** Each oven: how hot, what it does next, what is in it. One that is off and stays off is not said. */
export function Ovens() {
  const { board, order, evening, nowMs, names } = useNight()
  const ovens = (board?.ovens ?? []).filter(({ trend, next, inside }) => trend !== 'off' || next || inside.length > 0)
  return ovens.slice(0, MOST_OVENS).map((oven) => {
    const line = order?.ovens.find(({ kit }) => kit === oven.kit)?.line ?? []
    const inside = (order?.cues ?? [])
      .filter((cue) => cue.kit.some(({ id }) => id === oven.kit))
      .map((cue) => ({ key: `${cue.step}.${cue.batch}`, from: Date.parse(cue.start), to: Date.parse(cue.end) }))
    const name = sentence(names.kitName(oven.kit).replace(/^the /, ''))
    return (
      <section key={oven.kit}>
        <h2>{oven.kitchen === evening.host ? name : `${name}, ${names.kitchenName(oven.kitchen)}`}</h2>
        <p className={css.value}>{ovenText(oven, evening.zone)}</p>
        <OvenRibbon line={line} nowMs={nowMs} inside={inside} zone={evening.zone} name={name} />
        {oven.inside.length > 0 ? <p>{sentence(insideText(oven, names, evening.zone))}</p> : null}
      </section>
    )
  })
}

/** How it is with the guests. */
export function Guests() {
  const { board, evening, nowMs, names } = useNight()
  if (!board) return null
  return <p className={css.guests}>{guestsText(board.guests, nowMs, names, evening.zone)}</p>
}
