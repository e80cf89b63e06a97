import { countText, listText } from '#app/_words/clock.ts'
import { guestName, needsOf, replyWords } from '#app/_words/guest.ts'
import { needText } from '#app/_words/need.ts'
import type { Guest } from '#lib/domain/people.ts'
import { byStanding, type Standing, type Verdict } from '#lib/table/verdict.ts'

/** What a guest's best plate in a course is. */
export interface PlateFor {
  readonly course: string
  readonly guest: string
  /** null: the course has no dish yet. */
  readonly best: { readonly dish: string; readonly verdict: Verdict } | null
}

/** A plate that became another one; `before` null: there was no such guest, or no such course. */
export interface PlateChange {
  readonly course: string
  readonly guest: string
  readonly before: Standing | null
  readonly now: PlateFor['best']
}

const sameNeed = (a: { need: string; grade: string }, b: { need: string; grade: string }) =>
  a.need === b.need && a.grade === b.grade

/** What is new of one guest, in words that stand after the name. */
const changeOf = (before: Guest, now: Guest): readonly string[] => {
  const said: string[] = []
  if (before.reply !== now.reply) said.push(`${replyWords[now.reply]} (before: ${replyWords[before.reply]})`)
  if (now.reply === 'no') return said
  const [was, is] = [before.needs ?? [], now.needs ?? []]
  const fresh = is.filter((need) => !was.some((other) => sameNeed(need, other)))
  const gone = was.filter((need) => !is.some((other) => other.need === need.need))
  if (fresh.length > 0) said.push(listText(fresh.map(needText)))
  if (gone.length > 0) said.push(`no longer ${listText(gone.map(needText))}`)
  if (now.needs !== null && fresh.length === 0 && gone.length === 0 && before.needs === null) said.push(needsOf(now))
  if (now.needs === null && before.needs !== null) said.push(needsOf(now))
  if (before.child !== now.child) said.push(now.child ? 'a child' : 'a grown-up')
  if (before.portion !== now.portion) said.push(`${now.portion} ${now.portion === 1 ? 'portion' : 'portions'}`)
  if (before.arrives?.time !== now.arrives?.time)
    said.push(now.arrives ? `comes at ${now.arrives.time}` : 'comes with the others')
  return said
}

/** Who is new, gone or has changed something that the cooking hangs on, each in a sentence. */
export const guestChanges = (before: readonly Guest[], now: readonly Guest[]): readonly string[] => {
  const was = new Map(before.map((guest) => [guest.id, guest]))
  const is = new Set(now.map((guest) => guest.id))
  return [
    ...now.flatMap((guest) => {
      const old = was.get(guest.id)
      if (!old) return [`${guestName(guest)} is new: ${replyWords[guest.reply]}, ${needsOf(guest)}.`]
      const said = changeOf(old, guest)
      return said.length === 0 ? [] : [`${guestName(guest)}: ${said.join('; ')}.`]
    }),
    ...before.filter((guest) => !is.has(guest.id)).map((guest) => `${guestName(guest)} is off the list.`),
  ]
}

/** Which plates stand otherwise than before, by course; the worst first within one. */
export const plateChanges = (before: readonly PlateFor[], now: readonly PlateFor[]): readonly PlateChange[] => {
  const key = ({ course, guest }: PlateFor) => `${course} ${guest}`
  const was = new Map(before.map((plate) => [key(plate), plate]))
  const standing = (plate: PlateFor | undefined): Standing | null => (plate ? (plate.best?.verdict.kind ?? 'does-not') : null)
  const changed = now.flatMap((plate): PlateChange[] => {
    const old = was.get(key(plate))
    const same = old !== undefined && standing(old) === standing(plate) && old.best?.dish === plate.best?.dish
    return same ? [] : [{ course: plate.course, guest: plate.guest, before: standing(old), now: plate.best }]
  })
  const courses = [...new Set(now.map(({ course }) => course))]
  return changed.toSorted(
    (a, b) =>
      courses.indexOf(a.course) - courses.indexOf(b.course) ||
      byStanding(b.now?.verdict.kind ?? 'does-not', a.now?.verdict.kind ?? 'does-not'),
  )
}

/** "Nine have said yes; the evening is for eight." */
export const coversText = (coming: number, open: number, covers: number): string => {
  const who = coming === 0 ? 'Nobody has said yes yet' : `${countText(coming)} ${coming === 1 ? 'comes' : 'come'}`
  const rest = open === 0 ? '' : `, ${countText(open)} ${open === 1 ? 'is' : 'are'} not sure`
  const text = `${who}${rest}; the evening is for ${countText(covers)}.`
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`
}
