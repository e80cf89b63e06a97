import type { Evening } from '#lib/domain/evening.ts'
import type { Dish } from '#lib/domain/menu.ts'
import type { NightFact } from '#lib/domain/people.ts'

/** The facts of a night by what they are about. */
export type NightBegun = Extract<NightFact, { readonly night: 'begun' }>
export type StepFact = Extract<NightFact, { readonly step: string }>
export type CourseFact = Extract<NightFact, { readonly course: string }>
export type SitDownFact = Extract<NightFact, { readonly sitDown: string }>
export type CookFact = Extract<NightFact, { readonly cook: string }>
export type OutFact = Extract<NightFact, { readonly out: string }>
export type AlarmFact = Extract<NightFact, { readonly alarm: string }>

type Plan = Pick<Evening, 'night'>

export const nightOf = ({ night }: Plan): NightBegun | undefined => night.find((fact) => 'night' in fact)
/** Where a course's fact keeps what is told of it. */
export const COURSE_FIELD = { 'to-table': 'toTable', nearly: 'nearlyDone', 'plates-off': 'platesOff' } as const

export const sitDownOf = ({ night }: Plan): SitDownFact | undefined => night.find((fact) => 'sitDown' in fact)
export const stepOf = ({ night }: Plan, id: string): StepFact | undefined =>
  night.find((fact): fact is StepFact => 'step' in fact && fact.step === id)
export const courseOf = ({ night }: Plan, id: string): CourseFact | undefined =>
  night.find((fact): fact is CourseFact => 'course' in fact && fact.course === id)
export const cookOf = ({ night }: Plan, id: string): CookFact | undefined =>
  night.find((fact): fact is CookFact => 'cook' in fact && fact.cook === id)
export const outOf = ({ night }: Plan, id: string): OutFact | undefined =>
  night.find((fact): fact is OutFact => 'out' in fact && fact.dish === id)
export const alarmOf = ({ night }: Plan, id: string): AlarmFact | undefined =>
  night.find((fact): fact is AlarmFact => 'alarm' in fact && fact.alarm === id)
export const dishOf = ({ dishes }: Pick<Evening, 'dishes'>, id: string): Dish | undefined => dishes.find((dish) => dish.id === id)
