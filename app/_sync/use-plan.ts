'use client'

import { createContext, useContext } from 'react'
import type { Plan } from './plan.ts'

export const PlanContext = createContext<Plan | null>(null)

/** The evening's plan. Only below a `PlanProvider`. */
export const usePlan = (): Plan => {
  const plan = useContext(PlanContext)
  if (!plan) throw new Error('usePlan needs a PlanProvider above it')
  return plan
}
