'use client'

import { useClaim } from '#app/_frame/use-claim.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { priceText } from '#app/_words/claimed.ts'
import type { Course } from '#lib/domain/menu.ts'
import { setEach, setFields } from '#lib/plan/commands/set.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import css from './parts.module.css'
import { coupleIn, swapped, takeTurns } from './turns.ts'

type Part = 'lead' | 'hosts' | 'pours' | 'clears'
const NOBODY = ''
const PARTS: readonly (readonly [part: Part, words: string])[] = [
  ['lead', 'Leads'],
  ['hosts', 'Hosts'],
  ['pours', 'Pours'],
  ['clears', 'Clears'],
]

/** For each course who leads it, who stays at the table for it, who pours and who takes the plates off. */
export function PartsTable() {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const couple = coupleIn(evening)
  const turns = couple ? takeTurns(evening, couple) : []
  const isTaken = turns.every(([id, { lead, hosts }]) => {
    const course = evening.courses.find((each) => each.id === id)
    return course?.lead === lead && course?.hosts === hosts
  })
  return (
    <>
      <table className={css.parts}>
        <thead>
          <tr>
            <th scope="col">Course</th>
            {PARTS.map(([part, words]) => (
              <th scope="col" key={part}>
                {words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {evening.courses.map((course) => (
            <PartsRow key={course.id} course={course} />
          ))}
        </tbody>
      </table>
      {turns.length > 1 && !isTaken ? (
        <Button tone="soft" onClick={() => tell((doc) => setEach(doc, 'courses', turns))}>
          Take turns: one leads, the other hosts
        </Button>
      ) : null}
    </>
  )
}

function PartsRow({ course }: { readonly course: Course }) {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const { phase, worse, dear, refused, ask } = useClaim(course.id)
  const cooks = [[NOBODY, 'whoever is free'] as const, ...evening.cooks.map((cook) => [cook.id, cook.name || 'a cook'] as const)]
  const held = evening.claims.find(({ target }) => target === course.id)?.cook
  const set = (part: Part, chosen: string) => {
    const cook = chosen === NOBODY ? undefined : chosen
    // Nobody is at the stove and at the table: who takes the one gives the other to who had this.
    const other = part === 'lead' ? 'hosts' : part === 'hosts' ? 'lead' : null
    const gives = other !== null && cook !== undefined && course[other] === cook ? { [other]: course[part] } : {}
    tell((doc) => setFields(doc, 'courses', course.id, { [part]: cook, ...gives }))
  }
  const swap = async () => {
    const { hosts, lead } = course
    const wish: Wish | null =
      held !== undefined && held === lead && hosts !== undefined
        ? { kind: 'reassign', target: course.id, from: held, cook: hosts }
        : null
    if (wish === null || (await ask(wish))) tell((doc) => setFields(doc, 'courses', course.id, swapped(course)))
  }
  return (
    <tr>
      <th scope="row">
        {course.name}
        {course.lead !== undefined && course.hosts !== undefined ? (
          <Button
            tone="quiet"
            aria-label={`Swap who leads and who hosts ${course.name}`}
            disabled={phase !== 'idle'}
            onClick={swap}
          >
            {dear ? 'swap all the same' : 'swap'}
          </Button>
        ) : null}
        {dear ? <small role="status">{priceText(worse)}</small> : null}
        {refused ? <small role="alert">{refused}</small> : null}
      </th>
      {PARTS.map(([part, words]) => (
        <td key={part} data-part={words}>
          <WordChoice
            label={`${course.name}: ${words.toLowerCase()}`}
            value={course[part] ?? NOBODY}
            options={cooks}
            onChoose={(cook) => set(part, cook)}
          />
        </td>
      ))}
    </tr>
  )
}
