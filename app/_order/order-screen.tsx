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
import { Clashes } from './clashes.tsx'
import { CourseFigures } from './course-figures.tsx'
import { DaysBefore } from './days-before.tsx'
import { Figures } from './figures.tsx'
import css from './order.module.css'
import { OrderList } from './order-list.tsx'
import { doings } from './picture/doings.ts'
import { pictureOf } from './picture/picture.ts'
import { PictureView } from './picture-view.tsx'
import { StepPanel } from './step-panel.tsx'
import { useNow } from './use-now.ts'
import { usePrinting } from './use-printing.ts'
import { useWidth } from './use-width.ts'

const PHONE_BELOW = 760

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
  const { evening, me, now: serverNow, order: state } = usePlan()
  const isEarly = state.kind === 'current' && state.more === true
  const [holder, width] = useWidth()
  const [chosen, setChosen] = useState<string | null>(null)
  const [cook, setCook] = useState<string | null>(me?.cook ?? null)
  const now = useNow(serverNow)
  const printing = usePrinting()
  const names = useMemo(() => namesOf(evening), [evening])
  const shape = width !== null && width < PHONE_BELOW ? 'phone' : 'wide'
  const shown = evening.cooks.some((candidate) => candidate.id === cook) ? cook : (evening.cooks[0]?.id ?? null)
  const picture = useMemo(
    () => (width === null ? null : pictureOf(evening, order, names, { width: Math.floor(width), shape, cook: shown })),
    [evening, order, names, width, shape, shown],
  )
  const all = useMemo(() => doings(order, names), [order, names])
  const current = all.find((doing) => doing.key === chosen) ?? null
  useEffect(() => {
    if (chosen !== null && current === null) setChosen(null)
  }, [chosen, current])

  return (
    <div className={`${css.body} ${isOld ? css.old : ''}`}>
      <div className={css.drawing}>
        {isList ? null : (
          <>
            {shape === 'phone' && evening.cooks.length > 1 ? (
              // biome-ignore lint/a11y/useSemanticElements: a group of buttons is no fieldset of inputs
              <div className={css.cooks} role="group" aria-label="Whose evening">
                {evening.cooks.map((candidate) => (
                  <button
                    key={candidate.id}
                    type="button"
                    aria-pressed={candidate.id === shown}
                    onClick={() => setCook(candidate.id)}
                  >
                    {candidate.id === me?.cook ? `${candidate.name}, you` : candidate.name}
                  </button>
                ))}
              </div>
            ) : null}
            <DaysBefore
              evening={evening}
              order={order}
              names={names}
              cook={shape === 'phone' ? shown : null}
              chosen={chosen}
              onChoose={setChosen}
            />
          </>
        )}
        <div ref={holder} className={css.holder}>
          {isList || picture === null ? null : (
            <PictureView
              evening={evening}
              order={order}
              names={names}
              picture={picture}
              shape={shape}
              chosen={chosen}
              onChoose={setChosen}
              now={now}
            />
          )}
        </div>
        {isList || printing ? (
          <div className={isList ? css.list : css.printed}>
            <OrderList
              evening={evening}
              order={order}
              names={names}
              chosen={isList ? chosen : null}
              onChoose={(key) => setChosen(key === chosen ? null : key)}
            />
          </div>
        ) : null}
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls by itself, and must do so by keyboard too */}
      <aside className={css.aside} aria-label="What the running order says" tabIndex={0}>
        {current && !isList ? (
          <div className={css.panel} aria-live="polite">
            <StepPanel doing={current} order={order} names={names} onClose={() => setChosen(null)} />
          </div>
        ) : null}
        <CourseFigures order={order} names={names} />
        <Figures evening={evening} order={order} names={names} />
        <Clashes order={order} names={names} evening={evening} isEarly={isEarly} />
      </aside>
    </div>
  )
}
