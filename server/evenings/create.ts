import { z } from 'zod'
import { line, Zone } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import { Evening } from '#lib/domain/evening.ts'
import type { Cook, Kit } from '#lib/domain/kitchen.ts'
import { DEFAULT_TEMPLATE, templateKit } from '#lib/domain/kitchen-templates.ts'
import type { Step } from '#lib/domain/menu.ts'
import { parseEvening, refusals } from '#lib/domain/parse.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import { isDate } from '#lib/domain/time.ts'
import { live } from '#server/live.ts'
import { plantEvening } from './plant.ts'
import type { EveningRefusal } from './refusal.ts'

const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be HH:MM')
const name = (most: number) => z.string().trim().min(1, 'must not be empty').pipe(line(most))

const NewEvening = z.strictObject({
  name: name(120),
  date: z.string().refine(isDate, 'must be a date, yyyy-mm-dd'),
  zone: Zone,
  sitDown: clock,
  /** Half an hour before sit-down when it is not said. */
  guestsFrom: clock.optional(),
  covers: z.int().min(1).max(60),
  /** Who else cooks; the first is a host too. */
  cooks: z.array(name(80)).max(23).optional(),
  menu: z
    .strictObject({
      courses: Evening.shape.courses,
      dishes: Evening.shape.dishes,
      steps: Evening.shape.steps,
      ingredients: Evening.shape.ingredients,
    })
    .optional(),
})
type NewEvening = z.infer<typeof NewEvening>

/** Anybody who has an account may give a dinner: they are its host and its first cook. It is made whole or not at all. */
export const createEvening = async (
  userId: string,
  data: unknown,
): Promise<Result<{ readonly eveningId: string }, EveningRefusal>> => {
  const parsed = NewEvening.safeParse(data)
  if (!parsed.success) return fail({ kind: 'invalid', refusals: refusals(parsed.error) })
  const user = await live().db.user.findUnique({ where: { id: userId } })
  if (!user) return fail({ kind: 'not-allowed' })
  // Whoever made their link could come in by it, to this evening too.
  if (user.email === null) return fail({ kind: 'needs-account' })
  const plan = parseEvening(eveningOf(parsed.data, user.name))
  if (!plan.ok) return fail({ kind: 'invalid', refusals: plan.error })
  return ok(await plantEvening(plan.value, [{ userId, role: 'host', cook: COOK }]))
}

const COOK = 'cook-1'
const HOME = 'home'

/** An evening in a kitchen as many have one: to begin with, and all of it to be changed. Every dish is made at home. */
export const eveningOf = (asked: NewEvening, hostName: string): Evening => {
  const steps = asked.menu?.steps ?? []
  return {
    format: 'tableward/1',
    id: 'new',
    name: asked.name,
    date: asked.date,
    zone: asked.zone,
    guestsFrom: { day: 0, time: asked.guestsFrom ?? halfAnHourBefore(asked.sitDown) },
    sitDown: { day: 0, time: asked.sitDown },
    covers: asked.covers,
    rules: 'strictest',
    host: HOME,
    kitchens: [{ id: HOME, name: 'Our kitchen', toTable: 'PT0S', kit: kitFor(steps) }],
    cooks: [hostName, ...(asked.cooks ?? [])].map(
      (cook, at): Cook => ({
        id: `cook-${at + 1}`,
        name: cook,
        host: at < 2,
        eats: true,
        pace: 1,
        presence: presenceFor(steps, asked.sitDown),
      }),
    ),
    courses: asked.menu?.courses ?? [],
    dishes: (asked.menu?.dishes ?? []).map((dish) => ({ ...dish, kitchen: HOME })),
    steps,
    ingredients: asked.menu?.ingredients ?? [],
    drinks: [],
    guests: [],
    claims: [],
    night: [],
  }
}

/** The usual kitchen, and a tool that a recipe asks for: who cooks by it has one. */
const kitFor = (steps: readonly Step[]): Kit[] => {
  const kit = templateKit(DEFAULT_TEMPLATE, (key) => key)
  const asked = new Set(
    steps.flatMap((step) => step.ways.flatMap((way) => way.uses.flatMap((use) => (use.kind === 'tool' ? [use.tool] : [])))),
  )
  const has = new Set(kit.flatMap((one) => (one.kind === 'tool' ? [one.tool] : [])))
  const missing = [...asked].filter((tool) => !has.has(tool))
  return [...kit, ...missing.map((tool, at): Kit => ({ id: `tool-${at + 1}`, kind: 'tool', tool, count: 1 }))]
}

/** The evening before and the day itself; evenings before that for a dish whose method is longer than those give. */
const presenceFor = (steps: readonly Step[], sitDown: string): Cook['presence'] => {
  const seconds = new Map<string | null, number>()
  for (const { dish, ways } of steps) seconds.set(dish, (seconds.get(dish) ?? 0) + secondsOf(ways[0]?.takes.likely ?? 'PT0S'))
  const days = Math.min(MOST_DAYS_BEFORE, Math.max(1, Math.ceil(Math.max(0, ...seconds.values()) / DAY)))
  return [
    ...Array.from({ length: days }, (_, at) => ({
      kitchen: HOME,
      from: { day: at - days, time: '17:00' },
      to: { day: at - days, time: '22:00' },
    })),
    { kitchen: HOME, from: { day: 0, time: morningOf(sitDown) }, to: { day: 1, time: '02:00' } },
  ]
}

/** From the evening before to the next dinner is a day and a little: what takes longer begins a day earlier. */
const DAY = 20 * 3600
const MOST_DAYS_BEFORE = 5

const minutesOfClock = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3))
const clockOf = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`

/** Never before midnight: the evening begins on its date. */
const halfAnHourBefore = (time: string): string => clockOf(Math.max(0, minutesOfClock(time) - 30))

/** Nine o'clock, earlier for a lunch. */
const morningOf = (sitDown: string): string => clockOf(Math.max(0, Math.min(9 * 60, minutesOfClock(sitDown) - 4 * 60)))
