import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Kit, Use } from '#lib/domain/kitchen.ts'
import type { Step, Way } from '#lib/domain/menu.ts'
import type { Clash, Cue } from '#lib/domain/running-order.ts'
import { dateOfDay, msOfInstant, wallTimeOfMs } from '#lib/domain/time.ts'

/** "1 h 30 min", "2.5 min", "none". */
export const lengthInWords = (duration: string): string => {
  const seconds = secondsOf(duration)
  if (seconds === 0) return 'none'
  const hours = Math.floor(seconds / 3600)
  const minutes = Math.round((seconds % 3600) / 30) / 2
  return [...(hours > 0 ? [`${hours} h`] : []), ...(minutes > 0 || hours === 0 ? [`${minutes} min`] : [])].join(' ')
}

/** The time by the clock in the evening's zone: "19:30". */
export const clockOf = (evening: Evening, instant: string): string => wallTimeOfMs(evening, msOfInstant(instant)).time

/** "Saturday 14 November 2026" of a day counted from the evening's date. */
export const dateInWords = (evening: Evening, day: number): string =>
  new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' })
    .format(new Date(`${dateOfDay(evening, day)}T12:00:00Z`))
    .replace(',', '')

export const listInWords = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`

export const cookName = (evening: Evening, id: string): string => evening.cooks.find((cook) => cook.id === id)?.name ?? id

const degrees = ({ lowC, highC }: Extract<Use, { kind: 'oven' }>): string => (lowC === highC ? `${lowC}°` : `${lowC}–${highC}°`)

const plural = (count: number, one: string, many: string): string => (count === 1 ? one : `${count} ${many}`)

/** One use as a cook says it: "oven at 140–155°", "medium ring", "2 worktop places". */
const useInWords = (use: Use, kit: Kit | undefined): string => {
  switch (use.kind) {
    case 'ring':
      return `${kit?.kind === 'ring' ? kit.size : use.size} ring`
    case 'oven':
      return [
        `${kit?.kind === 'oven' ? kit.name.toLowerCase() : 'oven'} at ${degrees(use)}`,
        ...(use.shelves > 1 ? [`${use.shelves} shelves`] : []),
      ].join(', ')
    case 'cold':
      return `${use.keep === 'frozen' ? 'freezer' : 'fridge'}${use.places > 1 ? `, ${use.places} places` : ''}`
    case 'worktop':
      return plural(use.places, 'worktop', 'places of worktop')
    case 'tool':
      return use.count === 1 ? use.tool : `${use.count} × ${use.tool}`
  }
}

const kitOf = (evening: Evening, id: string | undefined): Kit | undefined =>
  evening.kitchens.flatMap((kitchen) => kitchen.kit).find((kit) => kit.id === id)

/** What a cue is done with, in the order of its uses. */
export const kitInWords = (evening: Evening, way: Way, cue: Cue): string[] =>
  way.uses.map((use, index) => useInWords(use, kitOf(evening, cue.kit[index]?.id)))

const CARE: Readonly<Record<Way['care'], string>> = { 'hands-on': 'hands on', eye: 'keep an eye on it', leave: 'leave it' }

export const careInWords = (way: Way): string => CARE[way.care]

const TOUCH = { in: 'put in', out: 'take out', every: 'look in' } as const

/** When somebody stands at a cue that is otherwise left alone: "take out 18:27 Piet". */
export const touchesInWords = (evening: Evening, way: Way, cue: Cue): string[] => {
  const left = [...cue.touches]
  const length = (msOfInstant(cue.end) - msOfInstant(cue.start)) / 1000
  return way.touches.flatMap((touch) => {
    const every = typeof touch.when === 'object' ? secondsOf(touch.when.every) : 0
    const times = every > 0 ? Math.max(0, Math.ceil(length / every) - 1) : 1
    const word = TOUCH[typeof touch.when === 'object' ? 'every' : touch.when]
    return left.splice(0, times).map(({ at, cook }) => `${word} ${clockOf(evening, at)} ${cookName(evening, cook)}`)
  })
}

/** "74 °C inside, juices clear". */
export const doneness = ({ until }: Step): string[] => {
  const parts = [
    ...(until?.coreC === undefined ? [] : [`${until.coreC} °C inside`]),
    ...(until?.sign === undefined ? [] : [until.sign]),
  ]
  return parts.length > 0 ? [`until ${parts.join(', ')}`] : []
}

/** Two things under way that cannot be, or one that nobody is at, in a sentence; null when the clash is about a plan. */
const underWay = (evening: Evening, clash: Clash, cues: readonly Cue[]): string | null => {
  const happens = (step: string) => cues.some((cue) => cue.step === step && (cue.state === 'running' || cue.state === 'done'))
  if ((clash.kind !== 'no-cook' && clash.kind !== 'no-kit') || !clash.steps.every(happens)) return null
  const steps = clash.steps.map((id) => `“${evening.steps.find((step) => step.id === id)?.does ?? id}”`).join(' and ')
  const kit = kitOf(evening, clash.kit ?? undefined)
  const when = `for ${lengthInWords(clash.by)}, from ${clockOf(evening, clash.from)}`
  if (kit) return `${steps} are under way, and ${kitInFew(kit)} cannot be had by all of them ${when}`
  return clash.steps.length > 1 ? `one cook is at ${steps} ${when}` : `nobody is there for ${steps} ${when}`
}

/** One clash in a sentence. `cues`: those of its order. */
export const clashInWords = (evening: Evening, clash: Clash, cues: readonly Cue[] = []): string => {
  const happening = underWay(evening, clash, cues)
  if (happening !== null) return happening
  const step = (index: number) =>
    `“${evening.steps.find(({ id }) => id === clash.steps[index])?.does ?? clash.steps[index] ?? 'a step'}”`
  const dish = `“${evening.dishes.find(({ id }) => id === clash.dish)?.name ?? 'a dish'}”`
  const course = `“${evening.courses.find(({ id }) => id === clash.course)?.name ?? 'a course'}”`
  const kit = kitOf(evening, clash.kit ?? undefined)
  const holder = clash.kind === 'lag' ? clash.steps[2] : clash.steps.at(-1)
  const because =
    kit && holder !== undefined
      ? `: ${kitInFew(kit)} is taken by “${evening.steps.find(({ id }) => id === holder)?.does ?? holder}”`
      : ''
  const by = lengthInWords(clash.by)
  const when = `${clockOf(evening, clash.from)} to ${clockOf(evening, clash.to)}`
  switch (clash.kind) {
    case 'lag':
      return `${step(1)} comes ${by} too long after ${step(0)} (${when})${because}`
    case 'keeps':
      return `${dish} waits for the table ${by} longer than it keeps (${when})${because}`
    case 'carry':
      return `${dish} is on its way ${by} longer than it may be (${when})${because}`
    case 'wait':
      if (clash.dish !== null) return `${dish} comes ${by} after its course was served`
      return `the guests wait ${by} longer than they should for ${course} (${when})`
    case 'sit-down':
      return `${course} comes ${by} after the guests sit down (${when})`
    case 'safety':
      return `${step(0)} is left out: no time for it would be safe`
    case 'no-cook':
      return `${step(0)} is left out: no cook is there and free for its ${by}`
    case 'no-kit':
      return `${step(0)} is left out: ${kit ? `${kitInFew(kit)} has no room for it` : 'the kitchen does not have what it needs'}`
  }
}

const kitInFew = (kit: Kit): string => {
  switch (kit.kind) {
    case 'ring':
      return `the ${kit.size} ring`
    case 'oven':
      return kit.name.toLowerCase() === 'oven' ? 'the oven' : kit.name
    case 'cold':
      return kit.keep === 'frozen' ? 'the freezer' : 'the fridge'
    case 'worktop':
      return 'the worktop'
    case 'tool':
      return `the ${kit.tool}`
  }
}
