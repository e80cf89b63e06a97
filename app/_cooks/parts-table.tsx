'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import type { Course } from '#lib/domain/menu.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import css from './parts.module.css'

type Part = 'lead' | 'pours' | 'clears'
const NOBODY = ''
const PARTS: readonly (readonly [part: Part, words: string])[] = [
  ['lead', 'Leads'],
  ['pours', 'Pours'],
  ['clears', 'Clears'],
]

/** For each course who leads it, who pours and who takes the plates off. */
export function PartsTable() {
  const { evening } = usePlan()
  const { tell } = useEdit()
  const set = (course: Course, part: Part, cook: string) =>
    tell((doc) => setFields(doc, 'courses', course.id, { [part]: cook === NOBODY ? undefined : cook }))
  const cooks = [[NOBODY, 'whoever is free'] as const, ...evening.cooks.map((cook) => [cook.id, cook.name || 'a cook'] as const)]
  return (
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
          <tr key={course.id}>
            <th scope="row">{course.name}</th>
            {PARTS.map(([part, words]) => (
              <td key={part} data-part={words}>
                <WordChoice
                  label={`${course.name}: ${words.toLowerCase()}`}
                  value={course[part] ?? NOBODY}
                  options={cooks}
                  onChoose={(cook) => set(course, part, cook)}
                />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
