import type { PrismaClient } from '#prisma/client/client.ts'
import type { Planner, Rooms } from '#server/live.ts'
import { systemClock } from '#server/sync/clock.ts'
import { storedOrders } from './order-store.ts'
import { pacedSend } from './paced-send.ts'
import { startPlanner } from './planner.ts'
import { openProver } from './prover/prover.ts'
import { provingRunner } from './proving-runner.ts'
import { threadRunner } from './thread-runner.ts'

/** Plans the evenings of these rooms: after each commit, and sends what comes of it to everybody there. */
export const openPlanner = async ({ db, rooms }: { readonly db: PrismaClient; readonly rooms: Rooms }): Promise<Planner> => {
  const threads = threadRunner({ clock: systemClock, log: (what, why) => console.error(what, why) })
  const prover = openProver()
  const planner = startPlanner({
    orders: storedOrders(db),
    send: pacedSend((eveningId, message) => rooms.sendOrder(eveningId, message), systemClock),
    runner: prover ? provingRunner(threads, prover, systemClock) : threads,
  })
  rooms.onPlan((eveningId, evening) => planner.plan(eveningId, evening))
  rooms.onEmpty((eveningId) => planner.forget(eveningId))
  return planner
}
