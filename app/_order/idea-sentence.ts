import { means, type Parts, readOut, type TextBlank, wrong } from '#app/_ui/parts.ts'
import { atText } from '#app/_words/clock.ts'
import { minutesText, readDuration } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import { readUntil } from '#app/_words/presence.ts'
import { readClock } from '#app/_words/read-clock.ts'
import { readCount } from '#app/_words/read-count.ts'
import { wayText } from '#app/_words/way.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { firstIdea, type Idea, type IdeaKind, otherWay } from './idea.ts'

interface Around {
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
  readonly freshId: string
}

const KINDS: readonly (readonly [IdeaKind, string])[] = [
  ['sit-down', 'everybody sat down'],
  ['course', 'a course came'],
  ['cook', 'somebody helped:'],
  ['covers', 'you were'],
  ['way', 'a step was done'],
]

/** "What if everybody sat down at 20:00?", each underlined word to be changed. */
export const ideaParts = (idea: Idea, around: Around): Parts<Idea> => {
  const { evening, order, freshId } = around
  const kinds = KINDS.filter(([kind]) => firstIdea(kind, evening, order, freshId) !== null)
  return [
    'What if ',
    {
      kind: 'choice',
      at: 'kind',
      label: 'What if: what would be otherwise',
      value: idea.kind,
      options: kinds,
      choose: (value) => {
        const kind = kinds.find(([one]) => one === value)?.[0]
        const first = kind && firstIdea(kind, evening, order, freshId)
        return first ? means(first) : wrong('There is nothing of that kind to try.')
      },
    },
    ' ',
    ...rest(idea, around),
    '?',
  ]
}

/** "what if everybody sat down at 20:00". */
export const ideaText = (idea: Idea, around: Around): string =>
  readOut(ideaParts(idea, around)).replace(/^W/, 'w').replace(/\?$/, '')

const NO_CLOCK = 'Write a time, such as 20:00.'

const rest = (idea: Idea, { evening, order, names }: Around): Parts<Idea> => {
  const clock = (at: string, label: string, text: string, write: (time: string) => Idea): TextBlank<Idea> => ({
    kind: 'text',
    at,
    label: `What if: ${label}`,
    text,
    write: (said) => {
      const time = readClock(said)
      return time === null ? wrong(NO_CLOCK) : means(write(time))
    },
  })
  switch (idea.kind) {
    case 'sit-down':
      return ['at ', clock('at', 'when you sit down', idea.at.time, (time) => ({ ...idea, at: { ...idea.at, time } }))]
    case 'course':
      return [
        {
          kind: 'choice',
          at: 'course',
          label: 'What if: which course',
          value: idea.course,
          options: order.courses.map(({ course }) => [course, names.courseName(course)] as const),
          choose: (course) => means({ ...idea, course }),
        },
        ' ',
        {
          kind: 'text',
          at: 'minutes',
          label: 'What if: by how much',
          text: minutesText(Math.abs(idea.minutes)),
          write: (said) => {
            const read = readDuration(said)
            const minutes = read === null ? 0 : Math.round(secondsOf(read) / 60)
            if (minutes < 1 || minutes > 180) return wrong('Write minutes from 1 to 180, such as 15 min.')
            return means({ ...idea, minutes: Math.sign(idea.minutes) * minutes })
          },
        },
        ' ',
        {
          kind: 'choice',
          at: 'side',
          label: 'What if: later or sooner',
          value: idea.minutes < 0 ? 'sooner' : 'later',
          options: [
            ['later', 'later'],
            ['sooner', 'sooner'],
          ],
          choose: (side) => means({ ...idea, minutes: Math.abs(idea.minutes) * (side === 'sooner' ? -1 : 1) }),
        },
      ]
    case 'cook':
      return [
        {
          kind: 'text',
          at: 'name',
          label: 'What if: who helped',
          text: idea.name,
          write: (said) => {
            const name = said.trim()
            return name === '' || name.length > 80 ? wrong('Write a name.') : means({ ...idea, name })
          },
        },
        ', from ',
        clock('from', 'from when they helped', idea.from.time, (time) => ({ ...idea, from: { ...idea.from, time } })),
        ' to ',
        {
          kind: 'text',
          at: 'to',
          label: 'What if: until when they helped',
          text: idea.to.day === idea.from.day ? idea.to.time : atText(evening.date, idea.to),
          write: (said) => {
            const to = readUntil(said, evening.date, idea.from)
            return to === null ? wrong(NO_CLOCK) : means({ ...idea, to })
          },
        },
        ...(evening.kitchens.length < 2
          ? []
          : [
              ' in ',
              {
                kind: 'choice',
                at: 'kitchen',
                label: 'What if: in which kitchen',
                value: idea.kitchen,
                options: evening.kitchens.map(({ id }) => [id, names.kitchenName(id)] as const),
                choose: (kitchen: string) => means({ ...idea, kitchen }),
              } as const,
            ]),
        ' and ',
        {
          kind: 'choice',
          at: 'eats',
          label: 'What if: whether they eat with you',
          value: idea.eats ? 'yes' : 'no',
          options: [
            ['yes', 'ate with you'],
            ['no', 'did not sit down'],
          ],
          choose: (eats) => means({ ...idea, eats: eats === 'yes' }),
        },
      ]
    case 'covers':
      return [
        {
          kind: 'text',
          at: 'covers',
          label: 'What if: how many people',
          text: String(idea.covers),
          write: (said) => {
            const covers = readCount(said)
            return covers === null || covers > 60 ? wrong('Write how many people, from 1 to 60.') : means({ ...idea, covers })
          },
        },
        ' people',
      ]
    case 'way': {
      const ways = evening.steps.find(({ id }) => id === idea.step)?.ways ?? []
      return [
        'otherwise: ',
        {
          kind: 'choice',
          at: 'step',
          label: 'What if: which step',
          value: idea.step,
          options: evening.steps
            .filter((step) => step.ways.length > 1 && order.cues.some((cue) => cue.step === step.id))
            .map(({ id }) => [id, `“${names.stepName(id)}”`] as const),
          choose: (step) => means({ ...idea, step, way: otherWay(step, evening, order) }),
        },
        ', ',
        {
          kind: 'choice',
          at: 'way',
          label: 'What if: in which way',
          value: String(idea.way),
          options: ways.map((way, index) => [String(index), wayText(way).replace(/\.$/, '')] as const),
          choose: (way) => means({ ...idea, way: Number(way) }),
        },
      ]
    }
  }
}
