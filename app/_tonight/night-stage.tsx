'use client'

import { orderStateText } from '#app/_words/order-state.ts'
import { Afterwards } from './afterwards/afterwards.tsx'
import { Alarms } from './alarms.tsx'
import { Before } from './before.tsx'
import css from './board.module.css'
import { Changed } from './changed.tsx'
import { AtTable, Mine } from './mine.tsx'
import { Moments } from './moments/moments.tsx'
import { NightProvider } from './night-provider.tsx'
import { NoOrder } from './no-order.tsx'
import { Plating } from './plating.tsx'
import { ShapeChoice } from './shape-choice.tsx'
import { AlertsBar } from './slots.tsx'
import { TopBar } from './top-bar.tsx'
import { ChangesContext, useComparing } from './use-changes.ts'
import { useNight } from './use-night.ts'
import { PlatingContext, usePlating } from './use-plating.ts'
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
  const night = useNight()
  const changes = useComparing(night)
  const { board, shape, orderState } = night
  // That it is being planned again stands in the bar: a line that comes and goes would move the taps.
  const state = orderState.kind === 'failed' ? orderStateText(orderState) : null
  return (
    <ChangesContext value={changes}>
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
    </ChangesContext>
  )
}

function Scene() {
  const night = useNight()
  const { board, shape, cook } = night
  const page = usePlating(night)
  if (!board) return <NoOrder />
  if (board.phase === 'before') return <Before />
  if (board.phase === 'after') return <Afterwards />
  if (shape !== 'worktop' && cook === null) return <Whose />
  return (
    <PlatingContext value={page}>
      {page.plating && page.isOpen ? (
        <Plating plating={page.plating} />
      ) : shape === 'worktop' ? (
        <Worktop />
      ) : shape === 'mine' ? (
        <Mine />
      ) : (
        <AtTable />
      )}
      <Moments />
    </PlatingContext>
  )
}
