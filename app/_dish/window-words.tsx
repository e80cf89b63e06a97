'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { dayName } from '#app/_words/clock.ts'
import type { At } from '#lib/domain/atoms.ts'
import type { Step } from '#lib/domain/menu.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './step.module.css'

const ANY = 'any'
const DAYS = [-7, -6, -5, -4, -3, -2, -1, 0, 1] as const
const CLOCK = /^([01]?\d|2[0-3])[:.]([0-5]\d)$/

/** When a step may be done: ahead of the evening, and by when. */
export function WindowWords({ step }: { readonly step: Step }) {
  return (
    <p className={css.words}>
      It can be done <Edge step={step} field="earliest" before="from" none="on the day, from when a cook is there" /> and must be
      over <Edge step={step} field="latest" before="by" none="in time for its course" />.
    </p>
  )
}

interface EdgeProps {
  readonly step: Step
  readonly field: 'earliest' | 'latest'
  readonly before: string
  readonly none: string
}

function Edge({ step, field, before, none }: EdgeProps) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const at = step[field]
  const name = step.does || 'This step'
  const set = (next: At | undefined) => change((doc) => setFields(doc, 'steps', step.id, { [field]: next }))
  const fallback = field === 'earliest' ? '09:00' : evening.sitDown.time
  return (
    <>
      <WordChoice
        label={`${name}: ${field} day`}
        value={at === undefined ? ANY : String(at.day)}
        options={[
          [ANY, none] as const,
          ...DAYS.map(
            (day) =>
              [
                String(day),
                `${before} ${day === 0 ? 'the day itself' : day === 1 ? 'the day after' : dayName(evening.date, day)}`,
              ] as const,
          ),
        ]}
        onChoose={(day) => set(day === ANY ? undefined : { day: Number(day), time: at?.time ?? fallback })}
      />
      {at === undefined ? null : (
        <>
          {' '}
          <WordText
            label={`${name}: ${field} time`}
            text={at.time}
            onWrite={(text) => {
              const found = CLOCK.exec(text.trim())
              return found
                ? set({ day: at.day, time: `${String(found[1]).padStart(2, '0')}:${found[2]}` })
                : 'Write a time, such as 17:00.'
            }}
          />
        </>
      )}
    </>
  )
}
