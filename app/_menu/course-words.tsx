'use client'

import { useState } from 'react'
import { useEdit } from '#app/_frame/use-edit.ts'
import { useWhere } from '#app/_frame/where.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { serviceWords } from '#app/_words/care.ts'
import { durationText, readDuration, readSpan, spanText } from '#app/_words/duration.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Course } from '#lib/domain/menu.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { ChildrenWords } from './children-words.tsx'
import { childrenOf, courseText, eatenIn, momentOf, notBeforeText } from './course-sentence.ts'
import css from './menu.module.css'

const WRONG = 'Write minutes, such as 25 min or 1 h 30.'
const SERVICES = Object.entries(serviceWords).map(([value, words]) => [value as Course['service'], words] as const)
const NOBODY = ''

/** Everything about a course as sentences to fill in, folded behind the shortest of them. */
export function CourseWords({ course }: { readonly course: Course }) {
  const { evening } = usePlan()
  const { change } = useEdit()
  const [isOpen, setOpen] = useState(false)
  useWhere(isOpen ? course.id : null)
  const set = (
    patch: Partial<Omit<Course, 'id' | 'order'>> | { readonly [F in 'welcome' | 'children' | 'notBefore' | Role]?: undefined },
  ) => change((doc) => setFields(doc, 'courses', course.id, patch))
  const named = (what: string) => `${course.name}: ${what}`
  const minutes = (text: string, write: (duration: string) => string | null): string | null => {
    const read = readDuration(text)
    return read === null ? WRONG : write(read)
  }
  const mayWelcome = !evening.courses.some((other) => other !== course && other.welcome && !other.children)
  const cooks = [[NOBODY, 'nobody in particular'], ...evening.cooks.map((cook) => [cook.id, cook.name] as const)] as const

  return (
    <details className={css.fold} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{courseText(course, evening.date)}</summary>
      <p className={css.sentence}>
        Served{' '}
        <WordChoice
          label={named('how it is served')}
          value={course.service}
          options={SERVICES}
          onChoose={(service) => set({ service })}
        />
        ,{' '}
        <WordChoice
          label={named('before or after sit-down')}
          value={course.children ? 'children' : course.welcome ? 'welcome' : 'table'}
          options={[
            ['table', 'when everybody sits'],
            ...(mayWelcome ? ([['welcome', 'as a welcome, before sit-down']] as const) : []),
            ['children', 'to the children, before'],
          ]}
          onChoose={(when) =>
            set({
              welcome: when === 'table' ? undefined : true,
              children: when === 'children' ? (course.children ?? childrenOf(evening)) : undefined,
            })
          }
        />
        {course.children ? (
          <>
            : <ChildrenWords course={course} sitting={course.children} />
          </>
        ) : null}
        . Eaten in usually{' '}
        <WordText
          field="likely"
          label={named('minutes to eat it, usually')}
          text={durationText(course.eating.likely)}
          onWrite={(text) => minutes(text, (likely) => set({ eating: eatenIn(course.eating, likely) }))}
        />
        , can be{' '}
        <WordText
          field="eating"
          label={named('minutes to eat it, least and most')}
          text={spanText(course.eating.least, course.eating.most)}
          onWrite={(text) => {
            const span = readSpan(text)
            if (span === null) return 'Write two times, such as 20 to 35 min.'
            const usual = secondsOf(course.eating.likely)
            if (secondsOf(span[0]) > usual || secondsOf(span[1]) < usual)
              return `It usually takes ${durationText(course.eating.likely)}: the two must lie around that.`
            return set({ eating: { least: span[0], likely: course.eating.likely, most: span[1] } })
          }}
        />
        ; plates off take{' '}
        <WordText
          field="clearing"
          label={named('minutes to take the plates off')}
          text={durationText(course.clearing)}
          onWrite={(text) => minutes(text, (clearing) => set({ clearing }))}
        />
        , pouring for it{' '}
        <WordText
          field="pouring"
          label={named('minutes to pour for it')}
          text={durationText(course.pouring)}
          onWrite={(text) => minutes(text, (pouring) => set({ pouring }))}
        />
        .
      </p>
      <p className={css.sentence}>
        Guests like to wait{' '}
        <WordText
          field="ideal"
          label={named('minutes guests like to wait for it')}
          text={spanText(course.wait.ideal[0], course.wait.ideal[1])}
          onWrite={(text) => {
            const span = readSpan(text)
            if (span === null) return 'Write two times, such as 4 to 12 min.'
            const most = secondsOf(course.wait.most) < secondsOf(span[1]) ? span[1] : course.wait.most
            return set({ wait: { ideal: [span[0], span[1]], most } })
          }}
        />{' '}
        for it, and no more than{' '}
        <WordText
          field="wait"
          label={named('longest wait for it')}
          text={durationText(course.wait.most)}
          onWrite={(text) =>
            minutes(text, (most) =>
              secondsOf(most) < secondsOf(course.wait.ideal[1])
                ? `They like to wait up to ${durationText(course.wait.ideal[1])}: this must be no less.`
                : set({ wait: { ideal: course.wait.ideal, most } }),
            )
          }
        />
        . It comes not before{' '}
        <WordText
          field="notBefore"
          label={named('not before')}
          text={course.notBefore ? notBeforeText(course.notBefore, evening) : ''}
          empty="any time"
          onWrite={(text) => {
            if (text.trim() === '') return set({ notBefore: undefined })
            const time = readClock(text)
            return time === null
              ? 'Write a time, such as 21:00, or nothing for any time.'
              : set({ notBefore: momentOf(time, evening.sitDown) })
          }}
        />
        .
      </p>
      <p className={css.sentence}>
        {ROLES.map(([role, words], at) => (
          <span key={role}>
            {at === 0 ? '' : at === ROLES.length - 1 ? ' and ' : ', '}
            {words}{' '}
            <WordChoice
              label={named(words)}
              value={evening.cooks.some((cook) => cook.id === course[role]) ? (course[role] ?? NOBODY) : NOBODY}
              options={cooks}
              onChoose={(cook) => set({ [role]: cook === NOBODY ? undefined : cook })}
            />
          </span>
        ))}
        .
      </p>
    </details>
  )
}

type Role = 'lead' | 'hosts' | 'pours' | 'clears'
const ROLES: readonly (readonly [Role, string])[] = [
  ['lead', 'Led by'],
  ['hosts', 'hosted by'],
  ['pours', 'poured by'],
  ['clears', 'cleared by'],
]
