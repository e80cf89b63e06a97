import { clearDocument } from 'y-indexeddb'
import type { Awareness } from 'y-protocols/awareness'
import * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { type PlanReading, readAhead, readPlan } from '#lib/plan/read.ts'
import type { Say } from '#lib/plan/say.ts'
import { openUndo } from '#lib/plan/undo.ts'
import { Hello, OrderMessage, type Outcome } from '#lib/plan/wire.ts'
import { openCommands } from './commands.ts'
import { type Company, openCompany } from './company.ts'
import { type Connection, connect, type Shut } from './connect.ts'
import { openCopies } from './copies.ts'
import { type Keeping, openKeeping } from './keeping.ts'
import type { LocalOrder } from './local-order.ts'
import { openAside } from './open-aside.ts'
import { isOverdue } from './overdue.ts'
import type { Link, Plan, Wanted } from './plan.ts'
import { openRung } from './rung.ts'
import type { Shelf } from './shelf.ts'
import type { Timers } from './timers.ts'
import { openToldHere } from './told-here.ts'
import { openTrials } from './trial.ts'
import { openUnsent } from './unsent.ts'
import { watchOrder } from './watch-order.ts'

const ORDER_KEY = 'order'
/** How often it is looked whether time alone has spoilt the order, while nobody else looks. */
const LOOK_MS = 30_000

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
  /** The server's clock, in ms since 1970, as far as this device knows it. */
  readonly now: () => number
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
  /** Does long work without keeping the page from answering, then goes on. */
  readonly inGaps: (work: Iterator<unknown>, then: () => void) => () => void
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
  const clockKey = `${base}clock`
  let offset = Number(shelf.get(clockKey) ?? 0) || 0
  const now = () => timers.now() + offset
  const toldHere = openToldHere(commands.tells, () => offset)
  const rung = openRung()
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
  /** What is read, with what was told here laid over it. */
  let shown: Evening | null = null
  let opened: Opened = { link: { kind: 'connecting' }, plan: null }
  let cancelFrame: () => void = () => undefined
  let waits = false

  // --- what the screens see

  const publish = (): Link => {
    if (closed) return opened.link
    const link = sameLink(opened.link, connection?.link() ?? { kind: 'connecting' })
    opened = { link, plan: reading && shown ? planOf(shown, reading.reports, link) : null }
    for (const listener of listeners) listener()
    trials.look()
    return link
  }
  const keepOrder = (message: OrderMessage) => keeping?.set(ORDER_KEY, JSON.stringify(message))
  const order = watchOrder(local, publish, keepOrder)
  // While the plan has changes that are not read yet, no order is that of the plan.
  const trials = openTrials(
    doc,
    local,
    () => (waits ? { kind: 'planning', order: null } : order.state(opened.link)),
    (evening) => toldHere.overCopy(evening, me),
  )

  const planOf = (evening: Evening, reports: readonly string[], link: Link): Plan => ({
    doc,
    evening,
    reports: copies.aside().length > 0 ? [...reports, ASIDE] : reports,
    me,
    link,
    order: order.state(link),
    asking: commands.asking(),
    waitingTells: commands.tells().length,
    told: commands.told(),
    aside: aside.state(),
    canUndo: undoing.canUndo(),
    canRedo: undoing.canRedo(),
    ...doing,
  })

  const refresh = () => {
    cancelFrame()
    const found = readPlan(doc)
    if (found.meta === null) return
    reading = found
    show()
  }
  /** Lays what was told here over what is read, and shows it. */
  const show = () => {
    const evening = reading && toldHere.over(reading.evening, me)
    if (evening && evening !== shown) {
      shown = evening
      order.look(evening)
    }
    publish()
  }
  const refreshSoon = () => {
    if (waits) return
    waits = true
    const read = () => {
      waits = false
      refresh()
    }
    const cancel = reading === null ? around.inGaps(readAhead(doc), read) : around.frame(read)
    cancelFrame = () => {
      waits = false
      cancel()
    }
  }

  // --- what the screens may do

  const ask = (wanted: Wanted) => {
    const asked = commands.ask(wanted)
    connection?.sendCommands()
    show()
    return asked
  }

  const doing = {
    send: (wanted: Wanted): Promise<Outcome> => ask(wanted).answered,
    tell(say: Say, as?: string) {
      const { command, answered } = ask({ kind: 'tell', at: timers.now(), say, ...(as === undefined ? {} : { as }) })
      return { op: command.op, answered }
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
    onAlerts: rung.listen,
    now,
  }

  // --- the copy and the connection

  const aside = openAside({
    doc,
    copies,
    timers,
    role: () => me?.role ?? null,
    edit: (change) => doing.edit(change),
    changed: () => publish(),
  })

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
    show()
    if (copies.epoch() === null) void keep(copies.use(hello.epoch))
  }

  const onShut = (why: Shut, newEpoch: string | null) => {
    if (why !== 'other-epoch' && why !== 'refused') return
    const database = copies.database()
    // What was saved after the backup is in no other place than on the devices that knew it.
    const withEdits = unsent.any() || why === 'other-epoch'
    copies.setAside(newEpoch, withEdits)
    keeping?.close()
    keeping = null
    if (database !== null && !withEdits) void clearDocument(database)
  }

  /** Without a connection this device does what the server's timer does with one. */
  let cancelLook: () => void = () => undefined
  const lookAgain = () => {
    cancelLook = timers.after(LOOK_MS, () => {
      const now = opened.plan
      if (now?.link.kind === 'offline' && now.order.kind === 'current' && isOverdue(now.evening, now.order.order, now.now()))
        order.planAgain()
      lookAgain()
    })
  }

  const start = async () => {
    const database = copies.database()
    if (database !== null) await keep(database)
    if (closed) return
    await new Promise<void>((read) => around.inGaps(readAhead(doc), read))
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
      offset,
      onOffset: (ms) => {
        offset = ms
        shelf.set(clockKey, String(Math.round(ms)))
      },
      isOwnCopy: (from) => keeping?.isOrigin(from) ?? false,
      onHello,
      onOutcome: (outcome) => {
        commands.answer(outcome)
        toldHere.hear(outcome)
        refreshSoon()
        publish()
      },
      onOrder: (message) => {
        if (message.kind === 'order') keepOrder(message)
        order.hear(message)
      },
      onAlerts: rung.hear,
      onGuests: () => {
        for (const listener of guestListeners) listener()
      },
      onShut,
      onLink: () => {
        const link = publish().kind
        if (link === 'saved') aside.look()
        const isOffline = link === 'offline'
        if (isOffline && !wasOffline) order.planHere()
        wasOffline = isOffline
      },
      patience: 1_500 + 1_000 * around.dice(),
    })
    publish()
  }
  // Not on an update, which would be written out for this.
  doc.on('afterTransaction', ({ changed }) => {
    if (changed.size > 0) refreshSoon()
  })
  lookAgain()
  void start()

  return {
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    opened: () => opened,
    company,
    now,
    atRisk: () => unsent.any() && keeping === null,
    tryAgain: () => connection?.tryAgain(),
    close() {
      closed = true
      cancelFrame()
      cancelLook()
      trials.close()
      local.close()
      connection?.close()
      keeping?.close()
      undoing.close()
      doc.destroy()
    },
  }
}

const ASIDE = 'This device keeps an earlier copy of the plan, with changes that are not in it.'

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
