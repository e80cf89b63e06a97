import type { Problem } from '#lib/scheduling/problem.ts'
import type { Schedule } from '#lib/scheduling/schedule.ts'
import { newBuilder } from './builder.ts'
import { writeCooks } from './cooks.ts'
import { writeKit } from './kit.ts'
import { HUNDREDTHS, writePrice } from './price.ts'
import type { ModelProto } from './proto.ts'
import type { Written } from './read-answer.ts'
import { writeTimes } from './times.ts'

interface Parts {
  /** A schedule that places everything, to start from. */
  readonly known?: Schedule | undefined
  /** Only what costs no more is looked for. */
  readonly most: number
  /** Nothing costs less. */
  readonly least?: number
  /** Leaves open who does what. */
  readonly open?: boolean
  /** Whose starts, ends, modes and moments are kept. */
  readonly pinned?: Schedule
}

/** A problem as a model in which everything is placed. */
export const writeModel = (
  problem: Problem,
  { known, most, least = 0, open = false, pinned }: Parts,
): { proto: ModelProto; written: Written } => {
  const m = newBuilder()
  const times = writeTimes(m, problem, known, most, pinned)
  const kit = writeKit(m, problem, times, known)
  const parts = writeCooks(m, problem, times, open)
  const cost = writePrice(m, problem, times, parts)
  return {
    proto: m.minimize(cost, Math.ceil(least * HUNDREDTHS - 1e-6), Math.floor(most * HUNDREDTHS + 1e-6)),
    written: { times, kit, parts },
  }
}
