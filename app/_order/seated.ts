import { minutesOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'

/** Milliseconds since 1970. */
interface Stretch {
  readonly from: number
  readonly to: number
}

/** From the first course that is no welcome to the last one, and of each cook who eats: minutes missed, and when they sit and are up. */
export interface Seated extends Stretch {
  readonly cooks: readonly {
    readonly cook: string
    readonly missed: number
    readonly sits: readonly Stretch[]
    readonly ups: readonly Stretch[]
  }[]
}

/** What lies between the sits. */
const upsOf = (sits: readonly Stretch[], { from, to }: Stretch): readonly Stretch[] => {
  const edges = [from, ...sits.flatMap((sit) => [sit.from, sit.to]), to]
  return edges
    .flatMap((edge, at) => (at % 2 === 0 ? [{ from: edge, to: edges[at + 1] ?? to }] : []))
    .filter((up) => up.to > up.from)
}

/** All of it as the order itself has it, so that minutes, stretches and drawing are of one order. */
export const seatedOf = (evening: Evening, order: RunningOrder): Seated => {
  const welcome = new Set(evening.courses.filter((course) => course.welcome).map(({ id }) => id))
  const moments = order.courses.filter(({ course }) => !welcome.has(course)).map(({ toTable }) => Date.parse(toTable))
  const window = moments.length > 0 ? { from: Math.min(...moments), to: Math.max(...moments) } : { from: 0, to: 0 }
  const eating = new Set(evening.cooks.filter(({ eats }) => eats).map(({ id }) => id))
  return {
    ...window,
    cooks: order.cooks
      .filter(({ cook }) => eating.has(cook))
      .map(({ cook, missed, sits: told }) => {
        const sits = told.map(({ from, to }) => ({ from: Date.parse(from), to: Date.parse(to) }))
        return { cook, missed: minutesOf(missed), sits, ups: upsOf(sits, window) }
      }),
  }
}
