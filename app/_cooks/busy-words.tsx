'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { dayChoices } from '#app/_words/day.ts'
import { readUntil, untilText } from '#app/_words/presence.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Busy, Cook } from '#lib/domain/kitchen.ts'
import { epochMsOf, wallTimeOfMs } from '#lib/domain/time.ts'
import { setBusy } from '#lib/plan/commands/presence.ts'
import css from './cooks.module.css'

const MOST = 20
const MINUTE = 60_000
const BACKWARDS = 'This would end before it begins. Write a later end, such as 19:30.'

/** What else keeps a cook, by name, such as the children's bedtime: a sentence each, and bedtime in one tap. */
export function BusyList({ cook }: { readonly cook: Cook }) {
  const { evening } = usePlan()
  const { change, tell } = useEdit()
  const busy = cook.busy ?? []
  const write = (next: readonly Busy[]): string | null => {
    const isBackwards = next.some(({ from, to }) => epochMsOf(evening, from) >= epochMsOf(evening, to))
    return isBackwards ? BACKWARDS : change((doc) => setBusy(doc, cook.id, next))
  }
  const more = () => {
    const sitDown = epochMsOf(evening, evening.sitDown)
    const at = (minutes: number) => wallTimeOfMs(evening, sitDown - minutes * MINUTE)
    tell((doc) => setBusy(doc, cook.id, [...busy, { name: 'Bedtime', from: at(45), to: at(15) }]))
  }
  return (
    <>
      {busy.length > 0 ? (
        <ul className={css.hours} aria-label={`What keeps ${cook.name}`}>
          {busy.map((one, index) => {
            const name = `${cook.name}, kept ${index + 1}`
            const set = (next: Busy) => write(busy.map((other, at) => (at === index ? next : other)))
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: they are their place in the list
              <li className={css.words} key={index}>
                <WordText
                  field={`kept ${index} by`}
                  label={`${name}: by what`}
                  text={one.name}
                  empty="something else"
                  onWrite={(text) => set({ ...one, name: cleanText(text.trim(), false).slice(0, 80) })}
                />{' '}
                keeps them on{' '}
                <WordChoice
                  label={`${name}: day`}
                  value={String(one.from.day)}
                  options={dayChoices(evening.date)}
                  onChoose={(chosen) => {
                    const by = Number(chosen) - one.from.day
                    const day = (at: Busy['from']) => ({ ...at, day: Math.min(1, at.day + by) })
                    set({ ...one, from: day(one.from), to: day(one.to) })
                  }}
                />{' '}
                from{' '}
                <WordText
                  field={`kept ${index} from`}
                  label={`${name}: from`}
                  text={one.from.time}
                  onWrite={(text) => {
                    const time = readClock(text)
                    return time === null ? 'Write a time, such as 19:00.' : set({ ...one, from: { ...one.from, time } })
                  }}
                />{' '}
                to{' '}
                <WordText
                  field={`kept ${index} to`}
                  label={`${name}: to`}
                  text={untilText(evening.date, one)}
                  onWrite={(text) => {
                    const to = readUntil(text, evening.date, one.from)
                    return to === null ? 'Write when it ends, such as 19:30.' : set({ ...one, to })
                  }}
                />{' '}
                <Button
                  tone="quiet"
                  aria-label={`Leave out: ${name}`}
                  onClick={() => write(busy.filter((_, at) => at !== index))}
                >
                  leave out
                </Button>
              </li>
            )
          })}
        </ul>
      ) : null}
      {busy.length < MOST ? (
        <Button tone="soft" aria-label={`Something else keeps ${cook.name}, such as bedtime`} onClick={more}>
          Bedtime, or the like
        </Button>
      ) : null}
    </>
  )
}
