'use client'

import { useMemo, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { firstWork, lastMinuteMinutes } from '#app/_order/last-minute.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Cloth } from '#app/_ui/cloth.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { countOf, countText, listText, sentence } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import { namesOf } from '#app/_words/names.ts'
import { addCourse } from '#lib/plan/commands/add.ts'
import { blankCourse } from './blank.ts'
import { CourseBlock } from './course-block.tsx'
import { EveningWords } from './evening-words.tsx'
import css from './menu.module.css'
import { useMenuMoves } from './use-menu-moves.ts'

/** The menu: courses, their dishes, who has them and how many minutes each wants at the last. */
export function MenuScreen() {
  const { evening, order } = usePlan()
  const { tell } = useEdit()
  const [editing, setEditing] = useState(evening.courses.length === 0)
  const [fresh, setFresh] = useState<string | null>(null)
  const moves = useMenuMoves()
  const names = useMemo(() => namesOf(evening), [evening])
  const planned = order.kind === 'none' ? null : order.order
  const minutes = useMemo(() => (planned ? lastMinuteMinutes(planned, names) : null), [planned, names])
  const begins = useMemo(() => (planned ? firstWork(planned, names) : null), [planned, names])
  const dishes = evening.dishes.filter((dish) => dish.state !== 'dropped')
  const sum = [...(minutes?.values() ?? [])].reduce((total, each) => total + each, 0)

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
          {evening.courses.length === 0
            ? `Nothing on it yet, for ${countText(evening.covers)}`
            : `${sentence(countOf(evening.courses.length, 'course'))}, ${countOf(dishes.length, 'dish', 'dishes')}, for ${countText(evening.covers)}`}
        </p>
        <div className={css.actions}>
          <Button tone="soft" onClick={add}>
            Add a course
          </Button>
          <Button onClick={() => setEditing(!editing)} aria-pressed={editing}>
            {editing ? 'Done changing' : 'Change the menu'}
          </Button>
        </div>
      </div>
      {editing ? <EveningWords /> : null}
      {evening.courses.length === 0 ? (
        <Cloth label="The menu">
          <div className={css.empty}>
            <h2>An empty table</h2>
            <p>Begin with a course: a soup, a main, something sweet. Then its dishes, and what each dish wants done.</p>
            <Button onClick={add}>Add the first course</Button>
          </div>
        </Cloth>
      ) : (
        <Cloth label="Courses and dishes">
          <div className={css.titles} aria-hidden="true">
            <span>To table</span>
            <span>Dish</span>
            <span>Who has it</span>
            <span>Last-minute minutes</span>
            <span>To drink</span>
          </div>
          <ol {...moves.courses.list('menu')}>
            {evening.courses.map((course, index) => (
              <CourseBlock
                key={course.id}
                course={course}
                index={index}
                editing={editing}
                moves={moves}
                isFresh={course.id === fresh}
                onFresh={setFresh}
                fresh={fresh}
                minutes={minutes}
                begins={begins}
                toTable={planned?.courses.find((candidate) => candidate.course === course.id)?.toTable ?? null}
              />
            ))}
          </ol>
        </Cloth>
      )}
      {moves.courses.said}
      {moves.dishes.said}
      {minutes && evening.courses.length > 0 ? (
        <section className={css.sum} aria-label="What the menu asks">
          <div>
            <h2>{sum === 0 ? 'No last-minute minutes' : `${minutesText(sum)} at the last`}</h2>
            <p>
              in the quarters of an hour before the courses
              {evening.cooks.length > 1 ? `, shared by ${listText(evening.cooks.map((cook) => cook.name))}` : ''}.
            </p>
          </div>
          <Unclaimed />
        </section>
      ) : null}
    </main>
  )
}

function Unclaimed() {
  const { evening } = usePlan()
  const claimed = new Set(evening.claims.map((claim) => claim.target))
  const open = evening.dishes.filter((dish) => dish.state === 'on' && !claimed.has(dish.id) && !claimed.has(dish.course))
  return (
    <div>
      <h2>
        {open.length === 0 ? 'Every dish has a cook' : `${sentence(countOf(open.length, 'dish', 'dishes'))} nobody has yet`}
      </h2>
      <p>
        {open.length === 0
          ? 'and its steps go to that cook first.'
          : `${
              open.length > 3
                ? `${open
                    .slice(0, 3)
                    .map((dish) => dish.name)
                    .join(', ')} and others`
                : listText(open.map((dish) => dish.name))
            }: the order shares them out until somebody takes them.`}
      </p>
    </div>
  )
}
