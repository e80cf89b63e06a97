import { blankWay } from '#app/_menu/blank.ts'
import { means, type Parts } from '#app/_ui/parts.ts'
import { durationOf, secondsOf } from '#lib/domain/duration.ts'
import type { Way } from '#lib/domain/menu.ts'
import { spanFromUsual } from '#lib/domain/usual-span.ts'
import type { Scene } from './scene.ts'
import { fields, type StepEdit, type StepPatch } from './step-edit.ts'

/** A usual step in one tap: what it is called when it has no words yet, and the fields that are usual for it. */
interface Preset {
  readonly key: string
  readonly words: string
  readonly does: string
  readonly patch: (scene: Scene) => StepPatch
}

const IN_AND_OUT: Way['touches'] = [
  { when: 'in', takes: 'PT1M', lateBy: 'PT0S' },
  { when: 'out', takes: 'PT1M', lateBy: 'PT2M' },
]

const way = (minutes: number, rest: Partial<Omit<Way, 'takes'>>): Way => ({
  ...blankWay,
  ...rest,
  takes: spanFromUsual(minutes * 60),
})

const carrying = ({ kitchen }: Scene): number => Math.max(5, Math.ceil(secondsOf(kitchen?.toTable ?? 'PT0S') / 60))

/** The lengths are what is common at home; no source. They are to be written over. */
const PRESETS: readonly Preset[] = [
  {
    key: 'hand',
    words: 'By hand',
    does: 'Prepare by hand',
    patch: () => ({ ways: [way(10, { uses: [{ kind: 'worktop', places: 1 }] })] }),
  },
  {
    key: 'oven',
    words: 'Into the oven',
    does: 'Into the oven',
    patch: () => ({
      ways: [
        way(45, {
          care: 'leave',
          touches: IN_AND_OUT,
          uses: [{ kind: 'oven', shelves: 1, lowC: 180, highC: 190, preheated: true }],
        }),
      ],
    }),
  },
  {
    key: 'ring',
    words: 'On a ring',
    does: 'Cook on the ring',
    patch: () => ({ ways: [way(20, { care: 'eye', uses: [{ kind: 'ring', size: 'medium' }] })] }),
  },
  {
    key: 'simmer',
    words: 'Simmer alone',
    does: 'Simmer',
    patch: () => ({
      ways: [
        way(45, {
          care: 'leave',
          touches: [{ when: { every: 'PT15M' }, does: 'stir', takes: 'PT1M', lateBy: 'PT5M' }],
          uses: [{ kind: 'ring', size: 'medium' }],
        }),
      ],
    }),
  },
  {
    key: 'rest',
    words: 'Rest',
    does: 'Rest',
    patch: () => ({ ways: [{ ...way(15, { care: 'leave' }), upTo: 'PT30M' }] }),
  },
  {
    key: 'chill',
    words: 'Chill',
    does: 'Chill',
    patch: () => ({
      ways: [
        {
          ...way(120, { care: 'leave', touches: IN_AND_OUT, uses: [{ kind: 'cold', keep: 'cold', places: 1 }] }),
          upTo: 'P1D',
        },
      ],
    }),
  },
  {
    key: 'freeze',
    words: 'Freeze',
    does: 'Freeze',
    patch: () => ({
      ways: [
        {
          ...way(360, { care: 'leave', touches: IN_AND_OUT, uses: [{ kind: 'cold', keep: 'frozen', places: 1 }] }),
          upTo: 'P7D',
        },
      ],
    }),
  },
  {
    key: 'plate',
    words: 'Plate',
    does: 'Put on the plates',
    patch: () => ({ role: 'plate', ways: [way(5, { uses: [{ kind: 'worktop', places: 4 }] })] }),
  },
  {
    key: 'carry',
    words: 'Carry it over',
    does: 'Carry it over',
    patch: (scene) => ({ role: 'carry', where: 'outside', ways: [way(carrying(scene), {})] }),
  },
]

/** What of them a chore of the house can be: bottles are chilled and ice is frozen, but nothing is cooked. */
const FOR_CHORES: readonly string[] = ['hand', 'chill', 'freeze']

/** The usual steps that make sense here: a carry only for a dish of another kitchen, no cooking among the chores. */
const fitting = ({ evening, dish, step }: Scene): readonly Preset[] =>
  PRESETS.filter(({ key }) => {
    if (step.dish === null) return FOR_CHORES.includes(key)
    return key !== 'carry' || (dish !== undefined && dish.kitchen !== evening.host)
  })

const sameWay = (a: Way, b: Way): boolean => JSON.stringify(a) === JSON.stringify(b)

/** Nothing has been said of it yet but, perhaps, its words. */
export const isBlank = ({ step }: Scene): boolean => step.ways.every((one) => sameWay(one, blankWay))

/** Minutes that somebody wrote stay: only the blank's and a preset's own are replaced. */
const keepMinutes = (scene: Scene, patch: StepPatch): StepPatch => {
  const [before] = scene.step.ways
  const [after] = patch.ways ?? []
  const known = [blankWay, ...PRESETS.flatMap((preset) => preset.patch(scene).ways ?? [])]
  if (!before || !after || known.some((one) => sameTakes(one, before))) return patch
  const upTo = after.upTo === undefined ? {} : { upTo: atLeast(after.upTo, before.takes.most) }
  return { ...patch, ways: [{ ...after, ...upTo, takes: before.takes }] }
}
const sameTakes = (a: Way, b: Way): boolean => JSON.stringify(a.takes) === JSON.stringify(b.takes)
const atLeast = (a: string, b: string): string => durationOf(Math.max(secondsOf(a), secondsOf(b)))

/** A usual step as a change: words only where there are none. */
const applyPreset = (scene: Scene, preset: Preset): StepEdit => {
  const { step } = scene
  const patch = keepMinutes(scene, preset.patch(scene))
  const role = patch.role === undefined && step.role === 'plate' ? { role: 'make' as const } : {}
  return fields({ ...(step.does.trim() === '' ? { does: preset.does } : {}), ...role, ...patch })
}

/** The usual steps, each to be tapped. */
export const presetParts = (scene: Scene): Parts<StepEdit> =>
  fitting(scene).map((preset) => ({
    kind: 'press',
    at: `preset.${preset.key}`,
    label: `${scene.name}: ${preset.words}`,
    words: preset.words,
    press: () => means(applyPreset(scene, preset)),
  }))

/** When it is done, in one tap: the day before, that morning, at the last. */
export const aheadParts = ({ name, step }: Scene): Parts<StepEdit> =>
  step.earliest !== undefined || step.latest !== undefined
    ? []
    : [
        ahead('before', 'Ahead: the day before', name, {
          earliest: { day: -1, time: '09:00' },
          latest: { day: -1, time: '22:00' },
        }),
        ahead('early', 'From the day before', name, { earliest: { day: -1, time: '09:00' } }),
        ahead('morning', 'That morning', name, { earliest: { day: 0, time: '08:00' }, latest: { day: 0, time: '12:00' } }),
      ]

const ahead = (key: string, words: string, name: string, patch: StepPatch): Parts<StepEdit>[number] => ({
  kind: 'press',
  at: `ahead.${key}`,
  label: `${name}: ${words}`,
  words,
  press: () => means(fields(patch)),
})
