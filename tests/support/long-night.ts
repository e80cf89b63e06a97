import type { Evening } from '#lib/domain/evening.ts'
import { setFields } from '#lib/plan/commands/set.ts'
import { typeText } from '#lib/plan/commands/type-text.ts'
import type { Said } from '#lib/plan/say.ts'
import { type Dice, dice } from './dice.ts'
import { START } from './hand-clock.ts'
import { type Device, type LoopbackRoom, loopbackRoom } from './loopback-room.ts'
import { tonightEvening } from './tonight-evening.ts'

const HOURS = 6
const COOKS = 8

export interface LongNight {
  readonly room: LoopbackRoom
  readonly devices: readonly Device[]
  /** How many of the actions were taken, and how many were refused. */
  readonly taken: number
  readonly refused: number
}

/**
 * A night of six hours with eight cooks at the real room: steps begun, done and needing longer, readings, courses, a cook gone and back,
 * dishes out, words taken back, claims, and edits of the plan as they come up meanwhile, so many actions in all.
 */
export const longNight = async (base: Evening, actions: number, seed = 1): Promise<LongNight> => {
  const d = dice(seed)
  const plan = tonightEvening(base, START, (HOURS / 2) * 60)
  const room = await loopbackRoom(plan)
  const devices = Array.from({ length: COOKS }, (_, n) =>
    room.device(`m-${n}`, n === 0 ? 'host' : 'cook', plan.cooks[n % plan.cooks.length]?.id ?? null, d.int(-7, 7) * 60_000),
  )
  for (const device of devices) room.connect(device)
  await room.settle()
  for (let action = 0; action < actions; action += 1) {
    const device = d.pick(devices)
    if (d.chance(0.7)) tell(device, `op-night-${action}`, said(plan, d, action), room)
    else if (d.chance(0.3)) claim(device, `op-claim-${action}`, plan, d)
    else edit(device, plan, d)
    room.clock.advance((HOURS * 3_600_000) / actions)
    for (const one of devices) one.line?.pong()
    if (action % 10 === 9) await room.settle()
  }
  await room.settle()
  const outcomes = devices.flatMap(({ client }) => [...client.outcomes.values()])
  const refused = outcomes.filter(({ kind }) => kind === 'refused').length
  return { room, devices, taken: actions - refused, refused }
}

const tell = (device: Device, op: string, say: Said, room: LoopbackRoom) => {
  const at = room.clock.now()
  device.client.ask({ op, kind: 'tell', at, say })
  // One in some is a slip of the finger.
  if (op.endsWith('7')) device.client.ask({ op: `${op}-back`, kind: 'tell', at, say: { kind: 'take-back', of: op, said: say } })
}

const said = (plan: Evening, d: Dice, action: number): Said => {
  const step = d.pick(plan.steps).id
  const course = d.pick(plan.courses).id
  return d.pick<() => Said>([
    () => ({ kind: 'started', step }),
    () => ({ kind: 'done', step }),
    () => ({ kind: 'done', step, ago: d.int(1, 20) }),
    () => ({ kind: 'longer', step, minutes: d.pick([5, 10, 20, -5]) }),
    () => ({ kind: 'reading', step, coreC: d.int(20, 75) }),
    () => ({ kind: 'reading', step, coreC: d.int(20, 75) + 0.5 }),
    () => ({ kind: d.pick(['to-table', 'nearly', 'plates-off'] as const), course }),
    () => ({ kind: d.pick(['gone', 'back'] as const), cook: d.pick(plan.cooks).id }),
    () =>
      d.chance(0.1)
        ? { kind: 'alarm', alarm: `alarm-${action % 9}`, dish: d.pick(plan.dishes).id, need: 'nuts' }
        : { kind: 'begin' },
    () => ({ kind: 'confirm', alarm: `alarm-${action % 9}`, cook: d.pick(plan.cooks).id }),
  ])()
}

const claim = (device: Device, op: string, plan: Evening, d: Dice) =>
  device.client.ask({ op, kind: d.pick(['claim', 'release']), target: d.pick(plan.steps).id, cook: device.seat.cook ?? '' })

const edit = (device: Device, plan: Evening, d: Dice) => {
  const { doc } = device.client
  const step = d.pick(plan.steps)
  d.pick<() => unknown>([
    () =>
      typeText(doc, 'dishes', d.pick(plan.dishes).id, 'notes', {
        at: 0,
        cut: 0,
        put: d.pick(['salt, ', 'a pinch more. ', 'hot! ']),
      }),
    () => setFields(doc, 'steps', step.id, { until: { sign: d.pick(['golden', 'soft', 'it sets']) } }),
    () => setFields(doc, 'dishes', d.pick(plan.dishes).id, { portions: d.int(2, 12) }),
    () => setFields(doc, 'steps', step.id, { ways: step.ways }),
  ])()
}
