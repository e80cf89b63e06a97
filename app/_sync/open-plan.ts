import { clearDocument } from 'y-indexeddb'
import type { Awareness } from 'y-protocols/awareness'
import * as Y from 'yjs'
import { type PlanReading, readPlan } from '#lib/plan/read.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { Hello, OrderMessage, type Outcome } from '#lib/plan/wire.ts'
import { openCommands } from './commands.ts'
import { type Company, openCompany } from './company.ts'
import { type Connection, connect, type Shut } from './connect.ts'
import { openCopies } from './copies.ts'
import { type Keeping, openKeeping } from './keeping.ts'
import type { LocalOrder } from './local-order.ts'
import type { Link, Plan, Wanted } from './plan.ts'
import type { Shelf } from './shelf.ts'
import type { Timers } from './timers.ts'
import { openTrials } from './trial.ts'
import { openUnsent } from './unsent.ts'
import { watchOrder } from './watch-order.ts'

const ORDER_KEY = 'order'

/** What the screens see: null until the plan has come from the server or from this device's copy. */
export interface Opened {
  readonly link: Link
  readonly plan: Plan | null
}

export interface OpenPlan {
  readonly subscribe: (listener: () => void) => () => void
  readonly opened: () => Opened
  /** Apart from the plan: that somebody moves about draws no screen again. */
  readonly company: Company
  /** Closing the page now would lose an edit: there is one that the server has not got, and this device keeps no copy. */
  readonly atRisk: () => boolean
  readonly tryAgain: () => void
  readonly close: () => void
}

export interface Surroundings {
  readonly eveningId: string
  readonly userId: string
  /** ws://host/sync */
  readonly address: string
  readonly Socket: typeof WebSocket
  readonly timers: Timers
  readonly shelf: Shelf
  /** Runs before the next picture is drawn. */
  readonly frame: (run: () => void) => () => void
  readonly local: LocalOrder
  /** In 0..1. */
  readonly dice: () => number
}

