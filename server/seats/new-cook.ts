import { randomBytes } from 'node:crypto'
import type * as Y from 'yjs'
import type { Evening } from '#lib/domain/evening.ts'
import type { Cook, Presence } from '#lib/domain/kitchen.ts'
import { DEFAULT_TEMPLATE, templateKit } from '#lib/domain/kitchen-templates.ts'
import { usualPresence } from '#lib/domain/presence.ts'
import { addCook, addKitchen } from '#lib/plan/commands/add.ts'

/** Where a new cook works: with the host, or at home, so many minutes away from the table. */
export type Works = { readonly kind: 'here' } | { readonly kind: 'home'; readonly minutes: number }

interface NewCook {
  readonly id: string
  /** Writes the cook, and the kitchen they come from, into the plan. */
  readonly write: (doc: Y.Doc) => void
}

/** Somebody who is not in the plan yet: with usual hours and, at home, a usual kitchen; they correct both themselves. */
export const newCook = (evening: Evening, name: string, works: Works): NewCook => {
  const mark = randomBytes(6).toString('hex')
  const id = `cook-${mark}`
  const home = `home-${mark}`
  const presence = works.kind === 'here' ? usualPresence(evening.host) : fromHome(evening, home, works.minutes)
  const cook: Cook = { id, name, host: false, eats: true, pace: 1, presence }
  return {
    id,
    write(doc) {
      if (works.kind === 'home') {
        const kit = templateKit(DEFAULT_TEMPLATE, (key) => `${mark}-${key}`)
        mustBe(addKitchen(doc, { id: home, name: `${name}’s kitchen`.slice(0, 80), toTable: `PT${works.minutes}M`, kit }))
      }
      mustBe(addCook(doc, cook))
    },
  }
}

const mustBe = (added: { readonly ok: boolean }): void => {
  if (!added.ok) throw new Error('a new cook could not be written into the plan')
}

const MINUTES_A_DAY = 24 * 60
const FIRST = 8 * 60

/** At home until it is time to leave, at the table when the guests come. */
const fromHome = (evening: Evening, home: string, minutes: number): Presence[] => {
  const { day, time } = evening.guestsFrom
  const comes = day * MINUTES_A_DAY + Number(time.slice(0, 2)) * 60 + Number(time.slice(3))
  const [before, today] = usualPresence(home)
  const leaves = comes - minutes
  return [
    ...(before ? [before] : []),
    ...(today && leaves > FIRST ? [{ ...today, to: atOf(leaves) }] : []),
    { kitchen: evening.host, from: evening.guestsFrom, to: { day: day + 1, time: '02:00' } },
  ]
}

const atOf = (minutes: number): Presence['to'] => {
  const day = Math.floor(minutes / MINUTES_A_DAY)
  const rest = minutes - day * MINUTES_A_DAY
  const two = (value: number) => String(value).padStart(2, '0')
  return { day, time: `${two(Math.floor(rest / 60))}:${two(rest % 60)}` }
}
