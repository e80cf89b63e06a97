'use client'

import { createContext, type ReactNode, useContext, useDeferredValue, useEffect, useState } from 'react'
import type { Plan } from './plan.ts'
import { PlanContext } from './use-plan.ts'

const CalmContext = createContext<(isCalm: boolean) => void>(() => undefined)

/** Hands the plan to everything below: each change at once, or in the gaps between what this person does, while a screen asks for that. */
export function PlanShown({ plan, children }: { readonly plan: Plan; readonly children: ReactNode }) {
  const [isCalm, setCalm] = useState(false)
  const later = useDeferredValue(plan)
  return (
    <CalmContext value={setCalm}>
      <PlanContext value={isCalm ? later : plan}>{children}</PlanContext>
    </CalmContext>
  )
}

/**
 * While this screen is open no key waits for a new plan to be drawn, around the screen neither: a second value of the same context further
 * down would still have everything below it drawn with each change of the first.
 */
export const useCalm = (): void => {
  const setCalm = useContext(CalmContext)
  useEffect(() => {
    setCalm(true)
    return () => setCalm(false)
  }, [setCalm])
}
