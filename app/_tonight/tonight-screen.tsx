'use client'

import { Ready } from '#app/_ui/ready.tsx'
import { NightSourceContext } from './night-source.ts'
import { NightStage } from './night-stage.tsx'
import { Rehearsing } from './rehearse/rehearsing.tsx'
import { usePlanSource } from './use-plan-source.ts'

/** Tonight: the live board of the evening, and before its day a rehearsal of it. */
export function TonightScreen() {
  const source = usePlanSource()
  return (
    <NightSourceContext value={source}>
      <Ready />
      <Rehearsing>
        <NightStage />
      </Rehearsing>
    </NightSourceContext>
  )
}
