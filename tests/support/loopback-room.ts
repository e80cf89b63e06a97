import type { Evening } from '#lib/domain/evening.ts'
import type { Fired, OrderMessage } from '#lib/plan/wire.ts'
import type { Rooms, Seat } from '#server/live.ts'
import type { Clock } from '#server/sync/clock.ts'
import { openRooms } from '#server/sync/open-rooms.ts'
import { type HandClock, handClock } from './hand-clock.ts'
import { type Loopback, loopback } from './loopback-socket.ts'
import { type MemoryLog, memoryLog } from './memory-log.ts'
import { type SyncClient, syncClient } from './sync-client.ts'

/** Lets everything that was promised happen; no time passes. */
export const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))

export const EVENING = 'evening-1'

/** A device of a member, and its line when it has one. */
export interface Device {
  readonly client: SyncClient
  readonly seat: Seat
  line: Loopback | null
  /** The code with which the server closed the last line. */
  closedWith: number | null
}

/** The real rooms on sockets, a log and a clock that are cranked by hand. */
export interface LoopbackRoom {
  readonly log: MemoryLog
  readonly clock: HandClock
  readonly devices: Device[]
  readonly logged: string[]
  readonly plans: Evening[]
  readonly empties: string[]
  rooms(): Rooms
  /** `offMs`: how far the device's own clock is ahead. */
  device(member: string, role?: 'host' | 'cook', cook?: string | null, offMs?: number): Device
  connect(device: Device): void
  cut(device: Device): void
  /** Gives the client one frame of its queue; when it is empty, the news that the server has closed. */
  deliverToClient(device: Device, index?: number): void
  /** Delivers and commits everything until nothing moves. */
  settle(): Promise<void>
  /** The process dies and starts again: what was not committed is lost, all lines are cut. */
  kill(): Promise<void>
  /** The two halves of it: nobody is let in between. */
  die(): void
  revive(): Promise<void>
}

/** One process, from its start to its death. */
export interface Life {
  readonly clock: Clock
  isOver(): boolean
}

const lifeOn = (clock: HandClock): Life & { readonly end: () => void } => {
  let over = false
  return {
    clock: {
      now: clock.now,
      after: (ms, work) => (over ? () => undefined : clock.after(ms, work)),
      every: (ms, work) => (over ? () => undefined : clock.every(ms, work)),
    },
    isOver: () => over,
    end() {
      over = true
      clock.forget()
    },
  }
}

/** What a server has around its rooms. */
interface Around {
  readonly greet?: (eveningId: string, evening: Evening) => Promise<OrderMessage>
  readonly fired?: (eveningId: string) => readonly Fired[]
  /** A process begins, and again after each kill: what it does to its clock after its death comes to nothing. */
  readonly opened?: (rooms: Rooms, life: Life) => void
  /** The clock at the start. */
  readonly at?: number
}

export const loopbackRoom = async (evening: Evening, { greet, fired, opened, at }: Around = {}): Promise<LoopbackRoom> => {
  const log = memoryLog()
  const clock = handClock(at)
  const devices: Device[] = []
  const logged: string[] = []
  const plans: Evening[] = []
  const empties: string[] = []
  let life = lifeOn(clock)
  const open = async () => {
    life = lifeOn(clock)
    const rooms = await openRooms({
      databaseFile: '',
      updates: log,
      clock: life.clock,
      log: (what) => logged.push(what),
      ...(greet ? { greet } : {}),
      ...(fired ? { fired } : {}),
    })
    rooms.onPlan((_id, plan) => plans.push(plan))
    rooms.onEmpty((id) => empties.push(id))
    opened?.(rooms, life)
    return rooms
  }
  log.add(EVENING)
  let rooms = await open()
  await rooms.create(EVENING, evening)

  const cut = (device: Device) => {
    const { line } = device
    device.line = null
    device.client.disconnect()
    line?.cut()
  }
  const die = () => {
    for (const device of devices) cut(device)
    log.kill()
    life.end()
  }
  const deliverToClient = (device: Device, index = 0) => {
    const [frame] = device.line?.toClient.splice(index, 1) ?? []
    if (frame) device.client.hear(frame)
    else if (device.line?.closed) {
      device.closedWith = device.line.closed.code
      cut(device)
    }
  }
  const round = (): boolean => {
    let moved = log.waiting > 0
    for (const device of devices) {
      while (device.line && device.line.toServer.length > 0) {
        moved = true
        device.line.deliverToServer()
      }
      while (device.line && (device.line.toClient.length > 0 || device.line.closed)) {
        moved = true
        deliverToClient(device)
      }
    }
    log.commit()
    return moved
  }

  return {
    log,
    clock,
    devices,
    logged,
    plans,
    empties,
    rooms: () => rooms,
    device(member, role = 'cook', cook = null, offMs = 0) {
      const seat: Seat = { eveningId: EVENING, memberId: member, userId: `u-${member}`, name: member, role, cook }
      const device: Device = { client: syncClient(() => clock.now() + offMs), seat, line: null, closedWith: null }
      devices.push(device)
      return device
    },
    connect(device) {
      cut(device)
      const line = loopback()
      device.line = line
      device.closedWith = null
      rooms.connect(line.server, device.seat)
      device.client.connect({ send: (frame) => void line.toServer.push(frame.slice()) })
    },
    cut,
    deliverToClient,
    async settle() {
      for (let quiet = 0; quiet < 2; ) {
        await turn()
        quiet = round() ? 0 : quiet + 1
      }
    },
    async kill() {
      die()
      rooms = await open()
    },
    die,
    async revive() {
      rooms = await open()
    },
  }
}
