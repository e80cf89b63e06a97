import { secondsOf } from '#lib/domain/duration.ts'
import { bySiblingOrder, type Evening } from '#lib/domain/evening.ts'
import type { Cue, RunningOrder } from '#lib/domain/running-order.ts'
import { msOfInstant, wallTimeOfMs } from '#lib/domain/time.ts'
import {
  careInWords,
  clashInWords,
  clockOf,
  cookName,
  dateInWords,
  doneness,
  kitInWords,
  lengthInWords,
  listInWords,
  touchesInWords,
} from './order-words.ts'
import { remedyInWords } from './remedy-words.ts'

/** One entry of the list: when it comes, what comes first at the same moment, and its lines. */
interface Entry {
  readonly ms: number
  readonly rank: number
  readonly lines: readonly string[]
}

const WHO = 16
const row = (clock: string, who: string, text: string): string => `  ${clock.padEnd(5)}  ${who.padEnd(WHO)}  ${text}`.trimEnd()

/** The running order as a page to cook from: by day, then by the clock; figures and clashes after it. */
export const orderText = (evening: Evening, order: RunningOrder): string =>
  [heading(evening), ...days(evening, order), ...tableLines(evening, order), ...clashLines(evening, order), '']
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')

const heading = (evening: Evening): string =>
  [
    evening.name,
    `${dateInWords(evening, 0)}, for ${evening.covers}. Guests from ${evening.guestsFrom.time}, at the table ${evening.sitDown.time}.`,
  ].join('\n')

const days = (evening: Evening, order: RunningOrder): string[] => {
  const entries = [
    ...order.cues.flatMap((cue) => cueEntry(evening, order, cue)),
    ...order.courses.map((served, index) => courseEntry(evening, served, index)),
    ...order.ovens.flatMap((oven) => ovenEntries(evening, oven)),
  ].sort((a, b) => a.ms - b.ms || a.rank - b.rank)
  let today: number | undefined
  return entries.flatMap(({ ms, lines }) => {
    const { day } = wallTimeOfMs(evening, ms)
    const title = day === today ? [] : ['', dateInWords(evening, day)]
    today = day
    return [...title, ...lines]
  })
}

const cueEntry = (evening: Evening, order: RunningOrder, cue: Cue): Entry[] => {
  const step = evening.steps.find(({ id }) => id === cue.step)
  const way = step?.ways[cue.way]
  if (!step || !way) return []
  const batches = order.cues.filter((each) => each.step === cue.step).length
  // Nobody is needed at the start of what is left alone, unless somebody puts it in.
  const who = cue.cooks.length > 0 ? cue.cooks : cue.touches.filter(({ at }) => at === cue.start).map(({ cook }) => cook)
  const seconds = Math.round((msOfInstant(cue.end) - msOfInstant(cue.start)) / 1000)
  const waits = secondsOf(cue.slack) >= 300 && cue.state === 'planned'
  const latest = new Date(msOfInstant(cue.start) + secondsOf(cue.slack) * 1000).toISOString()
  const details = [
    `${careInWords(way)} ${lengthInWords(`PT${seconds}S`)}, to ${clockOf(evening, cue.end)}`,
    ...kitInWords(evening, way, cue),
    ...touchesInWords(evening, way, cue),
    ...(evening.kitchens.length > 1 ? [evening.kitchens.find(({ id }) => id === cue.kitchen)?.name ?? cue.kitchen] : []),
    ...doneness(step),
    ...(waits ? [`can wait until ${clockOf(evening, latest)}`] : []),
  ]
  const state = cue.state === 'done' ? ' (done)' : cue.state === 'running' ? ' (under way)' : ''
  return [
    {
      ms: msOfInstant(cue.start),
      rank: 2,
      lines: [
        row(
          clockOf(evening, cue.start),
          who.map((id) => cookName(evening, id)).join(', ') || '–',
          `${step.does}${batches > 1 ? ` (${cue.batch + 1} of ${batches})` : ''}${state}`,
        ),
        row('', '', details.join(' · ')),
      ],
    },
  ]
}

