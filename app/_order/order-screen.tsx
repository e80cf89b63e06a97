'use client'

import { useParams, useSearchParams } from 'next/navigation'
import { useCallback, useEffect, useMemo, useState } from 'react'
import type { Plan } from '#app/_sync/plan.ts'
import { useCalm } from '#app/_sync/plan-shown.tsx'
import { PlanContext, usePlan } from '#app/_sync/use-plan.ts'
import { LinkButton } from '#app/_ui/button.tsx'
import { Link } from '#app/_ui/link.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { namesOf } from '#app/_words/names.ts'
import { orderStateText } from '#app/_words/order-state.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { ChooseProvider } from './choose.tsx'
import { LookProvider, useLook } from './look.tsx'
import { LookBanner } from './look-banner.tsx'
import css from './order.module.css'
import { OrderAside } from './order-aside.tsx'
import { OrderDrawing } from './order-drawing.tsx'
import { ShareOut } from './order-pieces.ts'
import { doings } from './picture/doings.ts'
import { remember } from './remember.ts'
import { TakenNote, TakenProvider } from './taken.tsx'

type View = 'picture' | 'list' | 'share'

const VIEWS: readonly (readonly [view: View, words: string])[] = [
  ['picture', 'As a picture'],
  ['list', 'As a list'],
  ['share', 'Share it out'],
]

const viewOf = (said: string | null): View => VIEWS.find(([view]) => view === said)?.[0] ?? 'picture'

/** The running order: the table seen from above with time flowing down, the same as a list, and sharing it out. */
export function OrderScreen() {
  useCalm()
  return (
    <LookProvider>
      <TakenProvider>
        <Order />
      </TakenProvider>
    </LookProvider>
  )
}

function Order() {
  const { evening, order } = usePlan()
  const id = String(useParams().id ?? evening.id)
  const view = viewOf(useSearchParams().get('view'))
  const planned = order.kind === 'none' ? null : order.order
  const state = orderStateText(order)
  const isOld = planned !== null && order.kind !== 'current'
  return (
    <main id="main" className={css.main} data-order={order.kind}>
      <Ready />
      <div className={css.head}>
        <h1>Running order</h1>
        <nav className={css.views} aria-label="How the running order is shown">
          {VIEWS.map(([kind, words]) => (
            <Link key={kind} href={`?view=${kind}`} aria-current={kind === view ? 'page' : undefined} replace scroll={false}>
              {words}
            </Link>
          ))}
        </nav>
        <LinkButton tone="word" href={`/evenings/${id}/print`}>
          Print, calendar
        </LinkButton>
        <p className={order.kind === 'failed' ? css.failed : css.state} role="status">
          {state ? (
            <>
              {order.kind === 'planning' || order.kind === 'current' ? (
                <span className={css.planning} aria-hidden="true" />
              ) : null}
              {state}
            </>
          ) : null}
        </p>
      </div>
      <TakenNote />
      <LookBanner />
      {planned === null || evening.steps.length === 0 ? <NothingYet /> : <Shown order={planned} view={view} isOld={isOld} />}
    </main>
  )
}

function NothingYet() {
  const { evening, order } = usePlan()
  const id = String(useParams().id ?? evening.id)
  if (evening.steps.length > 0)
    return <p className={css.nothing}>{order.kind === 'none' ? 'It has not been planned yet.' : ''}</p>
  const noCourses = evening.courses.length === 0
  const noDishes = evening.dishes.length === 0
  return (
    <section className={css.nothing} aria-labelledby="nothing">
      <h2 id="nothing">There is nothing to put in order yet</h2>
      <p>
        {noCourses
          ? 'Begin with the menu: its courses, then the dishes of each.'
          : noDishes
            ? 'The menu has courses. Now give each course its dishes.'
            : 'The dishes have no method yet. Open one and write its steps: what is done, how long it takes, what it needs.'}{' '}
        The running order is made of the steps, and made again whenever they change.
      </p>
      <LinkButton href={`/evenings/${id}/menu`}>To the menu</LinkButton>
    </section>
  )
}

const named = remember(namesOf)
const done = remember(doings)

function Shown({ order, view, isOld }: { readonly order: RunningOrder; readonly view: View; readonly isOld: boolean }) {
  const plan = usePlan()
  const { look, seen } = useLook()
  const trial = look && seen.kind === 'seen' ? seen.trial : null
  // While a change is looked at, the drawing and the figures are of the plan with it.
  const shown = useMemo(
    (): Plan => (trial ? { ...plan, evening: trial.evening, order: { kind: 'current', order: trial.after } } : plan),
    [plan, trial],
  )
  const drawn = trial ? trial.after : order
  const [chosen, setChosen] = useState<string | null>(null)
  const names = named(shown.evening)
  const all = done(drawn, names)
  const current = all.find((doing) => doing.key === chosen) ?? null
  useEffect(() => {
    if (chosen !== null && current === null) setChosen(null)
  }, [chosen, current])

  const onClose = useCallback(() => setChosen(null), [])
  const onStep = useCallback(
    (id: string): boolean => {
      const found = all.find((doing) => doing.cue.step === id)
      if (found) setChosen(found.key)
      return found !== undefined
    },
    [all],
  )

  return (
    <ChooseProvider onStep={onStep}>
      <div className={`${css.body} ${isOld && !trial ? css.old : ''}`}>
        {view === 'share' ? (
          <ShareOut order={order} />
        ) : (
          <PlanContext value={shown}>
            <OrderDrawing order={drawn} names={names} all={all} isList={view === 'list'} chosen={chosen} onChoose={setChosen} />
          </PlanContext>
        )}
        <OrderAside
          order={order}
          shown={shown}
          drawn={drawn}
          names={names}
          doing={view === 'picture' ? current : null}
          onClose={onClose}
        />
      </div>
    </ChooseProvider>
  )
}
