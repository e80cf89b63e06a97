import { means, type Parts, within, wrong } from '#app/_ui/parts.ts'
import { careWords, handsWords } from '#app/_words/care.ts'
import { durationText, minutesText, readDuration, readSpan, spanText } from '#app/_words/duration.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Care, Way } from '#lib/domain/menu.ts'
import { suggested, withBounds, withTakes, withUsual } from './minutes.ts'
import type { Scene } from './scene.ts'
import { touchParts } from './touch-words.ts'
import { moreKitParts, ovenParts, usesParts } from './use-words.ts'

const CARES = Object.entries(careWords)
const HANDS = ([1, 2, 3] as const).map((count) => [String(count), handsWords[count]] as const)

/** What a way is when its care changes: left alone, a step is put in and taken out; otherwise it has no touches. */
export const withCare = (way: Way, care: Care): Way => {
  if (care === way.care && (care === 'leave' || way.upTo === undefined)) return way
  const { upTo: _upTo, ...rest } = way
  if (care !== 'leave') return { ...rest, care, cooks: care === 'eye' ? 1 : way.cooks, touches: [] }
  const touches: Way['touches'] =
    way.touches.length > 0
      ? way.touches
      : [
          { when: 'in', takes: 'PT1M', lateBy: 'PT0S' },
          { when: 'out', takes: 'PT1M', lateBy: 'PT2M' },
        ]
  return { ...way, care, cooks: 1, touches }
}

/** Where a way stands among the sentences of its step. */
export interface WayPlace {
  readonly scene: Scene
  readonly index: number
  readonly at: string
  readonly named: (what: string) => string
}

export const wayPlace = (scene: Scene, index: number): WayPlace => {
  const which = scene.step.ways.length > 1 ? `, way ${index + 1}` : ''
  return { scene, index, at: `ways.${index}`, named: (what) => `${scene.name}${which}: ${what}` }
}

/** "Leave it in the oven at 190 to 200°, one shelf, already hot, usually 60 min, can be 55 to 70 min. Somebody has to …" */
export const wayParts = (way: Way, place: WayPlace): Parts<Way> => [
  {
    kind: 'choice',
    at: `${place.at}.care`,
    label: place.named('care'),
    value: way.care,
    options: CARES,
    choose: (care) => means(withCare(way, care as Care)),
  },
  ...handsParts(way, place),
  ...within(usesParts(way.uses, kitScene(place)), (uses) => ({ ...way, uses: [...uses] })),
  ', usually ',
  ...minutesParts(way, place),
  ...(way.care === 'leave' ? stayParts(way, place) : []),
  '. ',
  ...within(moreKitParts(way.uses, kitScene(place)), (uses) => ({ ...way, uses: [...uses] })),
  ...(way.care === 'leave' ? within(touchParts(way.touches, place), (touches) => ({ ...way, touches: [...touches] })) : []),
]

/** The rarer words about a way's oven; empty without one. */
export const wayMoreParts = (way: Way, place: WayPlace): Parts<Way> =>
  within(ovenParts(way.uses, kitScene(place)), (uses) => ({ ...way, uses: [...uses] }))

const kitScene = ({ scene, at, named }: WayPlace) => ({
  kitchen: scene.kitchen,
  kitchens: scene.kitchens,
  at: `${at}.uses`,
  named,
})

const handsParts = (way: Way, { at, named }: WayPlace): Parts<Way> =>
  way.care === 'hands-on'
    ? [
        ' for ',
        {
          kind: 'choice',
          at: `${at}.cooks`,
          label: named('how many cooks'),
          value: String(way.cooks),
          options: HANDS,
          choose: (cooks) => means({ ...way, cooks: Number(cooks) }),
        },
        way.uses.length > 0 ? ',' : '',
      ]
    : []

const minutesParts = (way: Way, { at, named }: WayPlace): Parts<Way> => [
  {
    kind: 'text',
    at: `${at}.takes.likely`,
    label: named('usual minutes'),
    text: durationText(way.takes.likely),
    write: (text) => {
      const likely = readDuration(text)
      return likely === null || secondsOf(likely) === 0
        ? wrong('Write how long it takes, such as 25 min, 1:30 or 1 h 30.')
        : means(withTakes(way, withUsual(way.takes, likely)))
    },
  },
  ', can be ',
  {
    kind: 'text',
    at: `${at}.takes.bounds`,
    label: named('least and most minutes'),
    text: spanText(way.takes.least, way.takes.most),
    empty: `${spanText(suggested(way.takes.likely).least, suggested(way.takes.likely).most)}, as is common`,
    write: (text) => {
      if (text.trim() === '') return means(withTakes(way, suggested(way.takes.likely)))
      const span = readSpan(text)
      return span === null
        ? wrong('Write two times, the shorter first, such as 20 to 35 min. Leave it empty for a suggestion.')
        : means(withTakes(way, withBounds(way.takes, span)))
    },
  },
]

const MORE = /\s*(?:more|longer)\s*$/i
const IN_ALL = /\s*(?:in all|altogether)\s*$/i
const NO_LONGER = /^(?:no longer|not at all)?$/i

/** "It may stay up to 30 min more": more than the most it needs. */
const stayParts = (way: Way, { at, named }: WayPlace): Parts<Way> => {
  const most = secondsOf(way.takes.most)
  const more = way.upTo === undefined ? null : secondsOf(way.upTo) - most
  return [
    ', and may stay ',
    {
      kind: 'text',
      at: `${at}.upTo`,
      label: named('longest it may stay'),
      text: more === null ? '' : `up to ${minutesText(more / 60)} more`,
      empty: 'no longer',
      write: (text) => {
        const said = text.trim().replace(/^(?:up to|for)\s+/i, '')
        if (NO_LONGER.test(said)) {
          const { upTo: _upTo, ...rest } = way
          return means(rest)
        }
        const duration = readDuration(said.replace(MORE, '').replace(IN_ALL, ''))
        if (duration === null) return wrong('Write how much longer, such as 30 min more, or 2 h in all.')
        if (!IN_ALL.test(said)) return means({ ...way, upTo: durationOf(most + secondsOf(duration)) })
        return secondsOf(duration) < most
          ? wrong(`It needs up to ${durationText(way.takes.most)}, so it cannot be less in all.`)
          : means({ ...way, upTo: duration })
      },
    },
    ...(way.upTo === undefined || more === 0 ? [] : [` (${durationText(way.upTo)} in all)`]),
  ]
}
