import type { Evening } from '#lib/domain/evening.ts'
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
  /** Does what is due; whether that was anything. */
  act(nowMs: number): boolean
  /** Taps this now. */
  say(say: Say, nowMs: number): void
}

/** What goes wrong: a step that is begun so much later than it is called, or is done so much later than it was to be. */
export interface Slips {
  readonly begins: ReadonlyMap<string, number>
  readonly ends: ReadonlyMap<string, number>
}

let ops = 0

/** The order that a device shows. */
export const shown = ({ client }: Device): RunningOrder | null => {
  const last = client.orders.findLast((message) => message.kind === 'order')
  return last?.kind === 'order' ? last.order : null
}

export const planOn = ({ client }: Device): Evening => readPlan(client.doc).evening

/** `serves`: who says that courses go out and plates come back. */
export const personOf = (cook: string, device: Device, slips: Slips, serves: boolean): Person => {
  const taps: Tap[] = []
  const first = new Map<string, number>()
  const say = (what: Say, atMs: number) => {
    ops += 1
    const op = `op-night-${ops}`
    taps.push({ op, say: what, atMs })
    device.client.ask({ op, kind: 'tell', at: device.client.now(), as: cook, say: what })
  }
  const hasSaid = (kind: string, of: string) =>
    taps.some(({ say: said }) => said.kind === kind && ('step' in said ? said.step : 'course' in said ? said.course : '') === of)

  const steps = (evening: Evening, order: RunningOrder, nowMs: number) => {
    const on = new Set(evening.dishes.filter(({ state }) => state === 'on').map(({ id }) => id))
    for (const step of evening.steps) {
      if (step.dish !== null && !on.has(step.dish)) continue
      const cues = order.cues.filter((cue) => cue.step === step.id)
      const [cue] = cues
      if (!cue || (cue.cooks[0] ?? cue.touches[0]?.cook ?? order.cooks[0]?.cook) !== cook) continue
      const told = evening.night.find((fact) => 'step' in fact && fact.step === step.id)
      const fact = told && 'step' in told ? told : {}
      const start = msOfInstant(cue.start)
      const end = Math.max(...cues.map((each) => msOfInstant(each.end)))
      if (!('started' in fact) && !('done' in fact) && !hasSaid('started', step.id)) {
        if (start <= nowMs && !first.has(step.id)) first.set(step.id, nowMs)
        const called = first.get(step.id)
        if (called !== undefined && called + (slips.begins.get(step.id) ?? 0) <= nowMs) say({ kind: 'started', step: step.id }, nowMs)
      } else if (!('done' in fact) && !hasSaid('done', step.id) && end <= nowMs) {
        const slip = slips.ends.get(step.id)
        if (slip !== undefined && !hasSaid('longer', step.id)) say({ kind: 'longer', step: step.id, minutes: slip }, nowMs)
        else say({ kind: 'done', step: step.id }, nowMs)
      }
    }
  }

  const courses = (evening: Evening, order: RunningOrder, nowMs: number) => {
    for (const { course, toTable, platesOff } of order.courses) {
      const told = evening.night.find((fact) => 'course' in fact && fact.course === course)
      const isOut = hasSaid('to-table', course) || (told && 'course' in told && told.toTable !== undefined)
      if (!isOut) {
        if (msOfInstant(toTable) <= nowMs) say({ kind: 'to-table', course }, nowMs)
        return
      }
      if (!hasSaid('plates-off', course) && msOfInstant(platesOff) <= nowMs) say({ kind: 'plates-off', course }, nowMs)
    }
  }

  return {
    cook,
    device,
    taps,
    say,
    act(nowMs) {
      const order = shown(device)
      if (!order) return false
      const before = taps.length
      const evening = planOn(device)
      steps(evening, order, nowMs)
      if (serves) courses(evening, order, nowMs)
      return taps.length > before
    },
  }
}
