'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { WordText } from '#app/_ui/word.tsx'
import { readClock } from '#app/_words/read-clock.ts'
import { readCount } from '#app/_words/read-count.ts'
import type { Course } from '#lib/domain/menu.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import { setFields } from '#lib/plan/commands/set.ts'

interface Props {
  readonly course: Course
  readonly sitting: NonNullable<Course['children']>
}

/** How many children eat a course of their own, and when: "3 of them eat it at 18:00". */
export function ChildrenWords({ course, sitting }: Props) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const set = (patch: Partial<typeof sitting>) =>
    change((doc) => setFields(doc, 'courses', course.id, { children: { ...sitting, ...patch } }))
  return (
    <>
      <WordText
        field="children"
        label={`${course.name}: how many children`}
        text={String(sitting.covers)}
        onWrite={(text) => {
          const covers = readCount(text)
          return covers === null || covers < 1 || covers > 60 ? 'Write how many children, such as 3.' : set({ covers })
        }}
      />{' '}
      of them, beside the {evening.covers}, eat it at{' '}
      <WordText
        field="children at"
        label={`${course.name}: when the children eat`}
        text={sitting.at.time}
        onWrite={(text) => {
          const time = readClock(text)
          if (time === null) return 'Write a time, such as 18:00.'
          const at = { ...sitting.at, time }
          return epochMsOf(evening, at) > epochMsOf(evening, evening.sitDown)
            ? `The children eat before everybody sits down: write a time up to ${evening.sitDown.time}.`
            : set({ at })
        }}
      />
    </>
  )
}
