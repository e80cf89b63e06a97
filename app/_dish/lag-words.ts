import { means, type Parts, type Said, within, wrong } from '#app/_ui/parts.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { After, Step } from '#lib/domain/menu.ts'
import { type Scene, stepOptions } from './scene.ts'
import { waitsThrough } from './waits-through.ts'

/** How a wait is bounded, as the words before the other step's name. */
type Shape = 'any' | 'right' | 'least' | 'most' | 'between'

const SHAPES: readonly (readonly [Shape, string])[] = [
  ['any', 'some time after'],
  ['right', 'right after'],
  ['least', 'at least'],
  ['most', 'within'],
  ['between', 'between'],
]
const EDGES = [
  ['end', 'is over'],
  ['start', 'has begun'],
] as const
const KINDS = [
  ['quality', 'it is better so'],
  ['safety', 'it is only safe so'],
] as const
const NONE = ''
const MOST_LAGS = 20
const WRONG = 'Write a time, such as 10 min, 2 h or 2 days.'

const isNothing = (duration: string): boolean => secondsOf(duration) === 0

export const shapeOf = ({ least, most }: After): Shape => {
  if (most === undefined) return isNothing(least) ? 'any' : 'least'
  if (isNothing(most)) return 'right'
  return isNothing(least) ? 'most' : 'between'
}

/** The same wait in another shape: times that it has already stay where the shape has room for them. */
export const withShape = (after: After, shape: Shape): After => {
  const { most, ...rest } = after
  const least = isNothing(after.least) ? 'PT10M' : after.least
  const known = most === undefined || isNothing(most) ? undefined : most
  switch (shape) {
    case 'any':
      return { ...rest, least: 'PT0S' }
    case 'right':
      return { ...rest, least: 'PT0S', most: 'PT0S' }
    case 'least':
      return { ...rest, least }
    case 'most':
      return { ...rest, least: 'PT0S', most: known ?? 'PT20M' }
    case 'between':
      return { ...rest, least, most: known !== undefined && secondsOf(known) >= secondsOf(least) ? known : twice(least) }
  }
}
const twice = (duration: string): string => durationOf(secondsOf(duration) * 2)

/** A new wait, as most are meant. */
const usualLag = (step: string): After => ({ step, from: 'end', least: 'PT0S', kind: 'quality' })

/** Each wait of the step as a sentence of its own, and one to add another. */
export const lagSentences = (scene: Scene): readonly Parts<After[]>[] => {
  const { after } = scene.step
  return [...after.map((lag, index) => lagParts(lag, index, scene)), ...(after.length < MOST_LAGS ? moreLags(scene) : [])]
}

const lagParts = (lag: After, index: number, scene: Scene): Parts<After[]> => {
  const { step, names, name } = scene
  const which = `${name}, after ${names.stepName(lag.step)}`
  const at = `after.${index}`
  const put = (next: After): After[] => step.after.map((other, place) => (place === index ? next : other))
  const others = stepOptions(scene, (other) => other.id === lag.step || !step.after.some((one) => one.step === other.id))
  return [
    'It starts ',
    ...within(boundParts(lag, { at, which }), put),
    {
      kind: 'choice',
      at: `${at}.step`,
      label: `${which}: other step`,
      value: lag.step,
      options: [...others, [NONE, 'nothing any more', 'Otherwise']],
      choose: (other) =>
        other === NONE
          ? means(step.after.filter((_, place) => place !== index))
          : otherStep(scene, other, put({ ...lag, step: other })),
    },
    ' ',
    {
      kind: 'choice',
      at: `${at}.from`,
      label: `${which}: end or start`,
      value: lag.from,
      options: EDGES,
      choose: (from) => means(put({ ...lag, from: from === 'start' ? 'start' : 'end' })),
    },
    ...within(whyParts(lag, { at, which }), put),
    '.',
  ]
}

/** Refused when the other step waits for this one already, by whatever way. */
const otherStep = ({ evening, step, names, name }: Scene, other: string, value: After[]): Said<After[]> => {
  const through = waitsThrough(evening.steps, other, step.id)
  if (through === null) return means(value)
  const chain = through.slice(1, -1).map((id) => `“${names.stepName(id)}”`)
  return wrong(
    `“${names.stepName(other)}” waits for “${name}” already${chain.length > 0 ? `, by way of ${chain.join(' and ')}` : ''}. ` +
      'Take that away first, or choose another step: two steps cannot wait for each other.',
  )
}

interface LagPlace {
  readonly at: string
  readonly which: string
}

const boundParts = (lag: After, { at, which }: LagPlace): Parts<After> => {
  const shape = shapeOf(lag)
  const choice: Parts<After> = [
    {
      kind: 'choice',
      at: `${at}.shape`,
      label: `${which}: how soon`,
      value: shape,
      options: SHAPES,
      choose: (chosen) => means(withShape(lag, SHAPES.find(([known]) => known === chosen)?.[0] ?? 'any')),
    },
    ' ',
  ]
  const least: Parts<After> = [
    {
      kind: 'text',
      at: `${at}.least`,
      label: `${which}: at least`,
      text: durationText(lag.least),
      write: (text) => {
        const duration = readDuration(text)
        if (duration === null) return wrong(WRONG)
        const most = lag.most !== undefined && secondsOf(lag.most) < secondsOf(duration) ? { most: duration } : {}
        return means({ ...lag, least: duration, ...most })
      },
    },
  ]
  const most: Parts<After> = [
    {
      kind: 'text',
      at: `${at}.most`,
      label: `${which}: at most`,
      text: lag.most === undefined ? '' : durationText(lag.most),
      write: (text) => {
        const duration = readDuration(text)
        if (duration === null) return wrong(WRONG)
        return secondsOf(duration) < secondsOf(lag.least)
          ? wrong(`This cannot be shorter than the ${durationText(lag.least)} before it.`)
          : means({ ...lag, most: duration })
      },
    },
  ]
  if (shape === 'least') return [...choice, ...least, ' after ']
  if (shape === 'most') return [...choice, ...most, ' after ']
  return shape === 'between' ? [...choice, ...least, ' and ', ...most, ' after '] : choice
}

/** Whether the longest wait is a wish or a matter of safety; a least one holds either way. */
const whyParts = (lag: After, { at, which }: LagPlace): Parts<After> =>
  lag.most === undefined
    ? []
    : [
        ': ',
        {
          kind: 'choice',
          at: `${at}.kind`,
          label: `${which}: why`,
          value: lag.kind,
          options: KINDS,
          choose: (kind) => means({ ...lag, kind: kind === 'safety' ? 'safety' : 'quality' }),
        },
      ]

const moreLags = (scene: Scene): readonly Parts<After[]>[] => {
  const { step, name } = scene
  const waited = new Set(step.after.map((lag) => lag.step))
  const others = stepOptions(scene, (other: Step) => !waited.has(other.id))
  if (others.length === 0) return []
  const none = step.after.length === 0
  return [
    [
      none ? 'It waits for ' : 'And it waits for ',
      {
        kind: 'choice',
        at: 'after.more',
        label: `${name}: wait for another step`,
        value: NONE,
        options: [[NONE, none ? 'no other step' : 'nothing else'], ...others],
        choose: (other) => (other === NONE ? means(step.after) : otherStep(scene, other, [...step.after, usualLag(other)])),
      },
      '.',
    ],
  ]
}
