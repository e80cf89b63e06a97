import { means, type Parts, wrong } from '#app/_ui/parts.ts'
import { countOf } from '#app/_words/clock.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { NEED_CHOICES } from '#app/_words/need-choices.ts'
import { readCount } from '#app/_words/read-count.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Offer } from '#lib/domain/offer.ts'
import { type OfferPatch, usualBox, withAtHost } from './offer-edit.ts'
import type { OfferScene } from './offer-sentence.ts'
import { timed, WRONG_TIME } from './offer-time.ts'

type Parted = Parts<OfferPatch>
const NONE = ''

/** What is folded below: the box, the fridge, the vessel, the work at home, whom it suits. */
export const moreParts = (offer: Offer, { called }: OfferScene): Parted => {
  const { box, vessel, atHost, home } = offer
  const suits = offer.suits ?? []
  return [
    'It travels in ',
    {
      kind: 'text',
      at: 'box.name',
      label: `${called}: what keeps it so on the road`,
      text: box?.name ?? '',
      empty: 'nothing special',
      write: (text) => {
        const name = cleanText(text.trim(), false).slice(0, 60)
        return means({ box: name === '' ? undefined : { name, most: box?.most ?? usualBox(offer.how).most } })
      },
    },
    ...(box
      ? ([
          ', which keeps it so for ',
          {
            kind: 'text',
            at: 'box.most',
            label: `${called}: how long that keeps it so`,
            text: durationText(box.most),
            write: (text: string) => {
              const most = readDuration(text)
              return most === null || secondsOf(most) === 0 ? wrong(WRONG_TIME) : means({ box: { ...box, most } })
            },
          },
        ] satisfies Parted)
      : []),
    '. At home it is ',
    {
      kind: 'text',
      at: 'home',
      label: `${called}: work at home`,
      text: home ? durationText(home.likely) : '',
      empty: 'an unknown time',
      write: (text) => (text.trim() === '' ? means({ home: undefined }) : timed(text, (span) => ({ home: span }))),
    },
    ' of work. On arrival it wants ',
    {
      kind: 'text',
      at: 'atHost.cold',
      label: `${called}: places in the fridge`,
      text: atHost?.cold === undefined ? '' : countOf(atHost.cold, 'place'),
      empty: 'no place',
      write: (text) => {
        if (/^\s*(?:$|0|no\b)/i.test(text)) return means(withAtHost(offer, { cold: undefined }))
        const cold = readCount(text)
        return cold === null || cold > 60
          ? wrong('Write how many places, such as 2; a place is a flat tray or a tall pot.')
          : means(withAtHost(offer, { cold }))
      },
    },
    ' in the fridge',
    ...toolsParts(offer, called),
    '. It comes in ',
    {
      kind: 'text',
      at: 'vessel.name',
      label: `${called}: what it comes in`,
      text: vessel?.name ?? '',
      empty: 'something that may stay',
      write: (text) => {
        const name = cleanText(text.trim(), false).slice(0, 60)
        return means({ vessel: name === '' ? undefined : { name, goesHome: vessel?.goesHome ?? true } })
      },
    },
    ...(vessel
      ? ([
          ', which ',
          {
            kind: 'choice',
            at: 'vessel.goesHome',
            label: `${called}: whether that goes home again`,
            value: vessel.goesHome ? 'home' : 'stays',
            options: [
              ['home', 'goes home again'],
              ['stays', 'may stay'],
            ],
            choose: (goes: string) => means({ vessel: { ...vessel, goesHome: goes === 'home' } }),
          },
        ] satisfies Parted)
      : []),
    '. It is meant to suit ',
    ...suits.flatMap(
      (need, index): Parted => [
        {
          kind: 'choice',
          at: `suits.${index}`,
          label: `${called}: whom it suits, ${index + 1}`,
          value: need,
          options: [...suitOptions(need), [NONE, 'nobody after all']],
          choose: (chosen) =>
            means(suiting(suits.flatMap((each, at) => (at !== index ? [each] : chosen === NONE ? [] : [chosen])))),
        },
        ' and ',
      ],
    ),
    {
      kind: 'choice',
      at: 'suits.more',
      label: `${called}: somebody more whom it suits`,
      value: NONE,
      options: [[NONE, suits.length === 0 ? 'nobody in particular' : 'nobody else'], ...suitOptions(null)],
      choose: (chosen) => means(suiting(chosen === NONE ? suits : [...suits, chosen])),
    },
    '.',
  ]
}

const suiting = (suits: readonly string[]): OfferPatch => ({
  suits: suits.length > 0 ? [...new Set(suits)].slice(0, 20) : undefined,
})

/** A need that is in nobody's list keeps its own word. */
const suitOptions = (need: string | null): readonly (readonly [string, string, string?])[] =>
  need === null || NEED_CHOICES.some(([each]) => each === need) ? NEED_CHOICES : [[need, need], ...NEED_CHOICES]

/** " and a big board": tools that it wants of the host's kitchen. */
const toolsParts = (offer: Offer, called: string): Parted => {
  const tools = offer.atHost?.tools ?? []
  return [
    ', and ',
    {
      kind: 'text',
      at: 'atHost.tools',
      label: `${called}: tools that it wants`,
      text: tools.join(', '),
      empty: 'no tools',
      write: (text) => {
        const said = text
          .split(',')
          .map((tool) => cleanText(tool.trim(), false).slice(0, 40))
          .filter((tool) => tool !== '' && !/^no tools$/i.test(tool))
        return said.length > 5
          ? wrong('Write at most five tools, with commas between them.')
          : means(withAtHost(offer, { tools: said.length > 0 ? [...new Set(said)] : undefined }))
      },
    },
  ]
}
