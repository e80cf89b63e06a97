import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { needsNobody } from '#lib/domain/needs-nobody.ts'
import type { NightFact } from '#lib/domain/people.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import { readPlan } from '#lib/plan/read.ts'
import type { Say } from '#lib/plan/say.ts'
import type { Device } from './loopback-room.ts'

/** What somebody tapped, and when that really was. */
export interface Tap {
  readonly op: string
  readonly say: Say
  readonly atMs: number
}

/** Somebody who does what the order on their own device says, and taps it. */
export interface Person {
  readonly cook: string
  readonly device: Device
  readonly taps: Tap[]
  /** Does what is due, and gives the next moment at which something may be due. */
  act(nowMs: number): number
  /** Taps this now. */
  say(say: Say, nowMs: number): void
}

/** What goes wrong: a step that is begun so much later than it is called, or is done so much later than it was to be. */
export interface Slips {
  readonly begins: ReadonlyMap<string, number>
  readonly ends: ReadonlyMap<string, number>
}

interface Moment {
  readonly at: number
  readonly tap: Say | null
}

let ops = 0

/** The order that a device shows. */
export const shown = ({ client }: Device): RunningOrder | null => {
  const last = client.orders.findLast((message) => message.kind === 'order')
  return last?.kind === 'order' ? last.order : null
}

export const planOn = ({ client }: Device): Evening => readPlan(client.doc).evening

/** What a cook looks at of the plan: which dishes are on, and what was told. Reading all of it each time would take most of the night. */
interface Glance {
  readonly steps: Evening['steps']
  readonly isOn: (dish: string) => boolean
  readonly night: Evening['night']
}

const glance = (plan: Evening, { client: { doc } }: Device): Glance => ({
  steps: plan.steps,
  isOn: (id) => (doc.getMap('dishes').get(id) as Y.Map<unknown> | undefined)?.get('state') === 'on',
  night: [...doc.getMap<NightFact>('night').values()],
})

/** `serves`: who says that courses go out and plates come back; `ownClock`: what their phone shows. */
export const personOf = (
  plan: Evening,
  cook: string,
  device: Device,
  slips: Slips,
  serves: boolean,
  ownClock: () => number,
): Person => {
  const taps: Tap[] = []
  /** When this device is to be looked at again, unless its order or its plan is another one by then. */
  let wakes: { readonly order: RunningOrder; readonly at: number; isOld: boolean } | null = null
  let watched: unknown = null
  const watch = () => {
    const { doc } = device.client
    if (watched === doc) return
    watched = doc
    doc.on('update', () => {
      if (wakes) wakes.isOld = true
    })
  }
  const first = new Map<string, number>()
  const say = (what: Say, atMs: number) => {
    ops += 1
    const op = `op-night-${ops}`
    taps.push({ op, say: what, atMs })
    device.client.ask({ op, kind: 'tell', at: ownClock(), as: cook, say: what })
  }
  const hasSaid = (kind: string, of: string) =>
    taps.some(({ say: said }) => said.kind === kind && ('step' in said ? said.step : 'course' in said ? said.course : '') === of)

  /** The next thing to tap, if it is due; otherwise when it will be. */
  const next = (evening: Glance, order: RunningOrder, nowMs: number): number => {
    const moments = [...steps(evening, order, nowMs), ...(serves ? courses(evening, order) : [])]
    for (const { at, tap } of moments) if (tap && at <= nowMs) say(tap, nowMs)
    return Math.min(...moments.filter(({ at }) => at > nowMs).map(({ at }) => at))
  }

  const steps = (evening: Glance, order: RunningOrder, nowMs: number): Moment[] => {
    return evening.steps.flatMap((step): Moment[] => {
      if (step.dish !== null && !evening.isOn(step.dish)) return []
      const cues = order.cues.filter((cue) => cue.step === step.id)
      const [cue] = cues
      if (!cue || (cue.cooks[0] ?? cue.touches[0]?.cook ?? order.cooks[0]?.cook) !== cook) return []
      const told = evening.night.find((fact) => 'step' in fact && fact.step === step.id)
      const fact = told && 'step' in told ? told : undefined
      if (fact?.done !== undefined || hasSaid('done', step.id)) return []
      if (!needsNobody(step) && fact?.started === undefined && !hasSaid('started', step.id)) {
        // Called once, whenever that was to be by the order of then; whoever is slow only hears it.
        const slip = slips.begins.get(step.id) ?? 0
        const start = msOfInstant(cue.start)
        if (slip > 0 && start <= nowMs && !first.has(step.id)) first.set(step.id, start)
        const called = first.get(step.id) ?? start
        if (slip > 0 && called > nowMs) return [{ at: called, tap: null }]
        return [{ at: called + slip, tap: { kind: 'started', step: step.id } }]
      }
      const at = Math.max(...cues.map(({ end }) => msOfInstant(end)))
      const slip = fact?.extra === undefined ? slips.ends.get(step.id) : undefined
      if (slip !== undefined && !hasSaid('longer', step.id))
        return [{ at, tap: { kind: 'longer', step: step.id, minutes: slip } }]
      return [{ at, tap: { kind: 'done', step: step.id } }]
    })
  }

  const courses = (evening: Glance, order: RunningOrder): Moment[] => {
    for (const { course, toTable, platesOff } of order.courses) {
      const told = evening.night.find((fact) => 'course' in fact && fact.course === course)
      const fact = told && 'course' in told ? told : undefined
      if (fact?.toTable === undefined && !hasSaid('to-table', course))
        return [{ at: msOfInstant(toTable), tap: { kind: 'to-table', course } }]
      if (fact?.platesOff === undefined && !hasSaid('plates-off', course))
        return [{ at: msOfInstant(platesOff), tap: { kind: 'plates-off', course } }]
    }
    return []
  }

  return {
    cook,
    device,
    taps,
    say,
    act(nowMs) {
      const order = shown(device)
      if (!order) return Number.POSITIVE_INFINITY
      if (wakes && wakes.order === order && !wakes.isOld && nowMs < wakes.at) return wakes.at
      watch()
      const before = taps.length
      const at = next(glance(plan, device), order, nowMs)
      wakes = { order, at, isOld: taps.length > before }
      return at
    },
  }
}
