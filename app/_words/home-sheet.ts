import type { Evening } from '#lib/domain/evening.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { HomeSheet, SheetItem, SheetWay, SheetWork } from '#lib/potluck/home-sheet.ts'
import { countText, listText, longDate, sentence } from './clock.ts'
import { durationText } from './duration.ts'
import { heatText } from './heat.ts'
import { thingCountText } from './missing.ts'
import type { Names } from './names.ts'
import { keptWords } from './offer-how.ts'
import { whenText } from './safety.ts'

type DishItem = Extract<SheetItem, { kind: 'dish' }>

/** What a line of a home's sheet is about. */
export type HomePart = 'packed' | 'home' | 'leave' | 'put' | 'there' | 'table' | 'vessel' | 'confirm' | 'plan'

/** One line of what a home is told; `at` is its moment, for a calendar or to sort by. */
export interface HomeLine {
  readonly part: HomePart
  readonly at: string | null
  readonly text: string
}

/** What a home brings, under its name, with its lines. */
export interface HomeBlock {
  readonly title: string
  readonly lines: readonly HomeLine[]
}

const NOT_PLANNED = 'the time is not planned yet'

const timeText = (evening: Evening, instant: string | null): string =>
  instant === null ? NOT_PLANNED : whenText(evening, msOfInstant(instant))

/** "Leave at 18:30: there at about 18:50, at 19:00 at the latest." */
export const wayText = (evening: Evening, way: SheetWay | null): string =>
  way === null
    ? 'When to leave is not planned yet.'
    : `Leave at ${timeText(evening, way.leave)}: there at about ${timeText(evening, way.likely)}, at ${timeText(evening, way.latest)} at the latest.`

const packedText = ({ packed }: DishItem): string => {
  const inside = [packed.vessel, packed.box].flatMap((name) => (name ? [`in ${name}`] : []))
  const how = packed.how === 'room' ? 'as it is, neither hot nor cold' : keptWords[packed.how]
  const limit = packed.most === null ? '' : `; no longer than ${durationText(packed.most)} until it is seen to here`
  return `It travels ${[how, ...inside].join(', ')}${limit}.`
}

const whoText = (work: SheetWork, names: Names): string =>
  work.cooks.length === 0 ? 'nobody has it yet' : listText(work.cooks.map(names.cookName))

/** "17:45 Make the tart, until 18:25". */
const homeText = (evening: Evening, work: SheetWork): string =>
  work.start === null
    ? `${work.does}: ${NOT_PLANNED}.`
    : `${timeText(evening, work.start)} ${work.does}${work.end === null || work.care === 'leave' ? '' : `, until ${timeText(evening, work.end)}`}.`

/** "19:26 Heat the tart, in the oven, at 180 to 200°, until it is 74° inside: Kim". */
const thereText = (evening: Evening, work: SheetWork, names: Names): string => {
  const where = work.kit.map((kit) => `${names.kit(kit)?.kit.kind === 'ring' ? 'on' : 'in'} ${names.kitName(kit)}`)
  const how = [
    ...where,
    ...(work.oven ? [`at ${heatText(work.oven.lowC, work.oven.highC)}`] : []),
    ...(work.coreC === null ? [] : [`until it is ${work.coreC}° inside`]),
  ]
  const does = [work.does, ...how].join(', ')
  return work.start === null ? `${does}: ${NOT_PLANNED}.` : `${timeText(evening, work.start)} ${does}: ${whoText(work, names)}.`
}

const line = (part: HomePart, text: string, at: string | null = null): HomeLine => ({ part, at, text })

/** "On arrival put it in the fridge: Kim." What keeps hot or cold in its box stays in it where nothing else is said. */
const putText = ({ put, packed }: DishItem, names: Names): string => {
  const who = put.cooks.length === 0 ? '' : `: ${listText(put.cooks.map(names.cookName))}`
  if (put.kit !== null)
    return `On arrival put it ${names.kit(put.kit)?.kit.kind === 'ring' ? 'on' : 'in'} ${names.kitName(put.kit)}${who}.`
  return packed.box !== null && packed.how !== 'room'
    ? `On arrival leave it in ${packed.box}, on the worktop.`
    : 'On arrival put it on the worktop.'
}

const dishLines = (item: DishItem, names: Names, evening: Evening): readonly HomeLine[] => {
  const { put, packed } = item
  return [
    ...item.home.map((work) => line('home', homeText(evening, work), work.start)),
    line('packed', packedText(item)),
    line('leave', wayText(evening, item.way), item.way?.leave ?? null),
    line('put', putText(item, names), put.at),
    ...item.there.map((work) => line('there', thereText(evening, work, names), work.start)),
    line('table', `To the table with ${names.courseName(item.course)}: ${timeText(evening, item.toTable)}.`, item.toTable),
    ...(packed.goesHome ? [line('vessel', `${sentence(packed.vessel || 'what it came in')} goes home again afterwards.`)] : []),
    ...(item.toConfirm
      ? [
          line(
            'confirm',
            'Please write down on its page what is in it, and confirm there that you have read the labels and kept it apart.',
          ),
        ]
      : []),
    ...(item.untold > 0
      ? [
          line(
            'plan',
            `${sentence(countText(item.untold))} more ${item.untold === 1 ? 'step stands' : 'steps stand'} in the plan: look there before you begin.`,
          ),
        ]
      : []),
  ]
}

/** What a home brings, dish by dish and thing by thing: for a page and for print. */
export const homeBlocks = (sheet: HomeSheet, names: Names, evening: Evening): readonly HomeBlock[] =>
  sheet.items.map((item) =>
    item.kind === 'dish'
      ? {
          title: `${item.name || 'A dish without a name'}${item.portions === null ? '' : `, for ${countText(item.portions)}`}`,
          lines: dishLines(item, names, evening),
        }
      : {
          title:
            item.thing === null
              ? `${item.name}${item.count === 1 ? '' : ` × ${item.count}`}`
              : thingCountText(item.thing, item.count),
          lines: item.goesHome ? [line('vessel', 'Goes home again afterwards.')] : [],
        },
  )

/** Who and from where: "Noor, from the flat". */
export const homeTitle = (sheet: HomeSheet, names: Names): string =>
  `${sheet.cook === null ? '' : `${names.cookName(sheet.cook)}, `}from ${names.kitchenName(sheet.kitchen)}`

const LAST =
  'Times may still move: the newest are in the plan. Keep hot food hot and cold food cold, and follow your local rules.'

/** The whole of it as text to send. Nothing of guests and their needs is in it. */
export const homeSheetText = (sheet: HomeSheet, names: Names, evening: Evening): string => {
  const start = sheet.start === null ? [] : [`Start at ${timeText(evening, sheet.start)}.`]
  const way = sheet.items.some(({ kind }) => kind === 'dish') ? [wayText(evening, sheet.way)] : []
  const head = [
    `${evening.name || 'The evening'}, ${longDate(evening.date)}`,
    homeTitle(sheet, names),
    [...start, ...way].join(' '),
  ]
  const blocks = homeBlocks(sheet, names, evening).map(({ title, lines }) =>
    [title, ...lines.filter(({ part }) => part !== 'leave').map(({ text }) => `- ${text}`)].join('\n'),
  )
  return [head.filter(Boolean).join('\n'), ...(blocks.length === 0 ? ['Nothing to bring.'] : blocks), LAST].join('\n\n')
}
