import type { ClashKind } from '#lib/domain/running-order.ts'
import { listText } from './clock.ts'
import type { Names } from './names.ts'

type WishKind = Exclude<ClashKind, 'safety' | 'no-cook' | 'no-kit'>

/** What each kind of wish asks for, of the ids that follow the kind in its name. */
const wishes: Readonly<Record<WishKind, (names: Names, ids: readonly [string, string]) => string>> = {
  lag: (names, [after, step]) => `“${names.stepName(step)}” in time after “${names.stepName(after)}”`,
  keeps: (names, [dish]) => `${names.dishName(dish)} no longer than it keeps`,
  carry: (names, [dish]) => `${names.dishName(dish)} not too long on its way`,
  wait: (names, [course]) => `no long wait for ${names.courseName(course)}`,
  'sit-down': (names, [course]) => `${names.courseName(course)} when you sit down`,
}

const isWish = (kind: string): kind is WishKind => kind in wishes

/** "Nobody can have all of these: …", for the wishes of a proved fight. */
export const fightProvedText = (fight: readonly string[], names: Names): string => {
  const said = fight.flatMap((name) => {
    const [kind = '', first = '', second = ''] = name.split(' ')
    return isWish(kind) ? wishes[kind](names, [first, second]) : []
  })
  return said.length === 1 ? `Nobody can have ${said[0]}.` : `Nobody can have all of these: ${listText(said)}.`
}
