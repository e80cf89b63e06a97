import { means, type Parts, type TextBlank, wrong } from '#app/_ui/parts.ts'
import { atText } from '#app/_words/clock.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cook, Kitchen, Presence } from '#lib/domain/kitchen.ts'
import { type HomeDay, homeDayOf, setWay } from './home.ts'

/** A change of the way to the table, or of a cook's hours. */
export type HomeEdit =
  | { readonly kind: 'way'; readonly patch: Pick<Kitchen, 'toTable' | 'toTableMost'> }
  | { readonly kind: 'hours'; readonly presence: readonly Presence[] }

interface Scene {
  readonly evening: Evening
  readonly names: Names
  readonly cook: Cook
  readonly kitchen: Kitchen
}

const WRONG_WAY = 'Write how long the way is, such as 20 min.'
const WRONG_CLOCK = 'Write a time, such as 17:00.'

/** "Noor’s kitchen is 20 min from the table, 30 min at worst. On the day Noor is there from 10:00 to 18:00 and here from 18:30." */
export const homeParts = ({ evening, names, cook, kitchen }: Scene): Parts<HomeEdit> => {
  const name = names.kitchenName(kitchen.id)
  const way = (at: 'likely' | 'most', label: string, text: string, empty?: string): TextBlank<HomeEdit> => ({
    kind: 'text',
    at,
    label: `${name}: ${label}`,
    text,
    ...(empty === undefined ? {} : { empty }),
    write: (said) => {
      const read = readDuration(said)
      return read === null || secondsOf(read) === 0
        ? wrong(WRONG_WAY)
        : means({ kind: 'way', patch: setWay(kitchen, { [at]: read }) })
    },
  })
  return [
    `${name} is `,
    way('likely', 'the way to the table', durationText(kitchen.toTable)),
    ' from the table, ',
    way('most', 'the way at worst', kitchen.toTableMost === undefined ? '' : durationText(kitchen.toTableMost), 'no longer'),
    ' at worst. ',
    ...hoursParts({ evening, names, cook, kitchen }),
  ]
}

/** "15 min away; at home until 18:20, in Ada’s kitchen from 18:40". */
export const homeDayText = (evening: Evening, names: Names, kitchen: Kitchen, { home, host }: HomeDay): string =>
  `${durationText(kitchen.toTable)} away; at home until ${home.to.time}, in ${names.kitchenName(evening.host)} from ${host.from.time}`

const hoursParts = ({ evening, names, cook, kitchen }: Scene): Parts<HomeEdit> => {
  const day = homeDayOf(evening, cook, kitchen.id)
  if (day === null) return []
  const { home, host } = day
  const clock = (at: string, label: string, stay: Presence, edge: 'from' | 'to'): TextBlank<HomeEdit> => ({
    kind: 'text',
    at,
    label: `${cook.name}: ${label}`,
    text: stay[edge].day === 0 ? stay[edge].time : atText(evening.date, stay[edge]),
    write: (said) => {
      const time = readClock(said)
      if (time === null) return wrong(WRONG_CLOCK)
      const next = { ...stay, [edge]: { ...stay[edge], time } }
      return means({ kind: 'hours', presence: cook.presence.map((each) => (each === stay ? next : each)) })
    },
  })
  return [
    `On the day ${cook.name} is there from `,
    clock('home.from', 'at home from', home, 'from'),
    ' to ',
    clock('home.to', 'at home until', home, 'to'),
    ` and in ${names.kitchenName(evening.host)} from `,
    clock('host.from', 'at the table’s kitchen from', host, 'from'),
    '.',
  ]
}
