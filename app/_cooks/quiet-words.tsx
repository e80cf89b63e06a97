'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import { setEvening } from '#lib/plan/commands/set.ts'
import css from './cooks.module.css'

const USUAL = 'PT25M'
const LONGEST_SECONDS = 4 * 3600

/** How long before the guests come the hosts have to themselves: a host's to say. */
export function QuietWords() {
  const { evening, me } = usePlan()
  const { change, tell } = useEdit()
  const isHost = me?.role === 'host'
  const { quietBefore } = evening
  return (
    <p className={css.words}>
      Before the guests come at {evening.guestsFrom.time}, the hosts have{' '}
      <WordText
        field="quiet before"
        label="Minutes that the hosts have to themselves before the guests come"
        text={quietBefore === undefined ? '' : durationText(quietBefore)}
        empty="no time"
        disabled={!isHost}
        onWrite={(text) => {
          if (/^\s*(?:$|0|no\b)/i.test(text)) return change((doc) => setEvening(doc, { quietBefore: undefined }))
          const read = readDuration(text)
          if (read === null) return 'Write minutes, such as 25 min, or nothing.'
          if (secondsOf(read) > LONGEST_SECONDS) return 'Write four hours or less.'
          return change((doc) => setEvening(doc, { quietBefore: read }))
        }}
      />{' '}
      to themselves.{' '}
      {isHost && quietBefore === undefined ? (
        <Button tone="word" onClick={() => tell((doc) => setEvening(doc, { quietBefore: USUAL }))}>
          Keep {durationText(USUAL)} free
        </Button>
      ) : null}
    </p>
  )
}
