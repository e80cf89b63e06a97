import { means, type Parts } from '#app/_ui/parts.ts'
import { roleWords, whereWords } from '#app/_words/care.ts'
import { StepRole } from '#lib/domain/menu.ts'
import type { Scene } from './scene.ts'
import { fields, type StepEdit } from './step-edit.ts'

const HOUSE = ''
const WHERE = ['kitchen', 'table', 'outside'] as const

/** "It is made in its own kitchen, in the kitchen, and belongs to Potato cake." A chore of the house stays a chore. */
export const belongsParts = (scene: Scene): Parts<StepEdit> => {
  const { evening, names, step, name } = scene
  return [
    'It is ',
    ...(step.dish === null && step.role === 'chore' ? [] : roleParts(scene)),
    {
      kind: 'choice',
      at: 'where',
      label: `Where ${name} is done`,
      value: step.where,
      options: WHERE.map((where) => [where, whereWords[where]] as const),
      choose: (where) => means(fields({ where: WHERE.find((known) => known === where) ?? step.where })),
    },
    ', and belongs to ',
    {
      kind: 'choice',
      at: 'dish',
      label: `${name}: which dish it belongs to`,
      value: step.dish ?? HOUSE,
      options: [
        ...evening.dishes.map((dish) => [dish.id, dish.name, names.courseName(dish.course)] as const),
        [HOUSE, 'the house, as a chore', 'Otherwise'],
      ],
      choose: (dish) => means({ kind: 'move', dish: dish === HOUSE ? null : dish }),
    },
    '.',
  ]
}

const roleParts = ({ step, name }: Scene): Parts<StepEdit> => [
  {
    kind: 'choice',
    at: 'role',
    label: `What kind of step ${name} is`,
    value: step.role,
    options: StepRole.options.map((role) => [role, roleWords[role]] as const),
    choose: (role) => means(fields({ role: StepRole.options.find((known) => known === role) ?? step.role })),
  },
  ', ',
]
