import * as Y from 'yjs'
import { Step } from '#lib/domain/menu.ts'
import { Offer } from '#lib/domain/offer.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { addOffer, addStep } from './add.ts'
import { type Brought, bringDish } from './bring.ts'
import { type EditFault, refusedBy, refusedFor } from './fault.ts'
import { remove } from './remove.ts'
import { type Edited, type Patch, setFields } from './set.ts'
import { idTaken, presentEntry } from './siblings.ts'

/** What a cook says of an offer; the answer to it is the hosts'. */
export type Offered = Omit<Offer, 'order' | 'state' | 'withdrawn' | 'why' | 'dish'>

/** What accepted food becomes: a dish, a chore where its vessel goes home, and what of the offer is otherwise now. */
export interface Accepted {
  readonly brought: Brought
  readonly chore: Omit<Step, 'order'> | null
  readonly form: Pick<Patch<'offers'>, 'arrives' | 'how' | 'box' | 'atHost'>
}

/** Offers something, in the name of the cook it names; the server lets a cook offer in their own name only. */
export const makeOffer = (doc: Y.Doc, offered: Offered): Result<string, EditFault> =>
  addOffer(doc, { ...offered, state: 'offered' })

/** Says something else of an offer. What was accepted is in the plan already and is changed there. */
export const changeOffer = (
  doc: Y.Doc,
  id: string,
  patch: Omit<Patch<'offers'>, 'state' | 'withdrawn' | 'why' | 'dish' | 'cook'>,
): Edited => {
  const state = stateIn(doc, id)
  if (state === null) return unknown(id)
  return state === 'accepted'
    ? fail(refusedFor('state', 'was accepted: it is changed in the plan'))
    : setFields(doc, 'offers', id, patch)
}

/** Its cook does not bring it after all. What it became stays in the plan until a host takes it out. */
export const withdrawOffer = (doc: Y.Doc, id: string): Edited => setFields(doc, 'offers', id, { withdrawn: true })
/** Its cook brings it after all. */
export const standByOffer = (doc: Y.Doc, id: string): Edited => setFields(doc, 'offers', id, { withdrawn: undefined })

/** No, thank you; with a reason if there is one. What was accepted is taken back first. */
export const declineOffer = (doc: Y.Doc, id: string, why?: string): Edited => {
  const state = stateIn(doc, id)
  if (state === null) return unknown(id)
  return state === 'accepted'
    ? fail(refusedFor('state', 'was accepted: take that back first'))
    : setFields(doc, 'offers', id, { state: 'declined', why: why || undefined })
}

/**
 * Yes: what it becomes is added in the same update, so that one undo takes all of it back; null for a thing. All of it or nothing.
 */
export const acceptOffer = (doc: Y.Doc, id: string, accepted: Accepted | null): Edited => {
  const state = stateIn(doc, id)
  if (state === null) return unknown(id)
  if (state === 'accepted') return fail(refusedFor('state', 'was accepted already'))
  const fault = accepted?.chore ? choreFault(doc, accepted.chore) : null
  if (fault) return fail(fault)
  return doc.transact(() => {
    const dish = accepted ? bringDish(doc, accepted.brought) : ok(undefined)
    if (!dish.ok) return dish
    if (accepted?.chore) addStep(doc, accepted.chore)
    return setFields(doc, 'offers', id, { ...accepted?.form, state: 'accepted', why: undefined, dish: dish.value })
  })
}

/** Takes a yes back later, when undo is no more: the dish that it became goes, and the chores that wait for it, and it is open again. */
export const takeBackAcceptance = (doc: Y.Doc, id: string): Edited => {
  const map = presentEntry(doc, 'offers', id)
  if (!map) return unknown(id)
  const dish: unknown = map.get('dish')
  return doc.transact(() => {
    if (typeof dish === 'string') {
      for (const chore of choresOf(doc, dish)) remove(doc, 'steps', chore)
      if (presentEntry(doc, 'dishes', dish)) remove(doc, 'dishes', dish)
    }
    return setFields(doc, 'offers', id, { state: 'offered', dish: undefined })
  })
}

const choreFault = (doc: Y.Doc, chore: Omit<Step, 'order'>): EditFault | null => {
  const parsed = Step.safeParse({ ...chore, order: '0' })
  if (!parsed.success) return refusedBy(parsed.error)
  return idTaken(doc, chore.id) ? { kind: 'id-taken', id: chore.id } : null
}

/** Chores of the house that wait for steps of that dish and for nothing else. */
const choresOf = (doc: Y.Doc, dish: string): string[] => {
  const steps = [...doc.getMap('steps').entries()].flatMap(([id, map]) =>
    map instanceof Y.Map && map.get('gone') !== true ? [{ id, map }] : [],
  )
  const own = new Set(steps.flatMap(({ id, map }) => (map.get('dish') === dish ? [id] : [])))
  return steps.flatMap(({ id, map }) => {
    const after = Step.shape.after.safeParse(map.get('after')).data ?? []
    return map.get('dish') === null && after.length > 0 && after.every(({ step }) => own.has(step)) ? [id] : []
  })
}

const unknown = (id: string): Edited => fail({ kind: 'unknown-entry', root: 'offers', id })

const stateIn = (doc: Y.Doc, id: string): Offer['state'] | null =>
  Offer.shape.state.safeParse(presentEntry(doc, 'offers', id)?.get('state')).data ?? null
