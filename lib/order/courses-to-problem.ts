import { ticksDown, ticksUp } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { servedCourses } from '#lib/domain/served-courses.ts'
import type { Delivery, Serving } from '#lib/scheduling/problem.ts'
import type { TickOf } from './clock.ts'
import { type CourseFact, factTick, type NightFacts } from './facts.ts'
import { byText } from './ids.ts'
import { useToProblem } from './kit-to-problem.ts'

/** Facts of a course in ticks; plates that came off without a word of the serving were served one likely meal before. */
const factOf = (evening: Evening, said: CourseFact | undefined, meal: number): Serving['fact'] => {
  const platesOff = said?.platesOff === undefined ? undefined : factTick(evening, said.platesOff, 'ended')
  const toTable =
    said?.toTable !== undefined
      ? factTick(evening, said.toTable, 'ended')
      : platesOff === undefined
        ? undefined
        : platesOff - meal
  if (toTable === undefined) return undefined
  return platesOff === undefined ? { toTable } : { toTable, platesOff: Math.max(toTable, platesOff) }
}

/** The served courses in ticks. When guests have said, or are told, to sit down at another time, that one counts. */
export const servingsToProblem = (evening: Evening, facts: NightFacts, tickOf: TickOf): Serving[] => {
  const sitDown = facts.sitDown === undefined ? tickOf(evening.sitDown, 'up') : factTick(evening, facts.sitDown, 'ended')
  const guestsFrom = Math.min(tickOf(evening.guestsFrom, 'up'), sitDown)
  const courses = servedCourses(evening)
  const first = courses.find((course) => !course.welcome)
  return courses.map((course, index) => {
    const notBefore = course.notBefore ? tickOf(course.notBefore, 'up') : undefined
    // Nobody waits until the children have eaten, nor they for who comes.
    const isBeside = course.children !== undefined || (course.welcome === true && courses[index + 1]?.children !== undefined)
    const childrenAt = course.children ? Math.min(sitDown, tickOf(course.children.at, 'up')) : undefined
    const wait = {
      ideal: [ticksUp(course.wait.ideal[0]), Math.max(ticksUp(course.wait.ideal[0]), ticksDown(course.wait.ideal[1]))],
      most: ticksDown(course.wait.most),
    } as const
    const role: Serving['role'] = course.welcome
      ? { kind: 'welcome', latest: childrenAt === undefined ? sitDown : Math.min(sitDown, childrenAt + wait.most) }
      : course === first
        ? { kind: 'first', sitDown }
        : { kind: 'next' }
    const earliest = {
      welcome: childrenAt ?? Math.min(sitDown, Math.max(guestsFrom, notBefore ?? guestsFrom)),
      first: Math.max(sitDown, notBefore ?? sitDown),
      next: notBefore,
    }[role.kind]
    const clearing = ticksUp(course.clearing)
    const likely = ticksUp(course.eating.likely)
    const said = facts.courses.get(course.id)
    const fact = factOf(evening, said, likely + clearing)
    const finished = said?.nearlyDone === undefined || !fact ? undefined : factTick(evening, said.nearlyDone, 'ended')
    return {
      id: course.id,
      ...(earliest === undefined ? {} : { earliest }),
      role,
      eating: isBeside ? 0 : finished === undefined || !fact ? likely : Math.max(0, finished - fact.toTable),
      clearing: isBeside ? 0 : clearing,
      pouring: ticksUp(course.pouring),
      wait: childrenAt === undefined ? wait : { ideal: [0, wait.ideal[1]], most: Math.max(wait.ideal[1], wait.most) },
      ...(fact ? { fact } : {}),
      ...(course.lead === undefined ? {} : { lead: course.lead }),
    }
  })
}

/** The dishes that are on and have steps, by id. A waiting dish stands in the host's kitchen. */
export const deliveriesToProblem = (evening: Evening, withSteps: ReadonlySet<string>): Delivery[] =>
  evening.dishes
    .filter((dish) => dish.state === 'on' && withSteps.has(dish.id))
    .map((dish) => ({
      id: dish.id,
      serving: dish.course,
      early: ticksDown(dish.toTable.early),
      late: ticksDown(dish.toTable.late),
      keeps: {
        most: ticksDown(dish.keeps.most),
        bound: dish.keeps.kind,
        place: evening.host,
        uses: dish.keeps.uses.map(useToProblem),
      },
      ...(dish.carry ? { carry: { most: ticksDown(dish.carry.most), bound: dish.carry.kind } } : {}),
    }))
    .sort((a, b) => byText(a.id, b.id))
