import { means, type Parts, readOut, type TextBlank, wrong } from '#app/_ui/parts.ts'
import { keepWords } from '#app/_words/care.ts'
import { countOf } from '#app/_words/clock.ts'
import { durationText } from '#app/_words/duration.ts'
import { heatText, readHeat } from '#app/_words/heat.ts'
import { ringWords } from '#app/_words/kit.ts'
import type { Names } from '#app/_words/names.ts'
import { arrivesWords, thingWords } from '#app/_words/offer.ts'
import { readCount } from '#app/_words/read-count.ts'
import { readPortions } from '#app/_words/read-portions.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { RingSize } from '#lib/domain/kitchen.ts'
import { KeepHow } from '#lib/domain/menu.ts'
import { Arrives, type Offer, TableThing } from '#lib/domain/offer.ts'
import { homeOf, type OfferPatch, OVEN, RING, withArrives, withAtHost, withHow } from './offer-edit.ts'
import { timed } from './offer-time.ts'

/** What stands around an offer, and what it is called to those who do not see its sentence. */
export interface OfferScene {
  readonly evening: Evening
  readonly names: Names
  readonly called: string
  /** Whose screen it is; hosts write down what others bring as well. */
  readonly mine: string | null
  readonly isHost: boolean
}

type Parted = Parts<OfferPatch>
const NONE = ''
const OTHER = 'other'

/** "I bring a big salad for eight, to the starter, from Noor’s kitchen. It comes cold and ready to serve." */
export const offerParts = (offer: Offer, scene: OfferScene): Parted => [
  ...whoParts(offer, scene),
  ...(offer.kind === 'dish' ? [nameBlank(offer, scene, 'something good'), ...aboutDish(offer, scene)] : thingParts(offer, scene)),
]

/** The same to be read, without who and what: "for eight to the starter, from Noor’s kitchen. It comes cold and ready to serve." */
export const offerText = (offer: Offer, scene: OfferScene): string =>
  readOut(offer.kind === 'dish' ? aboutDish(offer, scene) : fromParts(offer, scene))
    .replace(/^[\s,]+/, '')
    .replace(/^\.?\s*$/, '')
    .trim()

const whoParts = (offer: Offer, { evening, names, called, mine, isHost }: OfferScene): Parted => {
  if (!isHost || evening.cooks.length < 2) return [offer.cook === mine ? 'I bring ' : `${names.cookName(offer.cook)} brings `]
  return [
    {
      kind: 'choice',
      at: 'cook',
      label: `${called}: who brings it`,
      value: offer.cook,
      options: evening.cooks.map(({ id, name }) => [id, id === mine ? 'I' : name || 'somebody'] as const),
      choose: (cook) => {
        const kitchen = homeOf(evening, cook)
        return means({ cook, kitchen })
      },
    },
    offer.cook === mine ? ' bring ' : ' brings ',
  ]
}

const nameBlank = (offer: Offer, { called }: OfferScene, empty: string): TextBlank<OfferPatch> => ({
  kind: 'text',
  at: 'name',
  label: `${called}: what it is`,
  text: offer.name,
  empty,
  write: (text) => {
    const name = cleanText(text.trim(), false).slice(0, 120)
    return name === '' ? wrong('Write what you bring, such as a big salad.') : means({ name })
  },
})

const fromParts = (offer: Offer, { evening, names, called }: OfferScene): Parted =>
  evening.kitchens.length < 2
    ? []
    : [
        ', from ',
        {
          kind: 'choice',
          at: 'kitchen',
          label: `${called}: from which home`,
          value: offer.kitchen ?? evening.host,
          options: evening.kitchens.map(({ id }) => [id, names.kitchenName(id)] as const),
          choose: (kitchen) => means({ kitchen: kitchen === evening.host ? undefined : kitchen }),
        },
      ]

const aboutDish = (offer: Offer, scene: OfferScene): Parted => {
  const { evening, names, called } = scene
  return [
    ' for ',
    {
      kind: 'text',
      at: 'portions',
      label: `${called}: for how many`,
      text: String(offer.portions),
      write: (text) => {
        const portions = readPortions(text)
        return portions === null ? wrong('Write for how many it is, such as 8.') : means({ portions })
      },
    },
    ' to ',
    {
      kind: 'choice',
      at: 'course',
      label: `${called}: to which course`,
      value: offer.course ?? NONE,
      options: [
        ...(offer.course === undefined ? [[NONE, 'whichever course'] as const] : []),
        ...evening.courses.map(({ id }) => [id, names.courseName(id)] as const),
      ],
      choose: (course) => means({ course: course === NONE ? undefined : course }),
    },
    ...fromParts(offer, scene),
    '. It comes ',
    {
      kind: 'choice',
      at: 'how',
      label: `${called}: how it is carried`,
      value: offer.how,
      options: KeepHow.options.map((how) => [how, keepWords[how]] as const),
      choose: (how) => means(withHow(offer, KeepHow.parse(how))),
    },
    ' and ',
    {
      kind: 'choice',
      at: 'arrives',
      label: `${called}: in what state it arrives`,
      value: offer.arrives,
      options: Arrives.options.map((arrives) => [arrives, arrivesWords[arrives]] as const),
      choose: (arrives) => means(withArrives(offer, Arrives.parse(arrives))),
    },
    '. ',
    ...heatParts(offer, scene),
    ...finishParts(offer, scene),
  ]
}

