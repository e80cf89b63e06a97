import { z } from 'zod'
import { line, Zone } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening, refusals } from '#lib/domain/parse.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { isDate } from '#lib/domain/time.ts'
import { live } from '#server/live.ts'
import { plantEvening } from './plant.ts'
import type { EveningRefusal } from './refusal.ts'

const NewEvening = z.strictObject({
  name: z.string().trim().min(1, 'must not be empty').pipe(line(120)),
  date: z.string().refine(isDate, 'must be a date, yyyy-mm-dd'),
  zone: Zone,
  sitDown: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be HH:MM'),
  covers: z.int().min(1).max(60),
})
type NewEvening = z.infer<typeof NewEvening>

/** Anybody who has an account may give a dinner: they are its host and its first cook. */
export const createEvening = async (
  userId: string,
  data: unknown,
): Promise<Result<{ readonly eveningId: string }, EveningRefusal>> => {
  const parsed = NewEvening.safeParse(data)
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  const user = await live().db.user.findUnique({ where: { id: userId } })
  if (!user) return fail({ kind: 'not-allowed' })
  const plan = parseEvening(emptyEvening(parsed.data, user.name))
  if (!plan.ok) return fail({ kind: 'invalid', refusals: plan.error })
  return ok(await plantEvening(plan.value, [{ userId, role: 'host', cook: COOK }]))
}

const COOK = 'cook-1'
const HOME = 'home'

/** An evening without a menu in a kitchen as many have one: to begin with, and all of it to be changed. */
export const emptyEvening = (asked: NewEvening, cookName: string): Evening => ({
  format: 'tableward/1',
  id: 'new',
  name: asked.name,
  date: asked.date,
  zone: asked.zone,
  guestsFrom: { day: 0, time: halfAnHourBefore(asked.sitDown) },
  sitDown: { day: 0, time: asked.sitDown },
  covers: asked.covers,
  rules: 'strictest',
  host: HOME,
  kitchens: [
    {
      id: HOME,
      name: 'Our kitchen',
      toTable: 'PT0S',
      kit: [
        { id: 'oven', kind: 'oven', name: 'Oven', shelves: 2, maxC: 250, upPerMin: 8, downPerMin: 3 },
        { id: 'ring-small', kind: 'ring', size: 'small', count: 1 },
        { id: 'ring-medium', kind: 'ring', size: 'medium', count: 2 },
        { id: 'ring-large', kind: 'ring', size: 'large', count: 1 },
        { id: 'fridge', kind: 'cold', keep: 'cold', places: 6 },
        { id: 'freezer', kind: 'cold', keep: 'frozen', places: 2 },
        { id: 'worktop', kind: 'worktop', places: 8 },
        { id: 'sink', kind: 'tool', tool: 'sink', count: 1 },
      ],
    },
  ],
  cooks: [
    {
      id: COOK,
      name: cookName,
      host: true,
      eats: true,
      pace: 1,
      presence: [
        { kitchen: HOME, from: { day: -1, time: '17:00' }, to: { day: -1, time: '22:00' } },
        { kitchen: HOME, from: { day: 0, time: morningOf(asked.sitDown) }, to: { day: 1, time: '02:00' } },
      ],
    },
  ],
  courses: [],
  dishes: [],
  steps: [],
  ingredients: [],
  drinks: [],
  guests: [],
  claims: [],
  night: [],
})

const minutesOfClock = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3))
const clockOf = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`

/** Never before midnight: the evening begins on its date. */
const halfAnHourBefore = (time: string): string => clockOf(Math.max(0, minutesOfClock(time) - 30))

/** Nine o'clock, earlier for a lunch. */
const morningOf = (sitDown: string): string => clockOf(Math.max(0, Math.min(9 * 60, minutesOfClock(sitDown) - 4 * 60)))
