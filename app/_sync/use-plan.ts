'use client'

import { createContext, useContext, useSyncExternalStore } from 'react'
import type { Shown } from '#lib/plan/whereabouts.ts'
import type { Company } from './company.ts'
import type { Plan } from './plan.ts'

export const PlanContext = createContext<Plan | null>(null)

/** The evening's plan. Only below a `PlanProvider`. */
export const usePlan = (): Plan => {
  const plan = useContext(PlanContext)
  if (!plan) throw new Error('usePlan needs a PlanProvider above it')
  return plan
}

export const CompanyContext = createContext<Company | null>(null)

/** Who else is at this evening. Only below a `PlanProvider`. */
export const useCompany = (): Company => {
  const company = useContext(CompanyContext)
  if (!company) throw new Error('useCompany needs a PlanProvider above it')
  return company
}

/** The others and where they are just now. */
export const useOthers = (): readonly Shown[] => {
  const { subscribe, others } = useCompany()
  return useSyncExternalStore(subscribe, others, others)
}
