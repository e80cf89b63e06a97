import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import { nightKey } from '#lib/domain/people.ts'
import type { Asker } from './decide-claim.ts'
import { decideTell, type Earlier, type Tell } from './decide-tell.ts'
import { entryMap } from './layout.ts'
import { readPlan } from './read.ts'
import { nightInOrder } from './reading-order.ts'
import type { TellDecision, Write } from './tell-decision.ts'

/** Writes down what was told. Of the shared plan the server alone does this; anybody may in a copy of their own. */
export const writeTold = (doc: Y.Doc, writes: readonly Write[]): void => {
  const night = doc.getMap('night')
  doc.transact(() => {
    for (const write of writes) {
      if (write.root === 'dish') entryMap(doc, 'dishes', write.dish)?.set('state', write.state)
      else if (write.fact) night.set(write.key, write.fact)
      else night.delete(write.key)
    }
  })
}

/** The evening as it will read when that is written. */
export const afterWrites = (evening: Evening, writes: readonly Write[]): Evening => {
  let { dishes, night } = evening
  for (const write of writes) {
    if (write.root === 'dish') dishes = dishes.map((dish) => (dish.id === write.dish ? { ...dish, state: write.state } : dish))
    else {
      const others = night.filter((fact) => nightKey(fact) !== write.key)
      night = write.fact ? nightInOrder([...others, write.fact]) : others
    }
  }
  return { ...evening, dishes, night }
}

/** Decides in a copy of the plan what something told comes to, as the server would, and carries it out there. */
export const carryOutTell = (copy: Y.Doc, asker: Asker, tell: Tell, atMs: number, earlier?: Earlier): TellDecision => {
  const decision = decideTell(readPlan(copy).evening, asker, tell, atMs, earlier)
  if (decision.kind === 'write') writeTold(copy, decision.writes)
  return decision
}
