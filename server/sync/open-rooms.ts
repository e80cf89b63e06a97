import type { WebSocket } from 'ws'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { CLOSE, type Fired, LAYOUT_VERSION, type OrderMessage } from '#lib/plan/wire.ts'
import { writeEvening } from '#lib/plan/write-evening.ts'
import type { Rooms, Seat } from '#server/live.ts'
import { type Clock, systemClock } from './clock.ts'
import { AGAIN, IDLE_ROOMS, LIMITS, TIMES } from './limits.ts'
import { openPeer, type Peer } from './peer.ts'
import { reasonOf } from './reason.ts'
import { openRoom, type Room } from './room.ts'
import { openThreadLog } from './thread-log.ts'
import type { UpdateLog } from './update-log.ts'

export interface RoomsOptions {
  readonly databaseFile: string
  readonly log: (what: string) => void
  /** What a newcomer is shown of the running order. */
  readonly greet?: (eveningId: string, evening: Evening) => Promise<OrderMessage>
  /** What has rung of late, for who comes now. */
  readonly fired?: (eveningId: string) => readonly Fired[]
  readonly clock?: Clock
  readonly updates?: UpdateLog
}

/** Opens the shared plans of a database. */
export const openRooms = async (options: RoomsOptions): Promise<Rooms> => {
  const { log, greet, clock = systemClock } = options
  const updates = options.updates ?? openThreadLog(options.databaseFile)
  const rooms = new Map<string, Promise<Room | null>>()
  const peers = new Set<Peer>()
  const planListeners: ((eveningId: string, evening: Evening) => void)[] = []
  const emptyListeners: ((eveningId: string) => void)[] = []
  const closedListeners: ((eveningId: string) => void)[] = []
  /** The evenings whose rooms stay open without a socket. */
  const held = new Set<string>()
  let closing = false

  const load = async (eveningId: string, forget: () => void): Promise<Room | null> => {
    const stored = await updates.load(eveningId)
    if (!stored || stored.updates.length === 0) return null
    const room = openRoom(eveningId, stored, updates, clock, {
      plan: (evening) => {
        for (const listener of planListeners) listener(eveningId, evening)
      },
      empty: () => {
        void room.settled().then(() => room.compact())
        for (const listener of emptyListeners) listener(eveningId)
      },
      failed() {
        forget()
        // What is held is loaded again without anybody asking for it.
        if (held.has(eveningId)) clock.after(TIMES.reload, () => hold(eveningId))
      },
      log,
    })
    room.hold(held.has(eveningId))
    return room
  }

  const hold = (eveningId: string) => {
    if (closing || !held.has(eveningId)) return
    roomOf(eveningId)
      .then((room) => room?.hold(held.has(eveningId)))
      .catch((cause) => {
        log(`the plan of ${eveningId} cannot be held open: ${reasonOf(cause)}`)
        clock.after(TIMES.reload, () => hold(eveningId))
      })
  }

  /** The room of an evening, the one already open or loading; null when the evening has no plan. */
  const roomOf = (eveningId: string): Promise<Room | null> => {
    const known = rooms.get(eveningId)
    if (known) {
      // Moved to the end: the first ones are those that nobody has asked for.
      rooms.delete(eveningId)
      rooms.set(eveningId, known)
      return known
    }
    const forget = () => {
      if (rooms.get(eveningId) === opening) rooms.delete(eveningId)
    }
    const opening = load(eveningId, forget)
    rooms.set(eveningId, opening)
    opening.then((room) => {
      if (!room) forget()
    }, forget)
    void dropIdle()
    return opening
  }

  const dropIdle = async () => {
    for (const [eveningId, opening] of [...rooms].slice(0, Math.max(0, rooms.size - IDLE_ROOMS))) {
      const room = await opening.catch(() => null)
      if (!room || room.isHeld || room.peers.size > 0) continue
      await room.settled()
      if (room.peers.size === 0 && !room.isHeld && rooms.get(eveningId) === opening) rooms.delete(eveningId)
    }
  }

  const release = (eveningId: string) => {
    if (!held.delete(eveningId)) return
    void rooms
      .get(eveningId)
      ?.then((room) => room?.hold(held.has(eveningId)))
      .catch(() => undefined)
  }

  const admitSeat = (seat: Seat): number | null => {
    if (closing) return AGAIN.restart
    const others = [...peers]
    if (others.filter((peer) => peer.seat.userId === seat.userId).length >= LIMITS.socketsAUser) return AGAIN.tooMany
    if (others.filter((peer) => peer.seat.eveningId === seat.eveningId).length >= LIMITS.socketsARoom) return AGAIN.tooMany
    return null
  }

  const welcome = async (room: Room, peer: Peer) => {
    if (!greet) return
    const { orders } = peer
    try {
      const message = await greet(peer.seat.eveningId, room.read())
      if (peer.orders === orders) room.greet(peer, message)
    } catch (cause) {
      log(`no running order for a newcomer to ${peer.seat.eveningId}: ${reasonOf(cause)}`)
    }
  }

  const beats = { count: 0 }
  const stopBeating = clock.every(TIMES.beat, () => {
    beats.count += 1
    for (const peer of [...peers]) peer.check(beats.count % 3 === 0)
    const serverMs = clock.now()
    for (const opening of rooms.values()) void opening.then((room) => room?.beat(serverMs)).catch(() => undefined)
  })

  const closeWhere = (which: (seat: Seat) => boolean, code: number, why: string) => {
    for (const peer of [...peers]) if (which(peer.seat)) peer.close(code, why)
  }

  return {
    async create(eveningId, evening) {
      const stored = await updates.load(eveningId)
      if (!stored) throw new Error(`there is no evening ${eveningId}`)
      const doc = new Y.Doc()
      writeEvening(doc, evening, { epoch: stored.epoch, minClient: LAYOUT_VERSION })
      await updates.create(eveningId, Y.encodeStateAsUpdate(doc))
    },
    async read(eveningId) {
      const room = await roomOf(eveningId)
      if (!room) throw new Error(`the evening ${eveningId} has no plan`)
      return room.read()
    },
    async edit(eveningId, change) {
      const room = await roomOf(eveningId)
      if (!room) throw new Error(`the evening ${eveningId} has no plan`)
      await room.edit(change)
    },
    connect(socket: WebSocket, seat: Seat) {
      const early: Uint8Array[] = []
      let room: Room | null = null
      const peer = openPeer(socket, seat, clock, {
        message(frame) {
          if (closing) return
          if (room) room.hear(peer, frame)
          else if (early.push(frame.slice()) > LIMITS.beforeOpen) peer.close(AGAIN.tooFast, 'too many messages')
        },
        gone() {
          peers.delete(peer)
          room?.leave(peer)
        },
        log,
      })
      const full = admitSeat(seat)
      if (full !== null) {
        peer.close(full)
        return
      }
      peers.add(peer)
      const enter = async (): Promise<void> => {
        const opening = roomOf(seat.eveningId)
        const opened = await opening
        if (!peer.open) return
        if (!opened) peer.close(CLOSE.gone, 'there is no such plan')
        // Given up while it was waited for: an evening never has two rooms.
        else if (rooms.get(seat.eveningId) !== opening) await enter()
        else {
          room = opened
          opened.join(peer, options.fired?.(seat.eveningId) ?? [])
          for (const frame of early) if (peer.open) opened.hear(peer, frame)
          void welcome(opened, peer)
        }
      }
      enter().catch((cause) => {
        log(`the plan of ${seat.eveningId} cannot be read: ${reasonOf(cause)}`)
        peer.close(AGAIN.broken, 'the plan cannot be read')
      })
    },
    closeMember: (memberId, code) => closeWhere((seat) => seat.memberId === memberId, code, 'out'),
    closeEvening: (eveningId, code) => {
      release(eveningId)
      closeWhere((seat) => seat.eveningId === eveningId, code, 'out')
      rooms.delete(eveningId)
      for (const listener of closedListeners) listener(eveningId)
    },
    hold(eveningId) {
      held.add(eveningId)
      hold(eveningId)
    },
    release,
    sendAlerts(eveningId, fired) {
      void rooms
        .get(eveningId)
        ?.then((room) => room?.sendAlerts(fired))
        .catch(() => undefined)
    },
    reseat: (memberId) => closeWhere((seat) => seat.memberId === memberId, AGAIN.restart, 'your seat has changed'),
    sendOrder(eveningId, message) {
      void rooms
        .get(eveningId)
        ?.then((room) => room?.sendOrder(message))
        .catch(() => undefined)
    },
    tellGuests(eveningId) {
      void rooms
        .get(eveningId)
        ?.then((room) => room?.tellGuests())
        .catch(() => undefined)
    },
    onPlan(listener) {
      planListeners.push(listener)
    },
    onEmpty(listener) {
      emptyListeners.push(listener)
    },
    onClosed(listener) {
      closedListeners.push(listener)
    },
    async close() {
      closing = true
      stopBeating()
      const open = await Promise.all([...rooms.values()].map((opening) => opening.catch(() => null)))
      await Promise.all(open.map((room) => room?.settled()))
      for (const peer of [...peers]) peer.close(AGAIN.restart, 'the server restarts')
      await updates.close()
    },
  }
}
