import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { instantOfMs } from '#lib/domain/time.ts'
import { problemHash } from '#lib/order/hash.ts'
import { toHint } from '#lib/order/hint.ts'
import { toProblem } from '#lib/order/to-problem.ts'
import type { Say } from '#lib/plan/say.ts'
import { repair } from '#lib/scheduling/repair.ts'
import { EIGHT, nightEvening } from './night-evening.ts'
import { type Person, personOf, planOn, type Slips, shown } from './night-people.ts'
import { type NightServer, nightServer } from './night-server.ts'

const SECOND = 1000
const MINUTE = 60 * SECOND

/** That time of the night, in London in winter. */
export const clockTime = (time: string): number => Date.parse(`2026-11-14T${time}:00Z`)

/** What a word did to the order: the steps that moved although they could have stayed, frozen ones among them. */
export interface Answered {
  readonly say: readonly Say[]
  readonly at: number
  /** Whether a second later everybody had the order of the plan as it then stood. */
  readonly inTime: boolean
  readonly moved: readonly string[]
  readonly frozen: readonly string[]
}

/** A step that a repair leaves where it was told, and that was moved all the same: nothing forced it. */
const unforced = (evening: Evening, before: RunningOrder, after: RunningOrder, now: number) => {
  const { problem, index } = toProblem(evening, { now: instantOfMs(evening, now), previous: before })
  const kept = repair(problem, toHint(problem, index, before))
  const made = toHint(problem, index, after)
  const startIn = (schedule: typeof kept, id: string) => schedule.placements.find(({ activity }) => activity === id)?.start
  const moved = (problem.previous ?? []).filter(
    ({ activity, start }) =>
      problem.activities.some(({ id, fact }) => id === activity && fact === undefined) &&
      startIn(kept, activity) === start &&
      startIn(made, activity) !== start,
  )
  const ids = (list: typeof moved) => list.map(({ activity }) => activity)
  return { moved: ids(moved), frozen: ids(moved.filter(({ frozen }) => frozen)) }
}

export interface Night {
  readonly server: NightServer
  readonly people: readonly Person[]
  readonly answered: readonly Answered[]
  readonly clock: () => number
  /** Time passes to that moment; everybody does what is due. */
  until(time: string | number): Promise<void>
  /** One person says this now. */
  say(cook: string, say: Say): Promise<void>
  /** The server is gone for so many minutes; people go on. */
  outage(minutes: number, halfWay: () => void): Promise<void>
  /** The server is killed between the moment at which something is to ring and the moment at which that is stored. */
  killWhileRinging(): Promise<void>
  person(cook: string): Person
}

/** Eight people who cook a dinner of four courses, each with a phone, and what is to go wrong. */
export const scriptedNight = async (from: string, slips: Slips, ahead: Readonly<Record<string, number>>): Promise<Night> => {
  const evening = nightEvening()
  const server = await nightServer(evening, clockTime(from))
  const { clock } = server
  const people = EIGHT.map((cook, place) => {
    const off = (ahead[cook] ?? 0) * MINUTE
    const device = server.device(`m-${cook}`, place === 0 ? 'host' : 'cook', cook, off)
    return personOf(evening, cook, device, slips, place === 0, () => clock.now() + off)
  })
  const answered: Answered[] = []
  let down = false
  const counts = people.map(() => 0)

  const connectAll = async () => {
    for (const { device } of people) server.connect(device)
    await server.quiet()
  }
  const first = people[0]
  if (!first) throw new Error('nobody cooks')
  const shownBy = () => shown(first.device)

  /** One second, bit by bit: what is sent, planned and answered is so in its own time. */
  const second = async () => {
    for (let part = 0; part < 5; part += 1) {
      clock.advance(SECOND / 5)
      await server.quiet()
    }
  }

  const isLate = (say: Say) => say.kind === 'started' && slips.begins.has(say.step)

  const follow = async (says: readonly Say[]) => {
    const before = shownBy()
    const at = clock.now()
    await server.quiet()
    await second()
    const after = shownBy()
    const plan = planOn(first.device)
    const hash = problemHash(plan)
    const inTime = people.every(({ device }) => {
      const last = device.client.orders.at(-1)
      return last?.kind === 'order' && last.hash === hash
    })
    const isSlip = says.some((say) => say.kind === 'longer' || say.kind === 'sit-down' || say.kind === 'out' || isLate(say))
    if (!isSlip) {
      if (!inTime) throw new Error(`no new order for ${JSON.stringify(says)} at ${instantOfMs(plan, at)}`)
      return
    }
    const found = before && after ? unforced(plan, before, after, at + SECOND) : { moved: [], frozen: [] }
    answered.push({ say: says, at, inTime, ...found })
  }

  /** Time goes on to the next thing that somebody has to do, five seconds at the most, and no further than that. */
  const step = async (end: number) => {
    const next = Math.min(...people.map((person) => person.act(clock.now())))
    const tapped = people.flatMap(({ taps }, place) => taps.slice(counts[place]).map(({ say }) => say))
    for (const [place, { taps }] of people.entries()) counts[place] = taps.length
    if (tapped.length > 0 && !down) return await follow(tapped)
    clock.advance(Math.max(1, Math.min(end, next, clock.now() + 5 * SECOND) - clock.now()))
    for (const { device } of people) device.line?.pong()
    await server.quiet()
  }
  const passTo = async (end: number) => {
    while (clock.now() < end) await step(end)
  }

  await connectAll()

  return {
    server,
    people,
    answered,
    clock: clock.now,
    async until(time) {
      await passTo(typeof time === 'number' ? time : clockTime(time))
    },
    async say(cook, say) {
      const person = people.find((one) => one.cook === cook)
      person?.say(say, clock.now())
      for (const [place, { taps }] of people.entries()) counts[place] = taps.length
      await follow([say])
    },
    async outage(minutes, halfWay) {
      server.die()
      down = true
      const begins = clock.now()
      await passTo(begins + (minutes / 2) * MINUTE)
      halfWay()
      await passTo(begins + minutes * MINUTE)
      await server.revive()
      down = false
      await connectAll()
    },
    async killWhileRinging() {
      server.holdAlerts(true)
      while (server.held.length === 0) await step(clock.now() + SECOND)
      server.holdAlerts(false)
      await server.kill()
      await connectAll()
    },
    person(cook) {
      const found = people.find((one) => one.cook === cook)
      if (!found) throw new Error(`no ${cook}`)
      return found
    },
  }
}