const WHERE = [
  ['oven', 'in the oven'],
  ['ring', 'on a ring'],
  ['either', 'in the oven or on a ring'],
] as const

/** "There it takes 25 min in the oven, one shelf at 160 to 190°." */
const heatParts = (offer: Offer, { called }: OfferScene): Parted => {
  const at = offer.atHost
  if (at?.heat === undefined) return []
  const [inOven, onRing] = [at.shelves !== undefined, at.ring !== undefined]
  return [
    'There it takes ',
    {
      kind: 'text',
      at: 'atHost.heat',
      label: `${called}: how long it is heated`,
      text: durationText(at.heat.likely),
      write: (text) => timed(text, (heat) => withAtHost(offer, { heat })),
    },
    ' ',
    {
      kind: 'choice',
      at: 'atHost.where',
      label: `${called}: where it is heated`,
      value: inOven && onRing ? 'either' : onRing ? 'ring' : 'oven',
      options: WHERE,
      choose: (where) =>
        means(
          withAtHost(offer, {
            ...(where === 'ring' ? { shelves: undefined, lowC: undefined, highC: undefined } : inOven ? {} : OVEN),
            ring: where === 'oven' ? undefined : (at.ring ?? RING.ring),
          }),
        ),
    },
    ...(inOven
      ? ([
          ', ',
          {
            kind: 'text',
            at: 'atHost.shelves',
            label: `${called}: shelves of the oven`,
            text: countOf(at.shelves ?? 1, 'shelf', 'shelves'),
            write: (text: string) => {
              const shelves = readCount(text)
              return shelves === null || shelves > 8
                ? wrong('Write how many shelves, from 1 to 8.')
                : means(withAtHost(offer, { shelves }))
            },
          },
          ' at ',
          {
            kind: 'text',
            at: 'atHost.heatC',
            label: `${called}: temperature of the oven`,
            text: heatText(at.lowC ?? OVEN.lowC ?? 0, at.highC ?? OVEN.highC ?? 0),
            write: (text: string) => {
              const heat = readHeat(text)
              return heat === null
                ? wrong('Write degrees, the lower first, such as 160 to 190°, 375 F, gas 5 or 180 fan.')
                : means(withAtHost(offer, { lowC: heat[0], highC: heat[1] }))
            },
          },
        ] satisfies Parted)
      : []),
    ...(onRing
      ? ([
          ', ',
          {
            kind: 'choice',
            at: 'atHost.ring',
            label: `${called}: size of the ring`,
            value: at.ring ?? 'medium',
            options: RingSize.options.map((size) => [size, `a ${ringWords[size]} one`] as const),
            choose: (size: string) => means(withAtHost(offer, { ring: RingSize.parse(size) })),
          },
        ] satisfies Parted)
      : []),
    '. ',
  ]
}

/** "There it takes 10 min by hand." */
const finishParts = (offer: Offer, { called }: OfferScene): Parted =>
  offer.atHost?.finish === undefined
    ? []
    : [
        'There it takes ',
        {
          kind: 'text',
          at: 'atHost.finish',
          label: `${called}: how long it takes by hand`,
          text: durationText(offer.atHost.finish.likely),
          write: (text) => timed(text, (finish) => withAtHost(offer, { finish })),
        },
        ' by hand. ',
      ]

/** "I bring six chairs." */
const thingParts = (offer: Offer, scene: OfferScene): Parted => {
  const { called } = scene
  return [
    {
      kind: 'text',
      at: 'portions',
      label: `${called}: how many`,
      text: String(offer.portions),
      write: (text) => {
        const portions = readCount(text)
        return portions === null ? wrong('Write how many, such as 6.') : means({ portions })
      },
    },
    ' ',
    {
      kind: 'choice',
      at: 'thing',
      label: `${called}: which thing`,
      value: offer.thing ?? OTHER,
      options: [
        ...TableThing.options.map((thing) => [thing, thingWords[thing]] as const),
        [OTHER, 'of something else:'] as const,
      ],
      choose: (thing) => {
        const known = TableThing.options.find((each) => each === thing)
        return means({ thing: known, how: known === 'ice' ? 'frozen' : 'room', ...(known ? { name: thingWords[known] } : {}) })
      },
    },
    ...(offer.thing === undefined ? [' ', nameBlank(offer, scene, 'such as candles')] : []),
    ...fromParts(offer, scene),
    '. ',
  ]
}
