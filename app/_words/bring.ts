import type { Evening } from '#lib/domain/evening.ts'
import { stateOf } from '#lib/domain/offer.ts'
import { msOfInstant } from '#lib/domain/time.ts'
import type { HomeSheet } from '#lib/potluck/home-sheet.ts'
import type { Missing } from '#lib/potluck/missing.ts'
import { clockText, countOf, listText, sentence } from './clock.ts'
import { missingIdea, thingCountText } from './missing.ts'
import { whenText } from './safety.ts'

/** "For 8, from four homes. Five things are sure, two wait for a host’s answer." */
export const bringLead = (evening: Evening): string => {
  const states = (evening.offers ?? []).map(stateOf)
  const count = (state: (typeof states)[number]) => states.filter((each) => each === state).length
  const homes = evening.kitchens.length
  const said = [
    ...(count('accepted') > 0 ? [`${countOf(count('accepted'), 'is', 'are')} wanted`] : []),
    ...(count('offered') > 0 ? [`${countOf(count('offered'), 'waits', 'wait')} for a host’s answer`] : []),
  ]
  return [
    `For ${evening.covers}${homes > 1 ? `, from ${countOf(homes, 'home')}` : ''}.`,
    ...(said.length > 0 ? [`Of what was offered, ${listText(said)}.`] : []),
  ].join(' ')
}

export const homesLead = (count: number): string =>
  count === 1
    ? 'What the other home does, and when it leaves.'
    : `${sentence(countOf(count, 'home'))}: what each does, and when it leaves.`

/** What a tap on something missing offers: "I bring something to go beside it, served cold". Null where nobody can bring it. */
export const bringText = (missing: Missing): string | null => {
  switch (missing.kind) {
    case 'thing':
      return `I bring ${thingCountText(missing.thing, missing.want - missing.have)}`
    case 'not-said':
      return `I bring ${thingCountText(missing.thing, missing.want)}`
    case 'tool':
      return `I bring ${missing.tool}`
    default: {
      const idea = missingIdea(missing)
      return idea === null ? null : `I bring ${idea}`
    }
  }
}

/** The moments of a home: when to start, to leave, and to be there. What is not planned yet says so. */
export const momentsOf = ({ start, way }: HomeSheet, evening: Evening): readonly (readonly [what: string, when: string])[] => {
  const time = (instant: string) => whenText(evening, msOfInstant(instant))
  return [
    ...(start === null ? [] : [['Start', time(start)] as const]),
    ['Leave', way === null ? 'not planned yet' : time(way.leave)],
    ...(way === null
      ? []
      : [
          [
            'There',
            way.likely === way.latest ? time(way.likely) : `${time(way.likely)} to ${clockText(way.latest, evening.zone)}`,
          ] as const,
        ]),
  ]
}

/** "Start 17:10, leave 18:20, there 18:35 to 18:45." */
export const momentsText = (sheet: HomeSheet, evening: Evening): string =>
  `${sentence(
    momentsOf(sheet, evening)
      .map(([what, when]) => `${what.toLowerCase()} ${when}`)
      .join(', '),
  )}.`

export const leftText = (left: string, zone: string): string => `On the way since ${clockText(left, zone)}.`
export const arrivedText = (there: string, zone: string): string => `You are here, since ${clockText(there, zone)}.`
export const thereText = (there: string, zone: string): string => `There since ${clockText(there, zone)}.`
