'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { Clashes } from './clashes.tsx'
import { CourseFigures } from './course-figures.tsx'
import { Figures } from './figures.tsx'
import css from './order.module.css'
import type { Doing } from './picture/doings.ts'
import { StepPanel } from './step-panel.tsx'

interface Props {
  readonly order: RunningOrder
  readonly names: Names
  /** The chosen line of the drawing; null when none is, and in the list, which opens its own. */
  readonly doing: Doing | null
  readonly onClose: () => void
}

/** What stands beside the drawing: the chosen step, the figures, the clashes and their ways out. */
export function OrderAside({ order, names, doing, onClose }: Props) {
  const { evening, order: state } = usePlan()
  const isEarly = state.kind === 'current' && state.more === true
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls by itself, and must do so by keyboard too
    <aside className={css.aside} aria-label="What the running order says" tabIndex={0}>
      {doing ? (
        <div className={css.panel} aria-live="polite">
          <StepPanel doing={doing} order={order} names={names} onClose={onClose} />
        </div>
      ) : null}
      <CourseFigures order={order} names={names} />
      <Figures evening={evening} order={order} names={names} />
      <Clashes order={order} names={names} evening={evening} isEarly={isEarly} />
    </aside>
  )
}
