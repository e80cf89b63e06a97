'use client'

import { type ReactNode, useMemo } from 'react'
import { namesOf } from '#app/_words/names.ts'
import { boardOf } from '#lib/night/board-of.ts'
import { isFromBefore } from '#lib/night/from-before.ts'
import { useDevice } from './device.ts'
import { useNightSource } from './night-source.ts'
import { useClock } from './use-clock.ts'
import { useFired } from './use-fired.ts'
import { type Night, NightContext } from './use-night.ts'
import { useTelling } from './use-telling.ts'

/** Works out once what every piece of the board looks at. */
export function NightProvider({ children }: { readonly children: ReactNode }) {
  const source = useNightSource()
  const { evening, link, own, isHost, isRehearsal } = source
  const { shape, setShape, setCook, cook: chosen } = useDevice(evening.id)
  const nowMs = useClock(source.now, source.everyMs)
  const names = useMemo(() => namesOf(evening), [evening])
  const isCook = (id: string | null) => evening.cooks.some((cook) => cook.id === id)
  const cook = shape === 'worktop' ? null : isCook(chosen) ? chosen : isCook(own) ? own : null
  const fired = useFired()
  const order = source.order.kind === 'none' ? null : source.order.order
  const board = useMemo(
    () => (order ? boardOf(evening, order, nowMs, { cook, fired }) : null),
    [evening, order, nowMs, cook, fired],
  )
  const fromBefore = useMemo(() => order !== null && isFromBefore(evening, order), [evening, order])
  const telling = useTelling(source, names)
  const night: Night = {
    evening,
    order,
    orderState: source.order,
    isFromBefore: fromBefore,
    board,
    nowMs,
    cook,
    own,
    isHost,
    shape,
    setShape,
    setCook,
    ...telling,
    link,
    names,
    isRehearsal,
  }
  return <NightContext value={night}>{children}</NightContext>
}
