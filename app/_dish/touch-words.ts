import { means, type Parts, type Said, within, wrong } from '#app/_ui/parts.ts'
import { touchKind, touchWords } from '#app/_words/care.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Touch } from '#lib/domain/menu.ts'

interface Place {
  readonly at: string
  readonly named: (what: string) => string
}
type Touches = readonly Touch[]

const MOST = 6
const NONE = 'none'
const WRONG = 'Write minutes, such as 2 min.'
const KINDS = (['in', 'every', 'out'] as const).map((kind) => [kind, touchWords[kind]] as const)

/** A touch as it is most often meant. */
const USUAL: Readonly<Record<string, Touch>> = {
  in: { when: 'in', takes: 'PT1M', lateBy: 'PT0S' },
  every: { when: { every: 'PT30M' }, takes: 'PT1M', lateBy: 'PT5M' },
  out: { when: 'out', takes: 'PT1M', lateBy: 'PT2M' },
}

/** Another time for the same touch; its minutes stay. */
const withKind = (touch: Touch, kind: string): Touch => {
  if (kind === touchKind(touch)) return touch
  const { takes, lateBy, does } = touch
  const when = USUAL[kind]?.when ?? 'in'
  return typeof when === 'object' && does !== undefined ? { when, does, takes, lateBy } : { when, takes, lateBy }
}

/** "Somebody has to put it in, 1 min; see to it every 20 min: baste, 2 min, may be late by 5 min, and nothing else." */
export const touchParts = (touches: Touches, { at, named }: Place): Parts<Touches> => [
  ...(touches.length === 0 ? [] : ['Somebody has to ']),
  ...touches.flatMap((touch, index): Parts<Touches> => {
    const put = (next: Touch): Touches => touches.map((other, place) => (place === index ? next : other))
    const which = named(`touch ${index + 1}`)
    const where = `${at}.touches.${index}`
    return [
      index === 0 ? '' : '; ',
      {
        kind: 'choice',
        at: `${where}.when`,
        label: which,
        value: touchKind(touch),
        options: [...KINDS, [NONE, 'do nothing after all']],
        choose: (kind) => means(kind === NONE ? touches.filter((_, place) => place !== index) : put(withKind(touch, kind))),
      },
      ...within(oneTouchParts(touch, { at: where, which }), put),
    ]
  }),
  ...(touches.length >= MOST ? [] : moreParts(touches, { at, named })),
  '. ',
]

const oneTouchParts = (touch: Touch, { at, which }: { at: string; which: string }): Parts<Touch> => [
  ...(typeof touch.when === 'object' ? everyParts(touch, touch.when.every, { at, which }) : []),
  ', ',
  {
    kind: 'text',
    at: `${at}.takes`,
    label: `${which}: minutes`,
    text: durationText(touch.takes),
    write: minutes((takes) => ({ ...touch, takes })),
  },
  // Putting in is the start itself: it cannot be late.
  ...(touch.when === 'in'
    ? []
    : ([
        ', may be late by ',
        {
          kind: 'text',
          at: `${at}.lateBy`,
          label: `${which}: may be late by`,
          text: secondsOf(touch.lateBy) === 0 ? '' : durationText(touch.lateBy),
          empty: 'no minute',
          write: (text) =>
            text.trim() === '' ? means({ ...touch, lateBy: 'PT0S' }) : minutes((lateBy) => ({ ...touch, lateBy }))(text),
        },
      ] satisfies Parts<Touch>)),
]

const minutes =
  (make: (duration: string) => Touch) =>
  (text: string): Said<Touch> => {
    const duration = readDuration(text)
    return duration === null ? wrong(WRONG) : means(make(duration))
  }

const everyParts = (touch: Touch, every: string, { at, which }: { at: string; which: string }): Parts<Touch> => [
  ' ',
  {
    kind: 'text',
    at: `${at}.every`,
    label: `${which}: how often`,
    text: durationText(every),
    write: (text) => {
      const found = readDuration(text)
      return found === null || secondsOf(found) === 0 ? wrong(WRONG) : means({ ...touch, when: { every: found } })
    },
  },
  ': ',
  {
    kind: 'text',
    at: `${at}.does`,
    label: `${which}: what is done`,
    text: touch.does ?? '',
    empty: 'baste or turn',
    write: (text) => {
      const said = cleanText(text.trim(), false)
      const { does: _does, ...rest } = touch
      if (said.length > 80) return wrong('Say it in at most 80 letters.')
      return means(said === '' ? rest : { ...rest, does: said })
    },
  },
]

const moreParts = (touches: Touches, { at, named }: Place): Parts<Touches> => [
  touches.length === 0 ? '' : ', ',
  {
    kind: 'choice',
    at: `${at}.touches.more`,
    label: named('add a touch'),
    value: NONE,
    options: [
      [NONE, touches.length === 0 ? 'Nobody has to touch it' : 'and nothing else'],
      ...KINDS.map(
        ([kind, words]) =>
          [kind, `${touches.length === 0 ? 'Somebody has to' : 'and'} ${words}${kind === 'every' ? ' half hour' : ''}`] as const,
      ),
    ],
    choose: (kind) => {
      const more = USUAL[kind]
      return means(more ? [...touches, more] : touches)
    },
  },
]
