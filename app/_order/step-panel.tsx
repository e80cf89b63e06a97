'use client'

import { useParams } from 'next/navigation'
import { useEffect, useRef } from 'react'
import { ClaimLine } from '#app/_frame/claim.tsx'
import { Doneness } from '#app/_safety/doneness.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Link } from '#app/_ui/link.tsx'
import { careHelp } from '#app/_words/care.ts'
import { clockText, dayName, dayOf, listText, sentence } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import { wayText } from '#app/_words/way.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { useChoose } from './choose.tsx'
import type { Doing } from './picture/doings.ts'
import { Reasons } from './reasons.tsx'
import css from './step-panel.module.css'

interface Props {
  readonly doing: Doing
  readonly order: RunningOrder
  readonly names: Names
  readonly onClose?: () => void
}

/** What the chosen step is, when it may be, why it is there, other ways, and who has it. */
export function StepPanel({ doing, order, names, onClose }: Props) {
  const { evening } = usePlan()
  const { takesFocus } = useChoose()
  const head = useRef<HTMLHeadingElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: each newly chosen step takes the focus once
  useEffect(() => {
    if (takesFocus()) head.current?.focus()
  }, [doing.key])
  const id = String(useParams().id ?? evening.id)
  const { cue } = doing
  const step = names.step(cue.step)
  const dish = names.dish(step?.dish ?? null)
  const way = step?.ways[cue.way]
  const day = dayOf(evening, cue.start)
  const clock = (instant: string | number) => clockText(instant, evening.zone)
  const kit = [...new Set(cue.kit.map((unit) => unit.id))].map(names.kitName)
  const others = step?.ways.filter((_, index) => index !== cue.way) ?? []
  return (
    <section className={css.panel} aria-label={`Step: ${step?.does ?? ''}`}>
      <div className={css.head}>
        <h2 ref={head} tabIndex={-1}>
          {sentence(step?.does || names.stepName(cue.step))}
          {doing.tail.startsWith(':') ? doing.tail : ''}, {clock(doing.from)}
        </h2>
        {onClose ? (
          <button type="button" onClick={onClose} aria-label="Close this step">
            <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
              <path d="M3 3l10 10M13 3L3 13" />
            </svg>
          </button>
        ) : null}
      </div>
      <p className={css.when}>
        {doing.touch === null ? listText(cue.cooks.map(names.cookName)) : names.cookName(doing.cook)}
        {day === 0 ? '' : `, on ${dayName(evening.date, day)}`}, {clock(cue.start)} to {clock(cue.end)}
        {kit.length > 0 ? `, with ${listText(kit)}` : ''}
        {cue.kitchen === evening.host ? '' : ` in ${names.kitchenName(cue.kitchen)}`}.{' '}
        {way ? `${sentence(careHelp[way.care])}.` : ''}
      </p>
      <Doneness step={cue.step} />
      <Reasons cue={cue} order={order} names={names} />
      {others.map((other) => (
        <p className={css.or} key={wayText(other)}>
          or: {wayText(other)}
        </p>
      ))}
      <dl className={css.claims}>
        <dt>This step</dt>
        <dd>
          <ClaimLine target={cue.step} name={step?.does || 'this step'} giving />
        </dd>
        {dish ? (
          <>
            <dt>
              The dish: <Link href={`/evenings/${id}/menu/${dish.id}`}>{dish.name}</Link>
            </dt>
            <dd>
              <ClaimLine target={dish.id} name={dish.name} />
            </dd>
            <dt>The course: {names.courseName(dish.course)}</dt>
            <dd>
              <ClaimLine target={dish.course} name={names.courseName(dish.course)} />
            </dd>
          </>
        ) : null}
      </dl>
    </section>
  )
}
