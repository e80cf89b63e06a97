'use client'

import { useState } from 'react'
import { startCalls } from '#app/_alerts/calls.ts'
import { Notice } from '#app/_ui/notice.tsx'
import { CALLS_FAILED, callsLack } from '#app/_words/alerts-here.ts'
import { mediumDate } from '#app/_words/clock.ts'
import { noticeKindText, noticeWayText } from '#app/_words/notice.ts'
import type { AllChoices, Choices } from '#server/notify/choices.ts'
import type { NoticeKind, NoticeWay } from '#server/notify/kinds.ts'
import css from './account.module.css'
import { setNoticeAction } from './actions.ts'

/** What one is told of at each evening to come: nothing, unless one asks for it. */
export function Notices({ choices }: { readonly choices: AllChoices }) {
  const { evenings, ways } = choices
  return (
    <section className={css.part} aria-labelledby="told">
      <h2 id="told">What you are told</h2>
      <p>
        Nothing, unless you ask for it here. Such a message says that there is something and where to look: no name, no dish, and
        nothing that a guest answered.
        {ways.includes('mail') ? '' : ' Letters cannot be sent from here: no mail server is set, or your account has no address.'}
      </p>
      {evenings.length === 0 ? <p>You have no evening to come.</p> : null}
      {evenings.map((evening) => (
        <OneEvening key={evening.eveningId} evening={evening} ways={ways} />
      ))}
    </section>
  )
}

const keyOf = (kind: NoticeKind, by: NoticeWay): string => `${kind} ${by}`

function OneEvening({ evening, ways }: { readonly evening: Choices; readonly ways: readonly NoticeWay[] }) {
  const { eveningId, name, date, kinds } = evening
  const [on, setOn] = useState<ReadonlySet<string>>(new Set(evening.on.map(({ kind, by }) => keyOf(kind, by))))
  const [wrong, setWrong] = useState<string | null>(null)

  const choose = async (kind: NoticeKind, by: NoticeWay, wanted: boolean) => {
    setWrong(null)
    try {
      if (by === 'push' && wanted) {
        const calls = await startCalls(eveningId)
        if (calls.kind !== 'on') return setWrong(callsLack(calls)[0] ?? CALLS_FAILED)
      }
      if (!(await setNoticeAction({ eveningId, kind, by, on: wanted })))
        return setWrong('This evening is gone, or it is not yours any more.')
      setOn((before) => new Set(wanted ? [...before, keyOf(kind, by)] : [...before].filter((key) => key !== keyOf(kind, by))))
    } catch {
      setWrong('The server cannot be reached, so nothing was changed. Try again.')
    }
  }

  return (
    <details className={css.evening}>
      <summary>
        {name}, {mediumDate(date)}: <b>{on.size === 0 ? 'nothing' : on.size === 1 ? 'one thing' : `${on.size} things`}</b>
      </summary>
      {wrong ? <Notice>{wrong}</Notice> : null}
      {kinds.map((kind) => (
        <fieldset key={kind} className={css.told}>
          <legend>Tell me {noticeKindText[kind]}</legend>
          {ways.map((by) => (
            <label key={by}>
              <input
                type="checkbox"
                checked={on.has(keyOf(kind, by))}
                onChange={(event) => void choose(kind, by, event.currentTarget.checked)}
              />{' '}
              {noticeWayText[by]}
            </label>
          ))}
        </fieldset>
      ))}
    </details>
  )
}
