'use client'

import { useState, useTransition } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { CopyText } from '#app/_ui/copy-text.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { alarmWords } from '#app/_words/calendar.ts'
import { ALARMS } from '#lib/domain/calendar-alarm.ts'
import type { FeedState } from '#server/calendar/feed.ts'
import { makeFeedAction, revokeFeedAction, setAlarmAction } from './actions.ts'
import css from './calendar.module.css'

interface Props {
  readonly eveningId: string
  readonly feed: FeedState
}

const NEVER = 'never'
const UNREACHED = 'The server cannot be reached, so nothing was changed. Try again.'

/** One's own work in one's own calendar: an address that it follows, or a file to bring in once. */
export function CalendarPart({ eveningId, feed }: Props) {
  const { evening, me } = usePlan()
  const [isOn, setOn] = useState(feed.isOn)
  const [alarm, setAlarm] = useState(feed.alarm)
  const [path, setPath] = useState<string | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const [isBusy, start] = useTransition()
  const cook = evening.cooks.find(({ id }) => id === me?.cook)
  const run = (work: () => Promise<string | null>) =>
    start(async () => {
      try {
        setProblem(await work())
      } catch {
        setProblem(UNREACHED)
      }
    })
  const make = () =>
    run(async () => {
      const made = await makeFeedAction(eveningId)
      if (made.kind === 'refused') return made.why
      setPath(made.path)
      setOn(true)
      return null
    })
  const revoke = () =>
    run(async () => {
      const why = await revokeFeedAction(eveningId)
      if (why !== null) return why
      setPath(null)
      setOn(false)
      return null
    })
  const choose = (choice: string) =>
    run(async () => {
      const minutes = choice === NEVER ? null : Number(choice)
      const before = alarm
      setAlarm(minutes)
      const why = await setAlarmAction(eveningId, minutes)
      if (why !== null) setAlarm(before)
      return why
    })
  return (
    <section className={css.calendar} aria-labelledby="calendar">
      <h2 id="calendar">In your calendar</h2>
      <p className={css.quiet}>
        {cook
          ? `What ${cook.name || 'you'} is to do and when, days ahead as well, when to leave home, and the evening itself. Nothing of the guests or of what they eat is in it.`
          : 'Only the evening itself, as you are none of its cooks: say under Cooks & kitchens which one you are.'}
      </p>
      <p className={css.sentence}>
        It calls{' '}
        <WordChoice
          label="When the calendar calls"
          value={alarm === null ? NEVER : String(alarm)}
          disabled={isBusy}
          options={[
            ...ALARMS.map((minutes) => [String(minutes), alarmWords(minutes)] as const),
            [NEVER, alarmWords(null)] as const,
          ]}
          onChoose={choose}
        />
        .
      </p>
      {path === null ? null : (
        <div className={css.made}>
          <CopyText label="The address for your calendar" text={`${window.location.origin}${path}`} rows={2} />
          <p className={css.quiet}>
            It is shown this once: only its fingerprint is kept. In your calendar, subscribe to it (“from URL”, “from the
            internet”). Whoever has it can read what you do that evening; if it gets about, make a new one.
          </p>
        </div>
      )}
      <p className={css.actions}>
        <Button tone={isOn ? 'soft' : 'full'} disabled={isBusy} onClick={make}>
          {isOn ? 'Make a new address' : 'Make an address to follow'}
        </Button>
        <a className={css.file} href={`/api/evenings/${eveningId}/calendar`} download>
          Take it as a file
        </a>
        {isOn ? (
          <Button tone="late" disabled={isBusy} onClick={revoke}>
            Take the address back
          </Button>
        ) : null}
      </p>
      <p className={css.quiet}>
        {isOn
          ? 'A calendar follows an address that was made. A new one ends it, and it ends a week after the evening.'
          : 'A calendar that follows an address sees every change of the order within its own hour or so; a file stays as it is.'}
      </p>
      {problem === null ? null : (
        <p className={css.problem} role="alert">
          {problem}
        </p>
      )}
    </section>
  )
}
