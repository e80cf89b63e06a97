'use client'

import Link from 'next/link'
import { useParams, useSearchParams } from 'next/navigation'
import { useEffect, useMemo, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { LinkButton } from '#app/_ui/button.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { namesOf } from '#app/_words/names.ts'
import { orderStateText } from '#app/_words/order-state.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './order.module.css'
import { OrderAside } from './order-aside.tsx'
import { OrderDrawing } from './order-drawing.tsx'
import { doings } from './picture/doings.ts'

/** The running order: the table seen from above with time flowing down, or the same as a list. */
export function OrderScreen() {
  const { evening, order } = usePlan()
  const isList = useSearchParams().get('view') === 'list'
  const planned = order.kind === 'none' ? null : order.order
  const state = orderStateText(order)
  const isOld = planned !== null && order.kind !== 'current'
  return (
    <main id="main" className={css.main} data-order={order.kind}>
      <Ready />
      <div className={css.head}>
        <h1>Running order</h1>
        <nav className={css.views} aria-label="How the running order is shown">
          <Link href="?view=picture" aria-current={isList ? undefined : 'page'} replace scroll={false}>
            As a picture
          </Link>
          <Link href="?view=list" aria-current={isList ? 'page' : undefined} replace scroll={false}>
            As a list
          </Link>
        </nav>
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
      {planned === null || evening.steps.length === 0 ? <NothingYet /> : <Shown order={planned} isList={isList} isOld={isOld} />}
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

function Shown({ order, isList, isOld }: { readonly order: RunningOrder; readonly isList: boolean; readonly isOld: boolean }) {
  const { evening } = usePlan()
  const [chosen, setChosen] = useState<string | null>(null)
  const names = useMemo(() => namesOf(evening), [evening])
  const all = useMemo(() => doings(order, names), [order, names])
  const current = all.find((doing) => doing.key === chosen) ?? null
  useEffect(() => {
    if (chosen !== null && current === null) setChosen(null)
  }, [chosen, current])

  return (
    <div className={`${css.body} ${isOld ? css.old : ''}`}>
      <OrderDrawing order={order} names={names} all={all} isList={isList} chosen={chosen} onChoose={setChosen} />
      <OrderAside order={order} names={names} doing={isList ? null : current} onClose={() => setChosen(null)} />
    </div>
  )
}
