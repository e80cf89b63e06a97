'use client'

import { useMemo, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import type { Names } from '#app/_words/names.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { DaysBefore } from './days-before.tsx'
import css from './order.module.css'
import { OrderList } from './order-list.tsx'
import { pictureOf } from './picture/picture.ts'
import { PictureView } from './picture-view.tsx'
import { useNow } from './use-now.ts'
import { usePrinting } from './use-printing.ts'
import { useWidth } from './use-width.ts'

const PHONE_BELOW = 760

interface Props {
  readonly order: RunningOrder
  readonly names: Names
  readonly isList: boolean
  readonly chosen: string | null
  readonly onChoose: (key: string | null) => void
}

/** The running order drawn, with the days before above it; or as the list, which is also what is printed. */
export function OrderDrawing({ order, names, isList, chosen, onChoose }: Props) {
  const { evening, me, now: serverNow } = usePlan()
  const [holder, width] = useWidth()
  const [cook, setCook] = useState<string | null>(me?.cook ?? null)
  const now = useNow(serverNow)
  const printing = usePrinting()
  const shape = width !== null && width < PHONE_BELOW ? 'phone' : 'wide'
  const shown = evening.cooks.some((candidate) => candidate.id === cook) ? cook : (evening.cooks[0]?.id ?? null)
  const picture = useMemo(
    () => (width === null ? null : pictureOf(evening, order, names, { width: Math.floor(width), shape, cook: shown })),
    [evening, order, names, width, shape, shown],
  )
  return (
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
            onChoose={onChoose}
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
            onChoose={onChoose}
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
