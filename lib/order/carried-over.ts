import type { Activity } from '#lib/scheduling/problem.ts'
import type { Planned } from './planned.ts'

/** When a dish would leave and when it would next be touched, in ticks, and by how many that is longer than it may be carried. */
export interface CarriedOver {
  readonly from: number
  readonly to: number
  readonly by: number
}

/**
 * How far past its safe time a dish would be carried beside all that is planned, leaving as late as its carrier's hours and what comes
 * before allow; null when it is not that which leaves it out.
 */
export const carriedOver = ({ problem, scene }: Planned, activity: Activity): CarriedOver | null => {
  const delivery = problem.deliveries.find(({ id }) => id === activity.delivery)
  const road = activity.road
  if (!road || delivery?.carry?.bound !== 'safety') return null
  const placed = new Map(scene.placed.map((one) => [one.activity.id, one]))
  const next = problem.lags.flatMap((lag) => (lag.from === activity.id ? (placed.get(lag.to)?.start ?? []) : []))
  const moment = scene.served.find(({ serving }) => serving.id === delivery.serving)?.moment
  const to = Math.min(...next, ...(moment === undefined ? [] : [moment - delivery.early]))
  const ready = problem.lags.flatMap((lag) => {
    const before = lag.to === activity.id ? placed.get(lag.from) : undefined
    return before ? [before[lag.edge] + lag.least] : []
  })
  const soonest = Math.max(activity.from ?? problem.horizon.from, ...ready)
  const carriers = problem.cooks.filter(({ id }) => activity.claimed.length === 0 || activity.claimed[0] === id)
  const leaves = carriers.flatMap(({ presence, pace }) =>
    presence.slice(1).flatMap((stay, at) => {
      const before = presence[at]
      if (before?.place !== activity.place || stay.place !== road.to) return []
      const length = Math.min(...activity.modes.map(({ likely }) => Math.ceil(likely * pace - 1e-9)))
      const latest = Math.min(stay.from, to) - length
      return latest >= Math.max(before.to, soonest) ? [latest] : []
    }),
  )
  if (leaves.length === 0) return null
  const from = Math.max(...leaves)
  const by = to - from - delivery.carry.most
  return by > 0 ? { from, to, by } : null
}
