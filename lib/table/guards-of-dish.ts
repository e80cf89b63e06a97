import type { Guard } from '#lib/domain/menu.ts'

/** What the plan does for a plate that a severe allergy asks for, in this order. */
export const GUARDS: readonly Guard['does'][] = ['begin', 'cover', 'plate', 'carry']
