'use client'

import { ClaimLine } from '#app/_frame/claim.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Fold } from '#app/_ui/fold.tsx'
import { countOf, sentence } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Step } from '#lib/domain/menu.ts'
import { type CourseStand, standOf } from '#lib/sharing/stand.ts'
import { LeadWords } from './lead-words.tsx'
import css from './share.module.css'

/** Who has what, by course, dish and step, with who leads each course. */
export function CourseClaims({ names }: { readonly names: Names }) {
  const { evening } = usePlan()
  const { courses, chores } = standOf(evening)
  const choreSteps = chores.flatMap(({ step }) => names.step(step) ?? [])
  return (
    <section aria-labelledby="who-has">
      <h2 id="who-has">Who has what</h2>
      {courses.map((stand) => (
        <Course key={stand.course} stand={stand} names={names} />
      ))}
      {choreSteps.length > 0 ? (
        <div className={css.course}>
          <h3>Chores of the house</h3>
          <Steps steps={choreSteps} names={names} title={sentence(countOf(choreSteps.length, 'chore'))} />
        </div>
      ) : null}
    </section>
  )
}

function Course({ stand, names }: { readonly stand: CourseStand; readonly names: Names }) {
  const { evening } = usePlan()
  const name = names.courseName(stand.course)
  return (
    <div className={css.course}>
      <h3>{name}</h3>
      <LeadWords course={stand.course} names={names} />
      <p className={css.line}>
        <span>All of it</span>
        <ClaimLine target={stand.course} name={`all of ${name}`} giving />
      </p>
      {stand.dishes.map(({ dish, open }) => {
        const steps = evening.steps.filter((step) => step.dish === dish)
        return (
          <div key={dish} className={css.dish}>
            <p className={css.line}>
              <span className={css.name}>{names.dishName(dish)}</span>
              <ClaimLine target={dish} name={names.dishName(dish)} giving brief />
            </p>
            {steps.length > 0 ? (
              <Steps
                steps={steps}
                names={names}
                title={`${sentence(countOf(steps.length, 'step'))} of ${names.dishName(dish)}${openText(open, steps.length)}`}
              />
            ) : null}
          </div>
        )
      })}
    </div>
  )
}

const openText = (open: number, steps: number): string => {
  if (open === 0) return ''
  return open === steps ? ', nobody’s yet' : `, ${open} of them nobody’s yet`
}

interface StepsProps {
  readonly steps: readonly Step[]
  readonly names: Names
  readonly title: string
}

function Steps({ steps, names, title }: StepsProps) {
  return (
    <Fold title={title}>
      <ul className={css.steps}>
        {steps.map(({ id }) => (
          <li key={id} className={css.line}>
            <span>{names.stepName(id)}</span>
            <ClaimLine target={id} name={names.stepName(id)} giving brief />
          </li>
        ))}
      </ul>
    </Fold>
  )
}
