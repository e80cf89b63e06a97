import { means, type Parts, type Said, wrong } from '#app/_ui/parts.ts'
import { atText, dayName } from '#app/_words/clock.ts'
import { readClock } from '#app/_words/read-clock.ts'
import type { At } from '#lib/domain/atoms.ts'
import { epochMsOf } from '#lib/domain/time.ts'
import type { Scene } from './scene.ts'
import type { StepPatch } from './step-edit.ts'

const ANY = 'any'
const DAYS = [-7, -6, -5, -4, -3, -2, -1, 0, 1] as const

type Edge = 'earliest' | 'latest'

/** "It can be done from Thursday, 17:00, and must be over by the day itself, 14:00." */
export const windowParts = (scene: Scene): Parts<StepPatch> => [
  'It can be done ',
  ...edgeParts(scene, 'earliest', 'from', 'from when a cook is there'),
  ', and must be over ',
  ...edgeParts(scene, 'latest', 'by', 'in time for its course'),
  '.',
]

const dayWords = (date: string, day: number): string => {
  const name = dayName(date, day)
  if (day === 0) return `${name}, the day itself`
  if (day === 1) return `${name}, the day after`
  return day === -7 ? `${name} a week before` : name
}

const edgeParts = (scene: Scene, edge: Edge, before: string, none: string): Parts<StepPatch> => {
  const { evening, step, name } = scene
  const at = step[edge]
  const usual = edge === 'earliest' ? '09:00' : evening.sitDown.time
  return [
    {
      kind: 'choice',
      at: `${edge}.day`,
      label: `${name}: ${edge} day`,
      value: at === undefined ? ANY : String(at.day),
      options: [[ANY, none], ...DAYS.map((day) => [String(day), `${before} ${dayWords(evening.date, day)}`] as const)],
      choose: (day) =>
        day === ANY ? means({ [edge]: undefined }) : checked(scene, edge, { day: Number(day), time: at?.time ?? usual }),
    },
    ...(at === undefined
      ? []
      : ([
          ', ',
          {
            kind: 'text',
            at: `${edge}.time`,
            label: `${name}: ${edge} time`,
            text: at.time,
            write: (text) => {
              const time = readClock(text)
              return time === null ? wrong('Write a time of day, such as 17:00.') : checked(scene, edge, { day: at.day, time })
            },
          },
        ] satisfies Parts<StepPatch>)),
  ]
}

const checked = ({ evening, step }: Scene, edge: Edge, at: At): Said<StepPatch> => {
  const [from, to] = edge === 'earliest' ? [at, step.latest] : [step.earliest, at]
  if (from && to && epochMsOf(evening, from) >= epochMsOf(evening, to))
    return wrong(
      edge === 'earliest'
        ? `It must be over by ${atText(evening.date, to)}: let it begin before that, or change that first.`
        : `It can only be done from ${atText(evening.date, from)}: let it end after that, or change that first.`,
    )
  return means({ [edge]: at })
}
