import { randomInt, randomUUID } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { dateAt } from '#lib/domain/time.ts'
import { isZone } from '#lib/domain/zone.ts'
import type { PrismaClient } from '#prisma/client/client.ts'
import { demoEvening } from '#prisma/demo/demo-evening.ts'
import { hashPassword, passwordIs } from '#server/auth/passwords.ts'
import { type DataFolder, writePrivately } from '#server/data-folder.ts'
import { plantEvening } from '#server/evenings/plant.ts'

/** Days from today to the demo evening: enough to do things ahead. */
const DAYS_AHEAD = 4

export interface DemoAccount {
  readonly email: string
  readonly password: string
}

/** Gives a fresh install the demo evening and two people to sign in as. Needs the live parts. */
export const seedDemo = async (db: PrismaClient, folder: DataFolder): Promise<void> => {
  const [own, evenings] = await Promise.all([
    db.user.count({ where: { demo: false } }),
    db.evening.count({ where: { members: { some: {} } } }),
  ])
  if (own > 0 || evenings > 0) return
  // What a kill has left half made.
  await db.$transaction([db.evening.deleteMany({}), db.user.deleteMany({ where: { demo: true } })])

  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone
  const demo = demoEvening(dateAt(isZone(zone) ? zone : 'UTC', Date.now(), DAYS_AHEAD))
  const passwordHash = await hashPassword(demoPassword(folder))
  const people = demo.cooks.slice(0, 2).map((cook) => ({
    id: randomUUID(),
    email: `${cook.id}@demo.example`,
    name: cook.name,
    passwordHash,
    demo: true,
  }))
  await db.user.createMany({ data: people })
  await plantEvening(
    { ...demo, zone: isZone(zone) ? zone : demo.zone },
    people.map((person, at) => ({
      userId: person.id,
      role: at === 0 ? 'host' : 'cook',
      cook: demo.cooks[at]?.id ?? null,
    })),
  )
}

/** Whom one can sign in as with the password that was made at first start; nobody once it was changed. */
export const demoAccounts = async (db: PrismaClient, folder: DataFolder): Promise<readonly DemoAccount[]> => {
  const users = await db.user.findMany({ where: { demo: true }, orderBy: { createdAt: 'asc' } })
  if (users.length === 0) return []
  const password = demoPassword(folder)
  const right = await Promise.all(users.map((user) => passwordIs(user.passwordHash, password)))
  return users.flatMap(({ email }, at) => (right[at] && email !== null ? [{ email, password }] : []))
}

/** Letters and digits that are not taken for one another. */
const SIGNS = 'abcdefghjkmnpqrstuvwxyz23456789'

const demoPassword = (folder: DataFolder): string => {
  const file = `${folder.path}/demo-password`
  if (!existsSync(file)) {
    const four = () => Array.from({ length: 4 }, () => SIGNS[randomInt(SIGNS.length)]).join('')
    writePrivately(file, `${four()}-${four()}-${four()}\n`)
  }
  return readFileSync(file, 'utf8').trim()
}
