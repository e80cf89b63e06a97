import type { WebSocket } from 'ws'
import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Fired, OrderMessage } from '#lib/plan/wire.ts'
import type { PrismaClient } from '#prisma/client/client.ts'
import type { Limits } from '#server/auth/limits.ts'
import type { Erased } from '#server/backup/copies.ts'
import type { Mail } from '#server/mail.ts'
import type { NoticeKind } from '#server/notify/kinds.ts'

/** Who sits on a socket: checked at the upgrade, and again whenever a membership is revoked. */
export interface Seat {
  readonly eveningId: string
  readonly memberId: string
  readonly userId: string
  readonly name: string
  readonly role: 'host' | 'cook'
  readonly cook: string | null
}

/** The shared plans: the one place where a plan is created, read and written. */
export interface Rooms {
  /** Makes the document of a new evening. Throws when the evening already has one: a plan is never overwritten. */
  create(eveningId: string, evening: Evening): Promise<void>
  /** The plan as it stands, from memory or from disk. Claims are in it, guests are not. */
  read(eveningId: string): Promise<Evening>
  /** Edits a plan as the server itself, with a command of lib/plan; resolves when it is stored. Throws when it cannot be. */
  edit(eveningId: string, change: (doc: Y.Doc) => void): Promise<void>
  /** Takes over an open socket. */
  connect(socket: WebSocket, seat: Seat): void
  /** Closes every socket of a member (or of a whole evening) with this code. */
  closeMember(memberId: string, code: number): void
  closeEvening(eveningId: string, code: number): void
  /** A member's seat changed (which cook they are): told at their next hello, sockets are asked to come again. */
  reseat(memberId: string): void
  sendOrder(eveningId: string, message: OrderMessage): void
  /** Tells the hosts' open pages that something about the guests is new; what it is they ask for themselves. */
  tellGuests(eveningId: string): void
  /** Called after each commit with the plan as it then stands, and once when a room opens. */
  onPlan(listener: (eveningId: string, evening: Evening) => void): void
  /** Called when nobody is at an evening any more: its last socket has gone, and it is not held. */
  onEmpty(listener: (eveningId: string) => void): void
  /** Called when an evening is closed to everybody, held or not. */
  onClosed(listener: (eveningId: string) => void): void
  /** Keeps a plan open as if somebody were there, until it is released: told of at once, and again when it is loaded anew. */
  hold(eveningId: string): void
  release(eveningId: string): void
  sendAlerts(eveningId: string, fired: readonly Fired[]): void
  /** Commits what is under way and closes every socket with 1012. */
  close(): Promise<void>
}

export interface Planner {
  /** Plans again when the problem's hash is a new one. Cheap to call on every commit. */
  plan(eveningId: string, evening: Evening): void
  /** What to show somebody who has just come: the stored order, or that it is being planned. */
  current(eveningId: string, evening: Evening): Promise<OrderMessage>
  /** What there is to show of a plan, without anything being planned for it: the last order, and what is said of it if it is of this plan. */
  peek(
    eveningId: string,
    evening: Evening,
  ): Promise<{ readonly last: RunningOrder | null; readonly message: OrderMessage | null }>
  /** Plans the same problem again, from what is now. Nothing is sent when it comes to the same order. */
  again(eveningId: string): void
  /** Called with each order that people are shown. */
  onOrder(listener: (eveningId: string, order: RunningOrder) => void): void
  forget(eveningId: string): void
  close(): Promise<void>
}

/** The evenings that are being cooked now. */
export interface Nights {
  isLive(eveningId: string): boolean
  /** What has rung in the last hour of a live evening, in the order in which it rang. */
  fired(eveningId: string): readonly Fired[]
  /** Called once for each alert of a live evening, when it is stored. */
  onFire(listener: (eveningId: string, fired: Fired) => void): void
  /** Called when it is told that something got into a dish: everybody is to know, also who sleeps. `id` as devices ring for it. */
  onAlarm(listener: (eveningId: string, alarm: { readonly id: string; readonly cooks: readonly string[] }) => void): void
  close(): Promise<void>
}

/** Calls devices that sleep. */
export interface Push {
  /** By this key a browser knows that it is this server that calls. */
  readonly publicKey: string
  /** Tells the devices of one seat that there is something to look at. Resolves when all of them were tried. */
  tell(memberId: string, notice: { readonly kind: NoticeKind; readonly path: string }): Promise<void>
}

/** Keeps copies of the database, and keeps out of them what was erased. */
export interface Backups {
  /** Takes erased rows out of every copy there is. */
  clean(erased: readonly Erased[]): Promise<void>
}

export interface Live {
  readonly db: PrismaClient
  readonly rooms: Rooms
  readonly planner: Planner
  readonly nights: Nights
  readonly limits: Limits
  readonly push: Push
  /** The web address people use, without a trailing slash. */
  readonly address: string
  /** The project's folder, with a trailing slash. */
  readonly root: string
  readonly backups: Backups
  /** What waits for its turn at an evening's guests: the last of each (server/guests/in-turn.ts). */
  readonly turns: Map<string, Promise<unknown>>
  /** null: no mail server is set. */
  readonly mail: Mail | null
}

const KEY = Symbol.for('tableward.live')
type Holder = { [KEY]?: Live }

/**
 * The server's running parts. They live on globalThis because the server's bundle and Next's are two copies of every
 * module: this file is the only bridge between them.
 */
export const live = (): Live => {
  const found = (globalThis as Holder)[KEY]
  if (!found) throw new Error('the server has not started: start it with npm start or npm run dev')
  return found
}

export const setLive = (parts: Live): void => {
  ;(globalThis as Holder)[KEY] = parts
}