const courseEntry = (evening: Evening, served: RunningOrder['courses'][number], index: number): Entry => {
  const name = evening.courses.find(({ id }) => id === served.course)?.name ?? served.course
  const dishes = evening.dishes.filter(({ course, state }) => course === served.course && state === 'on').sort(bySiblingOrder)
  const wait = index > 0 && secondsOf(served.wait) > 0 ? ` · wait ${lengthInWords(served.wait)}` : ''
  const clock = clockOf(evening, served.toTable)
  return {
    ms: msOfInstant(served.toTable),
    rank: 1,
    lines: [
      '',
      `── ${name} to table ${clock}${wait} · plates off about ${clockOf(evening, served.platesOff)}`,
      ...(dishes.length > 0 ? [`   ${listInWords(dishes.map((dish) => dish.name))}`] : []),
      '',
    ],
  }
}

/** When somebody turns an oven up, down or off. Between two dishes that follow closely it is only turned up. */
const ovenEntries = (evening: Evening, oven: RunningOrder['ovens'][number]): Entry[] => {
  const kit = evening.kitchens.flatMap((kitchen) => kitchen.kit).find(({ id }) => id === oven.kit)
  const name = kit?.kind === 'oven' ? kit.name : oven.kit
  const entry = (at: string, text: string): Entry => ({
    ms: msOfInstant(at),
    rank: 0,
    lines: [row(clockOf(evening, at), '–', `${name} ${text}`)],
  })
  const { line } = oven
  /** The next point from which the temperature no longer goes that way. */
  const turn = (from: number, way: 1 | -1): number => {
    const next = line.findIndex((point, index) => index >= from && ((line[index + 1]?.c ?? point.c) - point.c) * way <= 0)
    return next < 0 ? line.length - 1 : next
  }
  const ups = oven.preheats.flatMap((at) => {
    const from = line.findIndex((point) => point.at === at)
    const target = line[turn(Math.max(0, from), 1)]
    return target ? [entry(at, `to ${Math.round(target.c)}°, hot by ${clockOf(evening, target.at)}`)] : []
  })
  const downs = line.flatMap((point, index) => {
    const falls = (line[index + 1]?.c ?? point.c) < point.c
    if (!falls || (line[index - 1]?.c ?? point.c) > point.c) return []
    const end = turn(index, -1)
    const low = line[end]
    if (!low || end === line.length - 1) return [entry(point.at, 'off')]
    return (line[end + 1]?.c ?? low.c) > low.c ? [] : [entry(point.at, `down to ${Math.round(low.c)}°`)]
  })
  return [...ups, ...downs]
}

const tableLines = (evening: Evening, order: RunningOrder): string[] => {
  const eats = new Set(evening.cooks.filter((cook) => cook.eats).map(({ id }) => id))
  return [
    '',
    'At the table',
    ...order.cooks.map(({ cook, missed, handsOn, sits }) => {
      const sitting = sits.map(({ from, to }) => `${clockOf(evening, from)}–${clockOf(evening, to)}`)
      const table = !eats.has(cook)
        ? 'does not eat with the guests'
        : `misses ${lengthInWords(missed)}${sitting.length > 0 ? `, sits ${listInWords(sitting)}` : ''}`
      return `  ${cookName(evening, cook)} ${table}; hands on ${lengthInWords(handsOn)} in all`
    }),
    `  All hosts away from the table: ${lengthInWords(order.allHostsAway)}`,
    ...waitLines(evening, order),
  ]
}

const waitLines = (evening: Evening, order: RunningOrder): string[] => {
  const served = order.courses.map((each) => ({ ...each, of: evening.courses.find(({ id }) => id === each.course) }))
  const first = served.findIndex(({ of }) => !of?.welcome)
  const waits = served.slice(first + 1).map(({ of, course, wait }) => `${of?.name ?? course} ${lengthInWords(wait)}`)
  return first >= 0 && waits.length > 0 ? [`  Waits: ${waits.join(', ')}`] : []
}

const clashLines = (evening: Evening, order: RunningOrder): string[] =>
  order.clashes.length === 0
    ? ['', 'No clash: every wish is kept.']
    : [
        '',
        order.clashes.length === 1 ? 'One clash' : `${order.clashes.length} clashes`,
        ...order.clashes.flatMap((clash) => [
          `  – ${clashInWords(evening, clash, order.cues)}`,
          ...clash.ways.map((way) => `      a way out: ${remedyInWords(evening, way)}`),
        ]),
      ]
