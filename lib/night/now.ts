import type { CookNow, Task } from './board.ts'
import { type Duty, dutiesOf, isOpenEnded, lookersOf } from './duties.ts'
import { isThere, type Moment } from './moment.ts'
import { temperatureAt } from './ovens.ts'
import { GRACE, MINUTE } from './told.ts'
import type { TouchToCome, Work } from './work.ts'

/** What begins within this is for now; common practice, no source. */
const SOON = MINUTE

const minutesSince = (since: number, at: number): number => Math.max(0, Math.floor((at - since) / MINUTE))

type Overdue = NonNullable<Task['overdue']>

const overdueOf = (what: Overdue['what'], since: number, at: number, grace = GRACE): Overdue | null =>
  at - since > grace ? { what, since, minutes: minutesSince(since, at) } : null

/** Since when it has been due to begin: what has been rung for is due since then, however far a new order pushed it. */
const beginDue = ({ fired }: Moment, { step, cue, start }: Work): number =>
  Math.min(start, fired.get(`begin:${step.id}:${cue.batch}`) ?? start)

const touchDue = ({ fired }: Moment, { step, cue, end, isBegun }: Work, touch: TouchToCome): number => {
  // An order made anew has what is under way end no earlier than it was made; its own minutes say when it should come out.
  const due = touch.what === 'out' && isBegun ? Math.min(touch.at, end) : touch.at
  return Math.min(due, fired.get(`touch:${step.id}:${cue.batch}:${touch.what}`) ?? due)
}

const ovenOf = ({ order, at }: Moment, work: Work): Task['oven'] => {
  const index = work.way.uses.findIndex(({ kind }) => kind === 'oven')
  const use = work.way.uses[index]
  if (use?.kind !== 'oven') return null
  const kit = work.cue.kit[index]?.id ?? null
  const line = order.ovens.find((oven) => oven.kit === kit)?.line
  const middle = Math.max(work.start, Math.min(at, work.end))
  return { kit, lowC: use.lowC, highC: use.highC, setC: line ? Math.round(temperatureAt(line, middle)) : null }
}

const overdueNow = (moment: Moment, work: Work, touch: TouchToCome | null): Overdue | null => {
  if (!work.isBegun) return work.isFirst ? overdueOf('begin', beginDue(moment, work), moment.at) : null
  if (touch !== null) return overdueOf('touch', touchDue(moment, work, touch), moment.at, GRACE + touch.takes)
  return work.isLast && !isOpenEnded(work) ? overdueOf('end', work.end, moment.at) : null
}

/** The thing as the board says it; `touch` when it is a touch that calls. */
export const taskOf = (moment: Moment, work: Work, touch: TouchToCome | null = null): Task => {
  const { step, cue, way, dish } = work
  const overdue = overdueNow(moment, work, touch)
  const into = way.touches.find(({ when }) => when === 'in')
  return {
    step: step.id,
    batch: cue.batch,
    batches: work.batches,
    way: cue.way,
    dish: dish?.id ?? null,
    course: dish?.course ?? null,
    does: step.does,
    role: step.role,
    care: way.care,
    where: step.where,
    kitchen: cue.kitchen,
    kit: cue.kit.map(({ id, unit }) => ({ id, unit })),
    oven: ovenOf(moment, work),
    isBegun: work.isBegun,
    start: work.start,
    end: work.end,
    touch:
      touch !== null
        ? { what: touch.what, at: touch.at, does: touch.does }
        : !work.isBegun && into
          ? { what: 'in', at: work.start, does: into.does ?? null }
          : null,
    overdue,
    cooks: work.isBegun || work.cooks.length > 0 ? work.cooks : work.beginners,
    extraMinutes: Math.round(work.extra / MINUTE),
    sign: step.until?.sign ?? null,
    coreC: step.until?.coreC ?? null,
    guard: step.guard ?? null,
  }
}

interface Wanted {
  readonly task: Task
  readonly due: number
}

const RANK = { overdue: 0, underWay: 1, soon: 2 } as const
const rankOf = ({ task }: Wanted): number =>
  task.overdue !== null ? RANK.overdue : task.isBegun && task.care === 'hands-on' ? RANK.underWay : RANK.soon

/** What wants a cook's hands at the moment: what they have in them, and what is due, in the board's order. */
const wantingHands = (moment: Moment, cook: string): Wanted[] => {
  const { works, told, at } = moment
  const inHand = works
    .filter(({ isBegun, way, cooks }) => isBegun && way.care === 'hands-on' && cooks.includes(cook))
    .map((work): Wanted => ({ task: taskOf(moment, work), due: work.end }))
  const due = dutiesOf(works, told)
    .filter((duty) => duty.cook === cook && duty.at <= at + SOON && !isPassed(duty, at))
    .map(({ work, touch, at: due }): Wanted => ({ task: taskOf(moment, work, touch), due }))
  return [...inHand, ...due].sort((a, b) => rankOf(a) - rankOf(b) || a.due - b.due)
}

/** A look in between is not told: it is over when its time is. */
const isPassed = ({ touch, at }: Duty, now: number): boolean =>
  touch !== null && touch.what !== 'out' && now > at + Math.max(touch.takes, MINUTE) + GRACE

/** What one cook does at this moment, what calls them next and until when they are free. */
export const cookNow = (moment: Moment, cook: string, isTableLaid: boolean): CookNow => {
  const { evening, works, told, at } = moment
  const [first, ...waiting] = wantingHands(moment, cook).map(({ task }) => task)
  const watching = works.filter(({ isBegun, way, cooks }) => isBegun && way.care === 'eye' && cooks.includes(cook))
  const left = works.filter((work) => work.isBegun && work.way.care === 'leave' && lookersOf(work, told).includes(cook))
  const coming = dutiesOf(works, told).find((duty) => duty.cook === cook && duty.at > at + SOON)
  const isHere = isThere(moment, cook)
  const isFree = isHere && first === undefined && watching.every(({ step }) => step.where === 'table')
  const eats = evening.cooks.find(({ id }) => id === cook)?.eats ?? false
  return {
    cook,
    isHere,
    hands: first ?? null,
    waiting,
    watching: watching.map((work) => taskOf(moment, work)),
    left: left.map((work) => taskOf(moment, work)),
    next: coming ? { task: taskOf(moment, coming.work, coming.touch), at: coming.at } : null,
    free: isFree ? { until: coming?.at ?? null } : null,
    isAtTable: isFree && eats && isTableLaid,
  }
}
