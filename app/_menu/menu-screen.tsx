'use client'

import { useParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button, LinkButton } from '#app/_ui/button.tsx'
import { Cloth } from '#app/_ui/cloth.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { countOf, countText, sentence } from '#app/_words/clock.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import { addCourse } from '#lib/plan/commands/add.ts'
import { blankCourse } from './blank.ts'
import { CourseBlock } from './course-block.tsx'
import { EveningWords } from './evening-words.tsx'
import css from './menu.module.css'
import { menuRows } from './rows.ts'
import { MenuSum } from './sum.tsx'
import { useMenuMoves } from './use-menu-moves.ts'

/**
 * The menu: courses, their dishes, who has them, how many minutes each wants at the last and what is worth a warning.
 * `needs`: what guests have told, for hosts; null for everybody else.
 */
export function MenuScreen({ needs }: { readonly needs: readonly KnownNeed[] | null }) {
  const { evening, order } = usePlan()
  const { tell } = useEdit()
  const eveningId = String(useParams().id ?? evening.id)
  const [editing, setEditing] = useState(evening.courses.length === 0)
  const [fresh, setFresh] = useState<string | null>(null)
  const moves = useMenuMoves()
  const planned = order.kind === 'none' ? null : order.order
  const rows = useMemo(() => menuRows(evening, planned, needs), [evening, planned, needs])
  const dishes = evening.dishes.filter((dish) => dish.state !== 'dropped')
  const isEmpty = evening.courses.length === 0

  const add = () => {
    const id = newId()
    if (!tell((doc) => addCourse(doc, blankCourse(id)))) return
    setEditing(true)
    setFresh(id)
  }

  return (
    <main id="main" className={css.main}>
      <Ready />
      <div className={css.head}>
        <h1>Menu</h1>
        <p>
          {isEmpty
            ? `Nothing on it yet, for ${countText(evening.covers)}`
            : `${sentence(countOf(evening.courses.length, 'course'))}, ${countOf(dishes.length, 'dish', 'dishes')}, for ${countText(evening.covers)}`}
        </p>
        <div className={css.actions}>
          <Button tone="soft" onClick={add}>
            Add a course
          </Button>
          {isEmpty ? null : (
            <>
              <LinkButton tone="soft" href={`/evenings/${eveningId}/recipe`}>
                Bring a recipe in
              </LinkButton>
              <LinkButton tone="soft" href={`/evenings/${eveningId}/drinks`}>
                Drinks
              </LinkButton>
              <LinkButton tone="soft" href={`/evenings/${eveningId}/shopping`}>
                Shopping
              </LinkButton>
            </>
          )}
          <Button onClick={() => setEditing(!editing)} aria-pressed={editing}>
            {editing ? 'Done changing' : 'Change the menu'}
          </Button>
        </div>
      </div>
      {editing ? <EveningWords /> : null}
      {isEmpty ? (
        <Cloth label="The menu">
          <div className={css.empty}>
            <h2>An empty table</h2>
            <p>Begin with a course: a soup, a main, something sweet. Then its dishes, and what each dish wants done.</p>
            <p className={css.row}>
              <Button onClick={add}>Add the first course</Button>
              <LinkButton tone="word" href={`/evenings/${eveningId}/recipe`}>
                or bring a recipe in
              </LinkButton>
            </p>
          </div>
        </Cloth>
      ) : (
        <Cloth label="Courses and dishes">
          <div className={css.titles} aria-hidden="true">
            <span>To table</span>
            <span>Dish</span>
            {editing ? (
              <>
                <span />
                <span />
              </>
            ) : (
              <>
                <span>Who has it</span>
                <span>Last-minute minutes</span>
              </>
            )}
            <span>To drink</span>
          </div>
          <ol {...moves.courses.list('menu')}>
            {evening.courses.map((course, index) => (
              <CourseBlock
                key={course.id}
                course={course}
                index={index}
                rows={rows.courses.get(course.id)?.rows ?? []}
                warnings={rows.courses.get(course.id)?.warnings ?? []}
                minutes={rows.courses.get(course.id)?.minutes ?? null}
                toTable={planned?.courses.find((candidate) => candidate.course === course.id)?.toTable ?? null}
                eveningId={eveningId}
                editing={editing}
                moves={moves}
                fresh={fresh}
                onFresh={setFresh}
              />
            ))}
          </ol>
        </Cloth>
      )}
      {moves.courses.said}
      {moves.dishes.said}
      {isEmpty ? null : <MenuSum rows={rows} />}
    </main>
  )
}
