'use client'

import { ClaimLine } from '#app/_frame/claim.tsx'
import { newId } from '#app/_frame/new-id.ts'
import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Moves } from '#app/_ui/moves.tsx'
import { dishColour, Plate } from '#app/_ui/plate.tsx'
import { WordChoice, WordText } from '#app/_ui/word.tsx'
import { serviceWords } from '#app/_words/care.ts'
import { clockText, sentence } from '#app/_words/clock.ts'
import { durationText, readDuration, readSpan, spanText } from '#app/_words/duration.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Course } from '#lib/domain/menu.ts'
import { addDish } from '#lib/plan/commands/add.ts'
import { renameCourse, setFields } from '#lib/plan/commands/set.ts'
import { blankDish } from './blank.ts'
import { DishLine } from './dish-line.tsx'
import { Drinks } from './drinks.tsx'
import css from './menu.module.css'
import type { MenuMoves } from './use-menu-moves.ts'

interface Props {
  readonly course: Course
  readonly index: number
  readonly editing: boolean
  readonly moves: MenuMoves
  readonly isFresh: boolean
  readonly fresh: string | null
  readonly onFresh: (id: string) => void
  readonly minutes: ReadonlyMap<string, number> | null
  readonly begins: ReadonlyMap<string, number> | null
  readonly toTable: string | null
}

/** One course: its plate and its hour, its dishes, what is drunk with it. */
export function CourseBlock({ course, index, editing, moves, isFresh, fresh, onFresh, minutes, begins, toTable }: Props) {
  const { evening } = usePlan()
  const { change, tell, removeWithStrip } = useEdit()
  const dishes = evening.dishes.filter((dish) => dish.course === course.id)
  const isLong = dishes.length > 0

  const add = () => {
    const id = newId()
    if (tell((doc) => addDish(doc, blankDish(id, course.id, evening)))) onFresh(id)
  }

  return (
    <li {...moves.courses.item(course.id, css.course)} aria-labelledby={`course-${course.id}`}>
      <div className={css.plate}>
        <Plate size={64} colour={isLong ? dishColour(index) : null} />
        <b>{toTable === null ? '' : clockText(toTable, evening.zone)}</b>
        {toTable === null ? <span className="vh">not planned yet</span> : null}
      </div>
      <div className={css.middle}>
        <div className={css.courseHead}>
          {editing ? moves.courses.handle(course.id) : null}
          {editing ? (
            <h2 id={`course-${course.id}`}>
              <WordText
                display
                long
                autoFocus={isFresh}
                label={`Name of course ${index + 1}`}
                text={course.name}
                onWrite={(text) =>
                  text.trim()
                    ? change((doc) => renameCourse(doc, course.id, cleanText(text.trim(), false)))
                    : 'A course needs a name.'
                }
              />
            </h2>
          ) : (
            <h2 id={`course-${course.id}`}>{course.name}</h2>
          )}
          {editing ? null : (
            <span className={css.courseClaim}>
              the whole course <ClaimLine target={course.id} name={course.name} brief />
            </span>
          )}
          {editing ? (
            <Moves
              name={course.name}
              isFirst={index === 0}
              isLast={index === evening.courses.length - 1}
              onMove={(by) => moves.courseBy(course.id, by)}
              onRemove={() => removeWithStrip('courses', course.id, course.name)}
            />
          ) : null}
        </div>
        {editing ? <CourseWords course={course} /> : null}
        {dishes.length === 0 && !editing ? <p className={css.quiet}>No dish yet.</p> : null}
        <ul {...moves.dishes.list(course.id)}>
          {dishes.map((dish, at) => (
            <DishLine
              key={dish.id}
              dish={dish}
              editing={editing}
              moves={moves}
              isFresh={dish.id === fresh}
              isFirst={at === 0 && index === 0}
              isLast={at === dishes.length - 1 && index === evening.courses.length - 1}
              minutes={minutes === null ? null : (minutes.get(dish.id) ?? 0)}
              begins={begins?.get(dish.id) ?? null}
            />
          ))}
        </ul>
        {editing ? (
          <Button tone="word" onClick={add} aria-label={`Add a dish to ${course.name}`}>
            Add a dish
          </Button>
        ) : null}
      </div>
      <Drinks course={course} editing={editing} />
    </li>
  )
}

const WRONG = 'Write minutes, such as 25 min or 1 h 30.'

/** How a course is served, eaten and waited for, in a sentence. */
function CourseWords({ course }: { readonly course: Course }) {
  const { change } = useEdit()
  const set = (patch: Partial<Pick<Course, 'service' | 'eating' | 'clearing' | 'wait' | 'welcome'>>) =>
    change((doc) => setFields(doc, 'courses', course.id, patch))
  const named = (what: string) => `${course.name}: ${what}`
  return (
    <p className={css.sentence}>
      Served{' '}
      <WordChoice
        label={named('how it is served')}
        value={course.service}
        options={Object.entries(serviceWords).map(([value, words]) => [value as Course['service'], words] as const)}
        onChoose={(service) => set({ service })}
      />
      , eaten in{' '}
      <WordText
        label={named('minutes to eat it')}
        text={durationText(course.eating.likely)}
        onWrite={(text) => {
          const likely = readDuration(text)
          if (likely === null) return WRONG
          const [least, most] = [
            secondsOf(course.eating.least) > secondsOf(likely) ? likely : course.eating.least,
            secondsOf(course.eating.most) < secondsOf(likely) ? likely : course.eating.most,
          ]
          return set({ eating: { least, likely, most } })
        }}
      />
      ; plates off take{' '}
      <WordText
        label={named('minutes to take the plates off')}
        text={durationText(course.clearing)}
        onWrite={(text) => {
          const clearing = readDuration(text)
          return clearing === null ? WRONG : set({ clearing })
        }}
      />
      . Guests like to wait{' '}
      <WordText
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
        label={named('longest wait for it')}
        text={durationText(course.wait.most)}
        onWrite={(text) => {
          const most = readDuration(text)
          return most === null ? WRONG : set({ wait: { ideal: course.wait.ideal, most } })
        }}
      />
      .<span className="vh">{sentence(course.name)}</span>
    </p>
  )
}
