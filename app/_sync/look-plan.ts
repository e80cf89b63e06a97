import type { Company } from './company.ts'
import type { Look } from './looks.ts'
import type { OrderState, Plan } from './plan.ts'

const never = () => {
  throw new Error('a first look is drawn and nothing else: nobody can do anything in it')
}
const nothing = () => () => undefined

const orderOf = (message: Look['message'], last: Look['last']): OrderState => {
  if (message?.kind === 'order') {
    const { order, more, looking } = message
    return { kind: 'current', order, ...(more ? { more } : {}), ...(looking ? { looking } : {}) }
  }
  if (message?.kind === 'failed') return { kind: 'failed', order: last, why: message.why }
  return last ? { kind: 'planning', order: last } : { kind: 'none' }
}

/** The plan of a first look: it can be read. */
export const planOfLook = ({ evening, message, last, me, nowMs }: Look): Plan => ({
  // Screens hand it on to commands, and those run when somebody does something.
  doc: {} as Plan['doc'],
  evening,
  reports: [],
  me,
  link: { kind: 'connecting' },
  order: orderOf(message, last),
  asking: new Map(),
  send: never,
  tell: never,
  waitingTells: 0,
  told: [],
  hear: never,
  edit: never,
  tryOut: never,
  undo: never,
  redo: never,
  canUndo: false,
  canRedo: false,
  onGuests: nothing,
  onAlerts: nothing,
  now: () => nowMs,
})

export const companyOfLook: Company = { others: () => [], stand: () => undefined, subscribe: nothing }
