import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { h6, h7, h8, h9, h20 } from './cooks.ts'
import { h17, h18 } from './deliveries.ts'
import { h11, h13 } from './kit.ts'
import { h4, h5 } from './lags.ts'
import { h14, h15 } from './oven.ts'
import { price } from './price.ts'
import { h11Rings, h12 } from './rings.ts'
import { sceneOf } from './scene.ts'
import { h16 } from './servings.ts'
import { h1, h2, h3 } from './times.ts'
import { h10 } from './touches.ts'
import type { Verdict } from './violation.ts'
import { wishes } from './wishes.ts'

const RULES = [h1, h2, h3, h4, h5, h6, h7, h8, h9, h10, h11, h11Rings, h12, h13, h14, h15, h16, h17, h18, h20]

/**
 * Judges a schedule against its problem by docs/spec.md, sections H, W and C, and shares no code with the engine: every
 * broken hard rule, every broken wish, and the cost. Slow and plain on purpose. Throws on no schedule, however wrong.
 */
export const verify = (problem: Problem, schedule: Schedule): Verdict => {
  const scene = sceneOf(problem, schedule)
  const breaches = wishes(scene)
  return { violations: RULES.flatMap((rule) => rule(scene)), cost: price(scene, breaches), breaches }
}
