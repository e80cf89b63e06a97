'use client'

import { useCallback, useMemo, useState } from 'react'
import { useWindowWidth } from '#app/_sync/first-look.tsx'
import { usePlan } from '#app/_sync/use-plan.ts'
import { countOf, dayOf, sentence } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { DaysBefore } from './days-before.tsx'
import css from './order.module.css'
import { OrderList } from './order-list.tsx'
import { OTHERS, type Shape } from './picture/columns.ts'
import type { Doing } from './picture/doings.ts'
import type { Zoom as LineZoom } from './picture/lines.ts'
import { pictureOf } from './picture/picture.ts'
import { PictureView } from './picture-view.tsx'
import { remember } from './remember.ts'
import { useNow } from './use-now.ts'
import { usePrinting } from './use-printing.ts'
import { useSettling } from './use-settling.ts'
import { useWidth } from './use-width.ts'
import { CookChoice, ZoomChoice } from './view-choice.tsx'
import { nearOf, type Zoom, zoomBy, zoomsOf } from './zoom.ts'

/** Narrower than this, one cook and the table are all that can be read. */
const PHONE_BELOW = 840

/** What a window of this width leaves for the drawing: order.module.css has the same figures. */
const roomIn = (window: number): number =>
  window <= 760 ? window - 24 : window <= 1180 ? window - 40 : Math.min(window, 1640) - 356

const drawn = remember(
  (
    evening: Evening,
    order: RunningOrder,
    names: Names,
    all: readonly Doing[],
    width: number,
    shape: Shape,
    zoom: LineZoom,
    cook: string | null,
  ) => pictureOf(evening, order, names, { width, shape, zoom, cook }, all),
)

interface Props {
  readonly order: RunningOrder
  readonly names: Names
  /** Everything that cooks are seen doing in this order. */
  readonly all: readonly Doing[]
  readonly isList: boolean
  readonly chosen: string | null
  readonly onChoose: (key: string | null) => void
}

/** The running order drawn, with the days before above it; or as the list, which is also what is printed. */
export function OrderDrawing({ order, names, all, isList, chosen, onChoose }: Props) {
  const { evening, me, now: serverNow, order: state } = usePlan()
  const [holder, width] = useWidth(roomIn(useWindowWidth()))
  const [cook, setCook] = useState<string | null>(null)
  const [zoom, setZoom] = useState<Zoom>('evening')
  const now = useNow(serverNow)
  const printing = usePrinting()
  const shape = width < PHONE_BELOW ? 'phone' : 'wide'
  const asked = cook ?? me?.cook ?? null
  const reader = evening.cooks.some((candidate) => candidate.id === asked) ? asked : (evening.cooks[0]?.id ?? null)
  const near = nearOf(zoom)
  const picture = isList ? null : drawn(evening, order, names, all, Math.floor(width), shape, near, reader)
  const isEarly = state.kind === 'current' && state.more === true
  const settling = useSettling(order, all, picture, isEarly, serverNow)
  const hasDays = useMemo(() => all.some((doing) => dayOf(evening, doing.from) < 0), [all, evening])
  const zooms = zoomsOf(hasDays)
  const onZoom = useCallback((by: 1 | -1) => setZoom((now) => zoomBy(zoomsOf(hasDays), now, by)), [hasDays])
  const isFolded = picture?.columns.cooks.some((column) => column.id === OTHERS) ?? false
  const movedSteps = new Set([...settling.moved.keys()].map((key) => key.replace(/\.[^.]*$/, ''))).size
  return (
    <div className={css.drawing}>
      {isList ? null : (
        <>
          <div className={css.tools}>
            <ZoomChoice zooms={zooms} zoom={zoom} onZoom={setZoom} />
            <p className={css.moved} role="status">
              {movedSteps === 0 ? '' : `${sentence(countOf(movedSteps, 'step'))} moved`}
            </p>
            {evening.cooks.length > 1 && (shape === 'phone' || isFolded) ? (
              <CookChoice evening={evening} own={me?.cook ?? null} cook={reader} onCook={setCook} />
            ) : null}
          </div>
          <DaysBefore
            evening={evening}
            order={order}
            names={names}
            all={all}
            cook={shape === 'phone' ? reader : null}
            reader={me?.cook ?? reader}
            now={now}
            chosen={chosen}
            onChoose={onChoose}
            open={zoom === 'days'}
            onOpen={(open) => setZoom(open ? 'days' : 'evening')}
          />
        </>
      )}
      <div ref={holder} className={css.holder}>
        {picture === null ? null : (
          <PictureView
            evening={evening}
            order={order}
            names={names}
            picture={picture}
            settling={settling}
            isEarly={isEarly}
            chosen={chosen}
            onChoose={onChoose}
            onZoom={onZoom}
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
            onChoose={(key) => onChoose(key === chosen ? null : key)}
          />
        </div>
      ) : null}
    </div>
  )
}
