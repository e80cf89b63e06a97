/** One thing that a cook does, watches or is called to next. Instants are milliseconds since 1970, minutes are whole. */
export interface Task {
  readonly step: string
  readonly batch: number
  /** How many batches of the step there are. */
  readonly batches: number
  /** Index into the step's ways. */
  readonly way: number
  readonly dish: string | null
  readonly course: string | null
  /** The step's own text. */
  readonly does: string
  readonly role: 'make' | 'carry' | 'finish' | 'plate' | 'chore'
  readonly care: 'hands-on' | 'eye' | 'leave'
  readonly where: 'kitchen' | 'table' | 'outside'
  readonly kitchen: string
  readonly kit: readonly { readonly id: string; readonly unit: number }[]
  /** The oven's window while it is in; null when it uses none. */
  readonly oven: {
    readonly kit: string | null
    readonly lowC: number
    readonly highC: number
    /** What the order has the oven at. */
    readonly setC: number | null
  } | null
  /** It was told to have begun. */
  readonly isBegun: boolean
  readonly start: number
  /** When the usual minutes are over, with what was said of needing longer. */
  readonly end: number
  /** What calls the cook to it now: the step as a whole, taking it out, or a look in between. */
  readonly touch: { readonly what: 'in' | 'out' | number; readonly at: number; readonly does: string | null } | null
  /** Since when it has been due and by how much that is over; null within the grace of 2 min. */
  readonly overdue: { readonly what: 'begin' | 'end' | 'touch'; readonly since: number; readonly minutes: number } | null
  /** Everybody who does it. */
  readonly cooks: readonly string[]
  readonly extraMinutes: number
  readonly sign: string | null
  readonly coreC: number | null
  /** It guards a plate for this need. */
  readonly guard: { readonly for: string; readonly does: 'begin' | 'cover' | 'plate' | 'carry' } | null
}

/** One cook at this moment. */
export interface CookNow {
  readonly cook: string
  /** By their hours, and not told to have gone. */
  readonly isHere: boolean
  /** The one thing for the hands: overdue before under way before due within a minute. */
  readonly hands: Task | null
  /** What also wants these hands, in that order. */
  readonly waiting: readonly Task[]
  /** What they keep an eye on. */
  readonly watching: readonly Task[]
  /** What is left alone and will call them. */
  readonly left: readonly Task[]
  /** What calls them next, and when; `at` of a touch is the touch's. */
  readonly next: { readonly task: Task; readonly at: number } | null
  /** Hands free and nothing to watch: until when, null to the end of the evening; `null` as a whole when they are wanted. */
  readonly free: { readonly until: number | null } | null
  /** They sit at the table with the guests meanwhile. */
  readonly isAtTable: boolean
}

/** The next course to the table. */
export interface NextCourse {
  readonly course: string
  /** As the order says, and never before now. */
  readonly toTable: number
  readonly inMinutes: number
  /** From when to when it is wanted: the ideal wait after the plates before it, or sit-down. */
  readonly wanted: { readonly from: number; readonly to: number }
  /** Every step of its dishes is told done: it goes to the table. */
  readonly isReady: boolean
  /** Minutes behind that; 0 within the grace of 2 min. */
  readonly lateBy: number
  /** The step that decides it, when late. */
  readonly because: string | null
  /** Until when it can wait at no cost; null when that is not known or over. */
  readonly freeUntil: number | null
  /** Its chance of being on time, 0..1. */
  readonly onTime: number | null
}

/** What calls somebody next. */
export interface Call {
  readonly id: string
  readonly at: number
  readonly kind: 'begin' | 'touch' | 'look' | 'get-up' | 'plate' | 'serve' | 'overdue'
  /** Empty: everybody. */
  readonly cooks: readonly string[]
  readonly step: string | null
  readonly course: string | null
  readonly touch: 'out' | number | null
}

export interface OvenNow {
  readonly kitchen: string
  readonly kit: string
  readonly c: number
  readonly trend: 'off' | 'level' | 'up' | 'down'
  /** Where it is going, or stays. */
  readonly toC: number
  /** What it does next: somebody turns it up (or on), down, or off. */
  readonly next: { readonly at: number; readonly kind: 'up' | 'down' | 'off'; readonly toC: number } | null
  readonly inside: readonly {
    readonly step: string
    readonly batch: number
    readonly dish: string | null
    readonly out: number
  }[]
}

/** How it is with the guests. */
export type GuestsNow = { readonly covers: number } & (
  | { readonly kind: 'to-come'; readonly from: number; readonly sitDown: number }
  /** At the welcome, or waiting for it, until they sit down. */
  | { readonly kind: 'arriving'; readonly sitDown: number }
  /** At the table without a course; since when, and for which. */
  | { readonly kind: 'waiting'; readonly since: number; readonly course: string }
  | {
      readonly kind: 'eating'
      readonly course: string
      readonly since: number
      readonly platesOff: number
      readonly isNearlyDone: boolean
      readonly clears: string | null
    }
  | { readonly kind: 'done'; readonly since: number }
)

/** A step that keeps a plate apart for a severe allergy. */
export interface GuardLine {
  readonly dish: string
  readonly need: string
  readonly step: string
  readonly does: 'begin' | 'cover' | 'plate' | 'carry'
  readonly isDone: boolean
  readonly cooks: readonly string[]
}

/** An allergen got in: nobody serves the dish to anyone with the need. */
export interface Alarm {
  readonly alarm: string
  readonly dish: string
  /** null: to nobody at all. */
  readonly need: string | null
  readonly at: number
  readonly confirmed: readonly string[]
  /** Cooks who are there and have not confirmed. */
  readonly missing: readonly string[]
}

/** Plating is near: a course within 15 min. */
export interface PlateNear {
  readonly course: string
  readonly at: number
  readonly guards: readonly GuardLine[]
  /** Dishes of it that are not to be served to somebody, confirmed or not. */
  readonly alarms: readonly Alarm[]
}

export type Phase = 'before' | 'cooking' | 'table' | 'after'

/** What the board shows at one moment. Instants are milliseconds since 1970, minutes are whole. */
export interface Board {
  readonly at: number
  readonly phase: Phase
  /** This cook alone, or every cook when none is chosen. */
  readonly now: readonly CookNow[]
  readonly others: readonly CookNow[]
  readonly course: NextCourse | null
  /** What calls somebody next, the soonest first. */
  readonly calls: readonly Call[]
  readonly ovens: readonly OvenNow[]
  readonly guests: GuestsNow
  readonly plateNear: PlateNear | null
  /** Not confirmed by all who are there. */
  readonly alarms: readonly Alarm[]
  /** Nobody has told anything for 20 min or more though something should have happened: since when. */
  readonly silent: { readonly since: number; readonly minutes: number } | null
}

/** Whose board it is: null is everybody's, the tablet on the worktop. */
export interface Whose {
  readonly cook: string | null
  /** When alerts fired, by their id: a new order pushes what is due along with the clock, this does not. */
  readonly fired?: ReadonlyMap<string, number>
}