/** Opens an evening's plan: the document, this device's copy of it, the connection and the running order in one value. */
export const openPlan = (around: Surroundings): OpenPlan => {
  const { eveningId, shelf, timers, local } = around
  const base = `tableward/${eveningId}/${around.userId}/`
  const copies = openCopies(shelf, base)
  const unsent = openUnsent(shelf, `${copies.prefix()}unsent/`, String(Math.floor(around.dice() * 2 ** 52)))
  const commands = openCommands(shelf, `${base}command/`, timers.now)
  const doc = new Y.Doc()
  const undoing = openUndo(doc)
  const company = openCompany()

  const listeners = new Set<() => void>()
  const guestListeners = new Set<() => void>()
  let closed = false
  let keeping: Keeping | null = null
  let connection: Connection | null = null
  let me: Hello | null = rememberedHello(shelf, `${base}me`)
  let reading: PlanReading | null = null
  let opened: Opened = { link: { kind: 'connecting' }, plan: null }
  let cancelFrame: () => void = () => undefined
  let waits = false

  // --- what the screens see

  const publish = (): Link => {
    if (closed) return opened.link
    const link = sameLink(opened.link, connection?.link() ?? { kind: 'connecting' })
    opened = { link, plan: reading ? planOf(reading, link) : null }
    for (const listener of listeners) listener()
    trials.look()
    return link
  }
  const order = watchOrder(local, publish)
  // While the plan has changes that are not read yet, no order is that of the plan.
  const trials = openTrials(doc, local, () => (waits ? { kind: 'planning', order: null } : order.state(opened.link)))

  const planOf = ({ evening, reports }: PlanReading, link: Link): Plan => ({
    doc,
    evening,
    reports: copies.aside().length > 0 ? [...reports, ASIDE] : reports,
    me,
    link,
    order: order.state(link),
    asking: commands.asking(),
    told: commands.told(),
    canUndo: undoing.canUndo(),
    canRedo: undoing.canRedo(),
    ...doing,
  })

  const refresh = () => {
    cancelFrame()
    const found = readPlan(doc)
    if (found.meta === null) return
    const isNew = reading?.evening !== found.evening
    reading = found
    if (isNew) order.look(found.evening)
    publish()
  }
  const refreshSoon = () => {
    if (waits) return
    waits = true
    const cancel = around.frame(() => {
      waits = false
      refresh()
    })
    cancelFrame = () => {
      waits = false
      cancel()
    }
  }

  // --- what the screens may do

  const doing = {
    send(wanted: Wanted): Promise<Outcome> {
      const { answered } = commands.ask(wanted)
      connection?.sendCommands()
      publish()
      return answered
    },
    hear(op: string) {
      commands.hear(op)
      publish()
    },
    edit<T>(change: (doc: Y.Doc) => T, run?: string): T {
      const result = undoing.edit(change, run)
      refresh()
      return result
    },
    tryOut: trials.tryOut,
    undo() {
      undoing.undo()
      refresh()
    },
    redo() {
      undoing.redo()
      refresh()
    },
    onGuests(listener: () => void) {
      guestListeners.add(listener)
      return () => void guestListeners.delete(listener)
    },
    now: () => connection?.now() ?? timers.now(),
  }

  // --- the copy and the connection

  const keep = async (database: string) => {
    const found = await openKeeping(database, doc, timers)
    if (closed) return found?.close()
    keeping = found
    const kept = OrderMessage.safeParse(parsed(await found?.get(ORDER_KEY)))
    if (kept.success) order.remember(kept.data)
  }

  const onHello = (hello: Hello, awareness: Awareness) => {
    me = hello
    company.join(awareness, hello.member)
    shelf.set(`${base}me`, JSON.stringify(hello))
    if (copies.epoch() === null) void keep(copies.use(hello.epoch))
  }

  const onShut = (why: Shut, newEpoch: string | null) => {
    if (why !== 'other-epoch' && why !== 'refused') return
    const database = copies.database()
    const withEdits = unsent.any()
    copies.setAside(newEpoch, withEdits)
    keeping?.close()
    keeping = null
    if (database !== null && !withEdits) void clearDocument(database)
  }

  const start = async () => {
    const database = copies.database()
    if (database !== null) await keep(database)
    if (closed) return
    refresh()
    let wasOffline = false
    connection = connect({
      doc,
      eveningId,
      address: around.address,
      epoch: copies.epoch(),
      Socket: around.Socket,
      timers,
      unsent,
      commands: commands.waiting,
      isOwnCopy: (from) => keeping?.isOrigin(from) ?? false,
      onHello,
      onOutcome: (outcome) => {
        commands.answer(outcome)
        publish()
      },
      onOrder: (message) => {
        if (message.kind === 'order') keeping?.set(ORDER_KEY, JSON.stringify(message))
        order.hear(message)
      },
      onGuests: () => {
        for (const listener of guestListeners) listener()
      },
      onShut,
      onLink: () => {
        const isOffline = publish().kind === 'offline'
        if (isOffline && !wasOffline) order.planHere()
        wasOffline = isOffline
      },
      patience: 1_500 + 1_000 * around.dice(),
    })
    publish()
  }
  doc.on('update', refreshSoon)
  void start()

  return {
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    opened: () => opened,
    company,
    atRisk: () => unsent.any() && keeping === null,
    tryAgain: () => connection?.tryAgain(),
    close() {
      closed = true
      cancelFrame()
      trials.close()
      local.close()
      connection?.close()
      keeping?.close()
      undoing.close()
      doc.destroy()
    },
  }
}

const ASIDE = 'This device keeps an earlier copy of the plan, with changes that never reached the server.'

const parsed = (text: unknown): unknown => {
  try {
    return typeof text === 'string' ? JSON.parse(text) : null
  } catch {
    return null
  }
}

const rememberedHello = (shelf: Shelf, key: string): Hello | null => {
  const hello = Hello.safeParse(parsed(shelf.get(key)))
  return hello.success ? hello.data : null
}

const sameLink = (before: Link, after: Link): Link => (JSON.stringify(before) === JSON.stringify(after) ? before : after)
