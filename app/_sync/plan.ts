import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Say } from '#lib/plan/say.ts'
import type { Command, Fired, Hello, Outcome } from '#lib/plan/wire.ts'
import type { Aside } from './open-aside.ts'

/** Where this device's copy stands against the server's. "saved" is said only on acknowledgement. */
export type Link =
  | { readonly kind: 'connecting' }
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** `unsent`: edits are kept on this device and go out when the connection is back. */
  | { readonly kind: 'offline'; readonly unsent: boolean }
  | {
      readonly kind: 'closed'
      readonly why: 'sign-in' | 'removed' | 'gone' | 'other-epoch' | 'refused' | 'reload'
      /** There are edits that the server has never had. */
      readonly unsent?: true
    }

/** The running order against the plan on this screen. */
export type OrderState =
  | { readonly kind: 'none' }
  /** `more`: a better one is being looked for, in which what clashes now may not clash. `looking`: ways out of what clashes are. */
  | { readonly kind: 'current'; readonly order: RunningOrder; readonly more?: true; readonly looking?: true }
  /** `order`, if any, is of an earlier plan. */
  | { readonly kind: 'planning'; readonly order: RunningOrder | null }
  | { readonly kind: 'failed'; readonly order: RunningOrder | null; readonly why: string }

type WithoutOp<T> = T extends unknown ? Omit<T, 'op'> : never
/** A command before it has its operation id. */
export type Wanted = WithoutOp<Command>

/** A command that was refused when its asker was gone: it had been given before the page was loaded again. */
export interface Told {
  readonly command: Command
  readonly outcome: Extract<Outcome, { kind: 'refused' }>
}

/** What would come of a change: the order that is shown now, the order with it, and the evening with it. */
export interface Trial {
  readonly before: RunningOrder
  readonly after: RunningOrder
  readonly evening: Evening
}

/**
 * Makes a change to a copy of the plan and plans that, on this device alone; the change may run later than the call. It waits until
 * the order on the screen is the last word on the plan, so that the two differ by the change and nothing else. Each asker's
 * newest trial is answered and an older one gets null; so does one that this device cannot work out.
 */
export type TryOut = (change: (doc: Y.Doc) => void, asker?: string) => Promise<Trial | null>

/** The one bridge between the shared plan and the screens. */
export interface Plan {
  readonly doc: Y.Doc
  /** The plan as it reads now, with what was told here and is still on its way; a new object whenever it changes. */
  readonly evening: Evening
  /** What could not be read of the document, in words for the host. */
  readonly reports: readonly string[]
  readonly me: Hello | null
  readonly link: Link
  readonly order: OrderState
  /** Claims asked for and not yet answered: target → cook. */
  readonly asking: ReadonlyMap<string, string>
  /** Sends a command, at once or when the connection is back; resolves with what became of it. */
  readonly send: (command: Wanted) => Promise<Outcome>
  /**
   * Tells what happened just now, as this member's cook, or as another where they have none; `op` is what it is taken back by. Without a
   * connection it is kept, also across a reload, and `answered` waits.
   */
  readonly tell: (say: Say, as?: string) => { readonly op: string; readonly answered: Promise<Outcome> }
  /** How much of that the server has not answered yet. */
  readonly waitingTells: number
  /** Refusals of commands given before a reload, to be shown until `hear` takes them away. */
  readonly told: readonly Told[]
  readonly hear: (op: string) => void
  /** What this device knew before the plan was put back from a backup; null or absent: nothing else. */
  readonly aside?: Aside | null
  /**
   * Runs an edit as one of this person's own, so that undo takes back this and nothing else. Edits in a row of the same
   * `run` are taken back together.
   */
  readonly edit: <T>(change: (doc: Y.Doc) => T, run?: string) => T
  /** What would come of a change, worked out here; nobody else sees anything of it. */
  readonly tryOut: TryOut
  readonly undo: () => void
  readonly redo: () => void
  readonly canUndo: boolean
  readonly canRedo: boolean
  /** Calls when hosts may find something new about the guests; gives what ends it. */
  readonly onGuests: (listener: () => void) => () => void
  /** Calls at once with the alerts that have rung as far as this page knows, then with each that rings; gives what ends it. */
  readonly onAlerts: (listener: (alerts: readonly Fired[]) => void) => () => void
  /** The server's clock, in milliseconds since 1970. */
  readonly now: () => number
}
