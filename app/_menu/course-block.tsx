'use client'

import { useState } from 'react'
import { ClaimLine } from '#app/_frame/claim.tsx'
import { Here } from '#app/_frame/here.tsx'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button, LinkButton } from '#app/_ui/button.tsx'
import { Entry } from '#app/_ui/drafts.tsx'
import { Moves } from '#app/_ui/moves.tsx'
import { dishColour, Plate } from '#app/_ui/plate.tsx'
import { WordText } from '#app/_ui/word.tsx'
import { clockText } from '#app/_words/clock.ts'
import type { WarningWords } from '#app/_words/warning.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Course } from '#lib/domain/menu.ts'
import { addDish } from '#lib/plan/commands/add.ts'
import { renameCourse } from '#lib/plan/commands/set.ts'
import { blankDish } from './blank.ts'
import { CopyDish } from './copy-dish.tsx'
import { CourseWords } from './course-words.tsx'
import { DishLine, type DishRow } from './dish-line.tsx'
import { Drinks } from './drinks.tsx'
import css from './menu.module.css'
import type { MenuMoves } from './use-menu-moves.ts'
import { WarnLine } from './warn-line.tsx'

interface Props {
  readonly course: Course
  readonly index: number
  readonly rows: readonly DishRow[]
  readonly warnings: readonly WarningWords[]
  /** Its last-minute minutes; null when nothing is planned. */
  readonly minutes: number | null
  readonly toTable: string | null
  readonly eveningId: string
  readonly editing: boolean
  readonly moves: MenuMoves
  /** The entry just added, whose name is to be written. */
  readonly fresh: string | null
  readonly onFresh: (id: string) => void
}

/** One course: its plate and its hour, its dishes with what is worth a warning, what is drunk with it. */
export function CourseBlock(props: Props) {
  const { course, index, rows, warnings, toTable, eveningId, editing, moves, fresh, onFresh } = props
  const { evening } = usePlan()
  const { tell } = useEdit()
  const [copying, setCopying] = useState(false)

  const add = () => {
    const id = newId()
    if (tell((doc) => addDish(doc, blankDish(id, course.id, evening)))) onFresh(id)
  }

  const done = (dish: string | null) => {
    setCopying(false)
    if (dish !== null) onFresh(dish)
  }

  return (
    <li
      {...moves.courses.item(course.id, `${css.course} ${editing ? css.courseChanging : ''}`)}
      aria-labelledby={`course-${course.id}`}
    >
      <div className={css.plate}>
        <Plate size={64} colour={rows.length > 0 ? dishColour(index) : null} />
        <b>{toTable === null ? '' : clockText(toTable, evening.zone)}</b>
        {toTable === null ? <span className="vh">not planned yet</span> : null}
      </div>
      <div className={css.middle}>
        <Entry id={course.id}>
          <CourseHead {...props} />
          {editing ? <CourseWords course={course} /> : null}
        </Entry>
        {rows.length === 0 && !editing ? <p className={css.quiet}>No dish yet.</p> : null}
        <ul {...moves.dishes.list(course.id)}>
          {rows.map((row, at) => (
            <DishLine
              key={row.dish.id}
              row={row}
              eveningId={eveningId}
              editing={editing}
              moves={moves}
              isFresh={row.dish.id === fresh}
              isFirst={at === 0 && index === 0}
              isLast={at === rows.length - 1 && index === evening.courses.length - 1}
            />
          ))}
        </ul>
        {warnings.length > 0 ? (
          <ul className={css.warnings} aria-label={`Worth a look in ${course.name}`}>
            {warnings.map((words) => (
              <WarnLine key={words.says} words={words} eveningId={eveningId} onAddDish={add} />
            ))}
          </ul>
        ) : null}
        {editing || rows.length === 0 ? (
          <p className={css.row}>
            <Button tone="word" onClick={add} aria-label={`Add a dish to ${course.name}`}>
              Add a dish
            </Button>
            <LinkButton tone="word" href={`/evenings/${eveningId}/recipe?course=${course.id}`}>
              Bring a recipe in<span className="vh"> for {course.name}</span>
            </LinkButton>
            <Button tone="word" onClick={() => setCopying(!copying)} aria-expanded={copying}>
              Copy a dish<span className="vh"> to {course.name}</span>
            </Button>
          </p>
        ) : null}
        {copying ? <CopyDish course={course} onDone={done} /> : null}
      </div>
      <Drinks course={course} editing={editing} />
    </li>
  )
}

function CourseHead({ course, index, rows, minutes, editing, moves, fresh }: Props) {
  const { evening, me } = usePlan()
  const { change, removeWithStrip } = useEdit()
  const isClaimed = evening.claims.some((claim) => claim.target === course.id)
  if (!editing) {
    return (
      <div className={css.courseHead}>
        <h2 id={`course-${course.id}`}>
          {course.name} <Here target={course.id} />
        </h2>
        <span className={css.courseClaim}>
          {isClaimed || me?.cook ? (
            <>
              all of it: <ClaimLine target={course.id} name={`all of ${course.name}`} brief />
            </>
          ) : null}
        </span>
        {minutes === null || rows.length < 2 ? (
          <span />
        ) : (
          <span className={css.courseSum}>
            <span className={css.minutesLabel}>Last-minute minutes: </span>
            {Math.round(minutes)} in all
          </span>
        )}
      </div>
    )
  }
  return (
    <div className={css.courseChange}>
      {moves.courses.handle(course.id)}
      <h2 id={`course-${course.id}`}>
        <WordText
          display
          long
          autoFocus={course.id === fresh}
          field="name"
          label={`Name of course ${index + 1}`}
          text={course.name}
          onWrite={(text) =>
            text.trim() ? change((doc) => renameCourse(doc, course.id, cleanText(text.trim(), false))) : 'A course needs a name.'
          }
        />
      </h2>
      <Moves
        name={course.name}
        isFirst={index === 0}
        isLast={index === evening.courses.length - 1}
        onMove={(by) => moves.courseBy(course.id, by)}
        onRemove={() => removeWithStrip('courses', course.id, course.name)}
      />
    </div>
  )
}
