import type { Span } from '#lib/domain/atoms.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Use } from '#lib/domain/kitchen.ts'
import type { Touch, Way } from '#lib/domain/menu.ts'
import { spanFromBounds, spanFromUsual } from '#lib/domain/usual-span.ts'
import { hasHandWork, type Part } from './parts.ts'
import type { Heat, KitWord, TimeKind } from './preview.ts'

/** What had to be assumed to make a step of an evening out of words. */
export type Assumption =
  /** No minutes in the text. */
  | 'no-minutes'
  /** A time for each pound: weigh it. */
  | 'by-weight'
  /** It goes into the oven, and no heat is given. */
  | 'no-heat'
  /** A wait without an end ("at least 2 hours"). */
  | 'no-end'
  /** "In batches": how many fit is not known. */
  | 'batches'
  /** A time was read with a guess. */
  | 'vague'
  /** There is no recipe: what the dish's name makes one think of. */
  | 'no-recipe'

/** How a step is done as far as its words tell, and what had to be assumed. */
export interface MadeWay {
  readonly way: Way
  readonly assumed: readonly Assumption[]
}

const USUAL_SECONDS = 300
const HANDS_FIRST = 4
const DAY = 86_400
const UNKNOWN_OVEN: Pick<Heat, 'lowC' | 'highC'> = { lowC: 180, highC: 180 }

const isWait = (kind: TimeKind | undefined): boolean => kind !== undefined && kind !== 'takes' && kind !== 'by-weight'

/** A little below and above what the text says, on fives: ovens are not exact, and two dishes may then share one. */
export const ovenWindow = (heat: Pick<Heat, 'lowC' | 'highC'>): { lowC: number; highC: number } => ({
  lowC: Math.round((heat.lowC - 5) / 5) * 5,
  highC: Math.round((heat.highC + 10) / 5) * 5,
})

const touch = (when: Touch['when'], minutes: number, late: number): Touch => ({
  when,
  takes: durationOf(minutes * 60),
  lateBy: durationOf(late * 60),
})

const TOOLS: ReadonlySet<KitWord> = new Set(['blender', 'food processor', 'mixer', 'grill', 'kettle', 'sink'])

const usesOf = (part: Part, kind: TimeKind, care: Way['care'], oven: Use | null): Use[] => {
  const kit = new Set(part.step.kit.map((each) => each.value))
  if (kind === 'chill' || kind === 'freeze' || (kind === 'marinate' && kit.has('fridge')))
    return [{ kind: 'cold', keep: kind === 'freeze' ? 'frozen' : 'cold', places: 1 }]
  if (isWait(kind)) return []
  const tools = [...kit].filter((word) => TOOLS.has(word)).map((tool): Use => ({ kind: 'tool', tool, count: 1 }))
  if (oven) return [oven, ...tools]
  if (kit.has('ring')) {
    const size = /\blarge\b.{0,20}\b(?:pan|pot|skillet|casserole)\b/iu.test(part.step.text) ? 'large' : 'medium'
    return [{ kind: 'ring', size }, ...tools]
  }
  return care === 'hands-on' ? [{ kind: 'worktop', places: 1 }, ...tools] : tools
}

const spanOf = (part: Part): { takes: Span; upTo?: string; assumed: Assumption[] } => {
  const { time } = part
  if (!time || time.value.kind === 'by-weight')
    return { takes: spanFromUsual(USUAL_SECONDS), assumed: [time ? 'by-weight' : 'no-minutes'] }
  const seconds = (minutes: number | null) => (minutes === null ? null : Math.min(Math.round(minutes * 60), 7 * DAY))
  const [least, most] = [seconds(time.value.least), seconds(time.value.most)]
  const assumed: Assumption[] = time.certain ? [] : ['vague']
  if (!isWait(time.value.kind)) return { takes: spanFromBounds(least, most) ?? spanFromUsual(USUAL_SECONDS), assumed }
  // "Up to half an hour": it need not be that long.
  const length = least ?? Math.min(most ?? 0, USUAL_SECONDS)
  const exactly = durationOf(length)
  // A wait may last longer by choice; how long is known only when the text says so.
  const upTo =
    most !== null && most > length
      ? most
      : time.value.kind === 'chill' || time.value.kind === 'freeze'
        ? Math.max(length, DAY)
        : Math.ceil(length * 1.5)
  return {
    takes: { least: exactly, likely: exactly, most: exactly },
    upTo: durationOf(upTo),
    assumed: most !== null && most > length ? assumed : [...assumed, 'no-end'],
  }
}

/** The care of work that is neither waiting nor in the oven: what stands on a ring is watched, all else is in somebody's hands. */
const attended = (said: Way['care'] | undefined, onRing: boolean, hasLength: boolean): Way['care'] => {
  if (said === 'hands-on' || (said === 'eye' && hasLength)) return said
  return onRing ? 'eye' : 'hands-on'
}

/** The one way of doing a part, with what was assumed. `heat` is the oven's last named heat. */
export const wayOf = (part: Part, heat: Heat | null): MadeWay => {
  const kind = part.time?.value.kind ?? 'takes'
  const { takes, upTo, assumed } = spanOf(part)
  const kit = part.step.kit
  const own = part.step.heats.find((each) => each.value.kind === 'oven')?.value
  const hasLength = part.time !== null && !isWait(kind)
  const saysOven = own !== undefined || kit.some((each) => each.value === 'oven')
  const saysRing = kit.some((each) => each.value === 'ring')
  const { care: word } = part.step
  const timed = part.step.times.find((each) => each.value.kind === 'takes')
  // "150 °C, 3 hours, turn once": what comes after the time is not what takes it.
  const said = own && word && timed && word.from > timed.from ? undefined : word?.value
  // "Heat the oven. Beat the whites for 10 minutes": the hands' work is not what the oven does.
  const ovenWork =
    said === 'leave' || (said !== 'hands-on' && (own !== undefined || kit.some((each) => each.value === 'oven' && each.certain)))
  const inOven = hasLength && saysOven && ovenWork
  const known = own ?? heat
  const oven: Use | null = inOven ? { kind: 'oven', shelves: 1, ...ovenWindow(known ?? UNKNOWN_OVEN), preheated: true } : null
  const care = isWait(kind) || inOven ? 'leave' : attended(said, saysRing, part.time !== null)
  const every = part.step.times.find((each) => each.value.kind === 'every')
  const again = every && !isWait(kind) ? (every.value.least ?? every.value.most) : null
  const touches =
    care !== 'leave'
      ? []
      : [
          // Chopping and mixing that the same sentence tells before is done when it goes in.
          touch('in', hasHandWork(part.step.text) ? HANDS_FIRST : 1, 0),
          ...(again && again >= 1 ? [touch({ every: durationOf(Math.round(again * 60)) }, 1, 3)] : []),
          touch('out', 1, isWait(kind) ? 5 : 2),
        ]
  const batches = /\bin (?:\w+ )?batches\b/iu.test(part.step.text)
  return {
    way: {
      care,
      cooks: 1,
      takes,
      ...(upTo !== undefined && secondsOf(upTo) >= secondsOf(takes.most) ? { upTo } : {}),
      touches: care === 'leave' && secondsOf(takes.least) < 300 ? [] : touches,
      uses: usesOf(part, kind, care, oven),
    },
    assumed: [...assumed, ...(inOven && !known ? (['no-heat'] as const) : []), ...(batches ? (['batches'] as const) : [])],
  }
}
