'use client'

import { orderStateText } from '#app/_words/order-state.ts'
import { Alarms } from './alarms.tsx'
import { Before } from './before.tsx'
import css from './board.module.css'
import { Changed } from './changed.tsx'
import { AtTable, Mine } from './mine.tsx'
import { NightProvider } from './night-provider.tsx'
import { NoOrder } from './no-order.tsx'
import { ShapeChoice } from './shape-choice.tsx'
import { Afterwards, AlertsBar, Moments } from './slots.tsx'
import { TopBar } from './top-bar.tsx'
import { useNight } from './use-night.ts'
import { Whose } from './whose.tsx'
import { Worktop } from './worktop.tsx'

/** A night on this device, wherever it comes from: the board, the plates, or what is told afterwards. */
export function NightStage() {
  return (
    <NightProvider>
      <Stage />
    </NightProvider>
  )
}

function Stage() {
  const { board, shape, orderState } = useNight()
  const state = orderState.kind === 'current' ? null : orderStateText(orderState)
  return (
    <main id="main" className={css.stage} data-shape={shape} data-phase={board?.phase ?? 'none'}>
      <TopBar />
      <Alarms />
      <Changed />
      {board && state ? <p className={css.state}>{state}</p> : null}
      <Scene />
      <div className={css.foot}>
        <AlertsBar />
        <ShapeChoice />
      </div>
    </main>
  )
}

function Scene() {
  const { board, shape, cook } = useNight()
  if (!board) return <NoOrder />
  if (board.phase === 'before') return <Before />
  if (board.phase === 'after') return <Afterwards />
  if (shape !== 'worktop' && cook === null) return <Whose />
  return (
    <>
      {shape === 'worktop' ? <Worktop /> : shape === 'mine' ? <Mine /> : <AtTable />}
      <Moments />
    </>
  )
}
