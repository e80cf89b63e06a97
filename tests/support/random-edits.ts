import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { addCourse, addDish, addStep } from '#lib/plan/commands/add.ts'
import { removeLag, setLag, setUses, setWay } from '#lib/plan/commands/method.ts'
import { moveCourse, moveDish, moveStep } from '#lib/plan/commands/move.ts'
import { remove, restore } from '#lib/plan/commands/remove.ts'
import { setEvening, setFields } from '#lib/plan/commands/set.ts'
import { typeText } from '#lib/plan/commands/type-text.ts'
import type { EntryRoot } from '#lib/plan/layout.ts'
import type { Place } from '#lib/plan/order-keys.ts'
import type { Dice } from './dice.ts'

/** Makes one random edit of a plan, as a cook at a screen would; some are refused by the commands, which is fine too. */
export const randomEdit = (doc: Y.Doc, dice: Dice, pattern: Evening, newId: () => string, isHost: boolean): void => {
  const idIn = (root: EntryRoot): string => dice.pick([...doc.getMap(root).keys()])
  const place = (root: EntryRoot): Place =>
    dice.pick<Place>([{ kind: 'first' }, { kind: 'last' }, { kind: 'after', id: idIn(root) }])
  const words = () => Array.from({ length: 1 + dice.int(0, 3) }, () => dice.pick(WORDS)).join(' ')
  const step = dice.pick(pattern.steps)
  const edits: (() => unknown)[] = [
    () => setFields(doc, 'steps', idIn('steps'), { does: words() }),
    () => typeText(doc, 'steps', idIn('steps'), 'does', { at: dice.int(0, 6), cut: dice.int(0, 2), put: words() }),
    () => setFields(doc, 'dishes', idIn('dishes'), { notes: words() }),
    () => setFields(doc, 'dishes', idIn('dishes'), { name: words(), portions: dice.int(0, 1) ? undefined : 1 + dice.int(0, 8) }),
    () => setFields(doc, 'courses', idIn('courses'), { name: words(), clearing: `PT${dice.int(0, 8)}M` }),
    () => setFields(doc, 'cooks', idIn('cooks'), { pace: 0.6 + dice.int(0, 9) / 10 }),
    () => addStep(doc, { ...without(step, 'order'), id: newId(), dish: idIn('dishes'), after: [] }, place('steps')),
    () => addDish(doc, { ...without(dice.pick(pattern.dishes), 'order'), id: newId(), course: idIn('courses') }, place('dishes')),
    () => addCourse(doc, { ...without(dice.pick(pattern.courses), 'order'), id: newId() }, place('courses')),
    () => moveCourse(doc, idIn('courses'), place('courses')),
    () => moveDish(doc, idIn('dishes'), idIn('courses'), place('dishes')),
    () => moveStep(doc, idIn('steps'), dice.int(0, 7) ? idIn('dishes') : null, place('steps')),
    () => setLag(doc, idIn('steps'), { step: idIn('steps'), from: 'end', least: `PT${dice.int(0, 8)}M`, kind: 'quality' }),
    () => removeLag(doc, idIn('steps'), idIn('steps')),
    () => setWay(doc, idIn('steps'), dice.int(0, 1), dice.pick(step.ways)),
    () => setUses(doc, idIn('steps'), 0, [{ kind: 'worktop', places: 1 + dice.int(0, 2) }]),
    () => remove(doc, 'steps', idIn('steps')),
    () => dice.chance(0.3) && remove(doc, 'courses', idIn('courses')),
    () => restore(doc, 'courses', idIn('courses')),
    () => remove(doc, 'dishes', idIn('dishes')),
    () => restore(doc, 'dishes', idIn('dishes')),
    () => restore(doc, 'steps', idIn('steps')),
    () => (isHost ? setEvening(doc, { covers: 1 + dice.int(0, 19), name: words() }) : undefined),
  ]
  dice.pick(edits)()
}

const WORDS = ['salt', 'late', 'warm the bowls', 'peel', '😀', 'sage', 'in brown butter', 'rest', 'covered', 'é', 'two trays']

const without = <T extends object, K extends keyof T>(value: T, key: K): Omit<T, K> => {
  const { [key]: _cut, ...rest } = value
  return rest
}
