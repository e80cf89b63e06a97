'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { rulesWords } from '#app/_words/food.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { Rules } from '#lib/domain/ingredient.ts'
import { setEvening } from '#lib/plan/commands/set.ts'
import css from './menu.module.css'

const WRONG_CLOCK = 'Write a time, such as 19:30.'

/** The evening in one sentence. Its words are the host's to change. */
export function EveningWords() {
  const { evening, me } = usePlan()
  const { change } = useEdit()
  const isHost = me?.role === 'host'
  const clock = (field: 'guestsFrom' | 'sitDown') => (text: string) => {
    const time = readClock(text)
    return time === null ? WRONG_CLOCK : change((doc) => setEvening(doc, { [field]: { ...evening[field], time } }))
  }
  return (
    <p className={css.sentence}>
      <WordText
        label="Name of the evening"
        text={evening.name}
        disabled={!isHost}
        onWrite={(text) =>
          text.trim() ? change((doc) => setEvening(doc, { name: cleanText(text.trim(), false) })) : 'An evening needs a name.'
        }
      />{' '}
      is on{' '}
      <WordText
        type="date"
        label="Date of the evening"
        text={evening.date}
        disabled={!isHost}
        onWrite={(text) => (change((doc) => setEvening(doc, { date: text.trim() })) === null ? null : 'Choose a day.')}
      />{' '}
      for{' '}
      <WordText
        label="For how many people"
        text={String(evening.covers)}
        disabled={!isHost}
        onWrite={(text) =>
          change((doc) => setEvening(doc, { covers: Number(text) })) === null ? null : 'Write how many people, from 1 to 60.'
        }
      />
      . Guests come from{' '}
      <WordText label="Guests come from" text={evening.guestsFrom.time} disabled={!isHost} onWrite={clock('guestsFrom')} />, and
      everybody sits down at{' '}
      <WordText label="Sit down at" text={evening.sitDown.time} disabled={!isHost} onWrite={clock('sitDown')} />. What is in the
      food and how long it keeps is judged by{' '}
      <WordChoice
        label="Rules by which food is judged"
        value={evening.rules}
        options={Rules.options.map((rules) => [rules, rulesWords[rules]] as const)}
        disabled={!isHost}
        onChoose={(rules) => change((doc) => setEvening(doc, { rules }))}
      />
      .{isHost ? null : <span className="vh"> Only the host can change this.</span>}
    </p>
  )
}
