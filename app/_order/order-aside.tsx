'use client'

import { memo, useEffect, useLayoutEffect, useMemo, useRef } from 'react'
import type { Plan } from '#app/_sync/plan.ts'
import { PlanContext, usePlan } from '#app/_sync/use-plan.ts'
import { useIdle } from '#app/_ui/later.tsx'
import { type Names, namesOf } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { useChoose } from './choose.tsx'
import { Clashes } from './clashes.tsx'
import { CourseFigures } from './course-figures.tsx'
import { Figures } from './figures.tsx'
import { claimFrame } from './frames.ts'
import css from './order.module.css'
import { PIECES, Safety, StepPanel, ThingPanel, WhatIf } from './order-pieces.ts'
import type { Doing } from './picture/doings.ts'
import { TURNS, useTurn } from './use-turn.ts'

interface Props {
  readonly order: RunningOrder
  /** What is drawn: the plan and the order themselves, or with a change that is only looked at; and the names in it. */
  readonly shown: Plan
  readonly drawn: RunningOrder
  readonly names: Names
  /** The chosen line of the drawing; null when none is, and in the list, which opens its own. */
  readonly doing: Doing | null
  readonly onClose: () => void
}

/** What stands beside the drawing: the chosen step, the clashes and their ways out, the figures, and what if. It takes its turn as a whole. */
export function OrderAside({ order, shown, drawn, names, doing, onClose }: Props) {
  const plan = usePlan()
  const said = useTurn(
    useMemo(() => ({ plan, order, shown, drawn, names }), [plan, order, shown, drawn, names]),
    TURNS.aside,
    { inGaps: true },
  )
  return (
    <PlanContext value={said.plan}>
      <Aside order={said.order} shown={said.shown} drawn={said.drawn} names={said.names} doing={doing} onClose={onClose} />
    </PlanContext>
  )
}

const Aside = memo(function Aside({ order, shown, drawn, names, doing, onClose }: Props) {
  const { evening, order: state } = usePlan()
  const { thing } = useChoose()
  const isIdle = useIdle(PIECES)
  const own = useMemo(() => namesOf(evening), [evening])
  const aside = useRef<HTMLElement>(null)
  const chosen = thing ? `${thing.kind} ${thing.id}` : (doing?.key ?? null)
  const isScrolled = useRef(false)
  // It is written whenever React is done with it, and is much.
  useLayoutEffect(claimFrame)
  useEffect(() => {
    // What was chosen stands at the top. To ask an element how far it is scrolled would lay out the whole page.
    if (chosen !== null && aside.current && isScrolled.current) aside.current.scrollTop = 0
  }, [chosen])
  const isEarly = state.kind === 'current' && state.more === true
  const isLooking = state.kind === 'current' && state.looking === true
  return (
    <aside
      ref={aside}
      className={css.aside}
      aria-label="What the running order says"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls by itself, and must do so by keyboard too
      tabIndex={0}
      onScroll={(event) => {
        isScrolled.current = event.currentTarget.scrollTop > 0
      }}
    >
      <PlanContext value={shown}>
        {thing ? (
          <div className={css.panel} aria-live="polite">
            <ThingPanel thing={thing} evening={shown.evening} order={drawn} names={names} />
          </div>
        ) : doing ? (
          <div className={css.panel} aria-live="polite">
            <StepPanel doing={doing} order={drawn} names={names} onClose={onClose} />
          </div>
        ) : null}
      </PlanContext>
      <Clashes order={order} names={own} isEarly={isEarly} isLooking={isLooking} />
      <PlanContext value={shown}>
        <CourseFigures order={drawn} names={names} />
        <Figures evening={shown.evening} order={drawn} names={names} />
      </PlanContext>
      {isIdle ? (
        <>
          <WhatIf order={order} />
          <Safety order={order} names={own} />
        </>
      ) : null}
    </aside>
  )
})
