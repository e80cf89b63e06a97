import type { Kit, Use } from '#lib/domain/kitchen.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import type { ChillShape } from '#lib/domain/newton.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { boilMinutes, type Hob } from '#lib/quantities/boil.ts'
import { chillMinutes } from '#lib/quantities/chill.ts'
import type { Estimate } from '#lib/quantities/estimate.ts'
import { type OvenSort, preheatMinutes } from '#lib/quantities/preheat.ts'
import { JOINTS, type NoRoast, ROAST_RULES, roastByRule, roastMinutes } from '#lib/quantities/roast.ts'

/** What is asked: every figure of it can be changed, and is shown as an assumption beside the answer. */
export type Asked =
  | { readonly kind: 'boil'; readonly litres: number; readonly fromC: number; readonly hob: Hob; readonly kW: number }
  | { readonly kind: 'preheat'; readonly toC: number; readonly oven: OvenSort | 'own'; readonly ownPerMin: number | null }
  | { readonly kind: 'roast'; readonly joint: string; readonly kg: number }
  | { readonly kind: 'chill'; readonly shape: ChillShape; readonly fromC: number; readonly toC: number; readonly fridgeC: number }

export type NoEstimate =
  | NoRoast
  | { readonly kind: 'no-water' }
  | { readonly kind: 'no-heat' }
  | { readonly kind: 'never-so-cold' }
  | { readonly kind: 'not-warmer' }
  | { readonly kind: 'too-long' }

/** What is said beside the minutes: the heat of the oven, when it is safe inside, how long it then rests. */
export interface Answer extends Estimate {
  readonly roast?: { readonly ovenC: number; readonly coreC: number; readonly restMinutes: number }
}

// A pan on a house's ring, an oven's dial, a joint that goes in: beyond these nothing here was measured.
const MOST_LITRES = 20
const MOST_KG = 12
const MOST_MINUTES = 2 * 24 * 60
// °C a minute, as a kitchen's oven that was not told.
const USUAL_RISE = 8

/** The usual power of a ring of each hob, for the question's first guess. */
export const HOB_KW: Readonly<Record<Hob, number>> = { induction: 2, ceramic: 1.8, gas: 2.6 }

/** Joints of the published charts, then those for which there is only a rule of thumb. */
export const ROASTED: readonly string[] = [
  ...JOINTS,
  ...ROAST_RULES.map((rule) => rule.joint).filter((joint) => !JOINTS.includes(joint)),
]

/** The minutes, or why there are none: outside what is published nothing is made up. */
export const answerTo = (asked: Asked): Result<Answer, NoEstimate> => {
  const found = minutesOf(asked)
  return found.ok && found.value.most > MOST_MINUTES ? fail({ kind: 'too-long' }) : found
}

const minutesOf = (asked: Asked): Result<Answer, NoEstimate> => {
  switch (asked.kind) {
    case 'boil': {
      const { litres, fromC, hob, kW } = asked
      if (!(litres > 0 && litres <= MOST_LITRES && kW > 0 && kW <= 10 && fromC >= 0 && fromC < 100))
        return fail({ kind: 'no-water' })
      return ok(boilMinutes({ litres, fromC, hob, kW }))
    }
    case 'preheat': {
      const oven = asked.oven === 'own' ? { upPerMin: asked.ownPerMin ?? USUAL_RISE } : asked.oven
      return asked.toC >= 50 && asked.toC <= 300 ? ok(preheatMinutes(asked.toC, oven)) : fail({ kind: 'no-heat' })
    }
    case 'roast': {
      const rule = JOINTS.includes(asked.joint) ? undefined : ROAST_RULES.find((each) => each.joint === asked.joint)
      if (rule)
        return asked.kg > 0 && asked.kg <= MOST_KG ? ok(roastByRule(rule, asked.kg)) : fail({ kind: 'weight-outside', rows: [] })
      const roast = roastMinutes(asked.joint, asked.kg)
      if (!roast.ok) return roast
      const { ovenC, coreC, restMinutes } = roast.value
      return ok({ ...roast.value, roast: { ovenC, coreC, restMinutes } })
    }
    case 'chill': {
      const { shape, fromC, toC, fridgeC } = asked
      if (fromC <= toC) return fail({ kind: 'not-warmer' })
      const chilled = chillMinutes(shape, fromC, toC, fridgeC)
      return chilled ? ok(chilled) : fail({ kind: 'never-so-cold' })
    }
  }
}

const litresIn = (text: string): number | null => {
  const found = /(\d+(?:\.\d+)?)\s*(?:l|litres?|liters?)\b/i.exec(text)
  return found ? Number(found[1]) : null
}

const kgIn = (text: string): number | null => {
  const found = /(\d+(?:\.\d+)?)\s*kg\b/i.exec(text)
  return found ? Number(found[1]) : null
}

const jointIn = (text: string): string | null => {
  const words = text.toLowerCase()
  return (
    ROASTED.find((joint) =>
      joint
        .split(/[ ,]+/)
        .slice(0, 2)
        .every((word) => words.includes(word)),
    ) ?? null
  )
}

/** How fast the oven heats that a step would use: the one it names, else the kitchen's first; null where there is none. */
const riseOf = (use: Extract<Use, { kind: 'oven' }> | undefined, kit: readonly Kit[]): number | null => {
  const ovens = kit.filter((each) => each.kind === 'oven')
  return (ovens.find((each) => each.id === use?.oven) ?? ovens[0])?.upPerMin ?? null
}

/** The questions that may fit a step, the likeliest first, filled in from its words and kit. */
export const questionsFor = (step: Pick<Step, 'does'>, way: Pick<Way, 'uses'>, kit: readonly Kit[]): readonly Asked[] => {
  const oven = way.uses.find((use) => use.kind === 'oven')
  const boil: Asked = { kind: 'boil', litres: litresIn(step.does) ?? 4, fromC: 15, hob: 'induction', kW: HOB_KW.induction }
  const ownPerMin = riseOf(oven, kit)
  const preheat: Asked = { kind: 'preheat', toC: oven?.highC ?? 200, oven: ownPerMin === null ? 'electric' : 'own', ownPerMin }
  const roast: Asked = { kind: 'roast', joint: jointIn(step.does) ?? 'chicken', kg: kgIn(step.does) ?? 1.6 }
  const chill: Asked = { kind: 'chill', shape: 'shallow box', fromC: 60, toC: 8, fridgeC: 4 }
  const fits = (asked: Asked): number => {
    if (asked.kind === 'chill')
      return /\b(chill|cool|fridge|set)/i.test(step.does) || way.uses.some((use) => use.kind === 'cold') ? 3 : 0
    if (asked.kind === 'boil') return /\b(boil|water)/i.test(step.does) ? 2 : 0
    if (asked.kind === 'roast') return oven && jointIn(step.does) !== null ? 3 : 0
    return /\bpre-?heat|\bheat the oven/i.test(step.does) ? 4 : oven ? 1 : 0
  }
  return [boil, roast, chill, preheat].toSorted((a, b) => fits(b) - fits(a))
}
