'use client'

import { createContext, type ReactNode, useContext, useMemo, useRef, useState } from 'react'

/** What holds a step and is no step itself. */
export interface Thing {
  readonly kind: 'kit' | 'cook' | 'course'
  readonly id: string
}

interface Choose {
  /** Chooses a step by its id; what is chosen takes the focus. */
  readonly step: (id: string) => void
  readonly thing: Thing | null
  readonly chooseThing: (thing: Thing | null) => void
  /** The clash that is open, by its key. */
  readonly clash: string | null
  readonly chooseClash: (key: string | null) => void
  /** Whether what is shown anew was chosen by a link and has to take the focus; asking ends it. */
  readonly takesFocus: () => boolean
}

const ChooseContext = createContext<Choose | null>(null)

/** Choosing what another part of the screen shows. Only below a `ChooseProvider`. */
export const useChoose = (): Choose => {
  const choose = useContext(ChooseContext)
  if (!choose) throw new Error('useChoose needs a ChooseProvider above it')
  return choose
}

/** `onStep` shows the step and says whether there is one to show. */
export function ChooseProvider({ onStep, children }: { readonly onStep: (id: string) => boolean; readonly children: ReactNode }) {
  const [thing, setThing] = useState<Thing | null>(null)
  const [clash, setClash] = useState<string | null>(null)
  const focus = useRef(false)
  const choose = useMemo(
    (): Choose => ({
      step(id) {
        focus.current = onStep(id)
        setThing(null)
      },
      thing,
      chooseThing(next) {
        focus.current = true
        setThing(next)
      },
      clash,
      chooseClash: setClash,
      takesFocus() {
        const was = focus.current
        focus.current = false
        return was
      },
    }),
    [onStep, thing, clash],
  )
  return <ChooseContext value={choose}>{children}</ChooseContext>
}
