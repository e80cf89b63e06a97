import type { Scene } from './scene.ts'
import { type Violation, violation } from './violation.ts'

/** H17: a dish is ready no later than its course's moment allows. */
export const h17 = ({ delivered }: Scene): Violation[] =>
  delivered.flatMap(({ delivery, served, ready }) => {
    const wanted = served.moment + delivery.late
    if (!served.planned || ready <= wanted) return []
    return [
      violation(
        'H17',
        ready,
        { what: 'late', wanted, found: ready },
        { deliveries: [delivery.id], servings: [delivery.serving] },
      ),
    ]
  })

/** H18: a dish that waits for the table is listed while it waits, and safety bounds of waiting and carrying hold. */
export const h18 = ({ schedule, delivered }: Scene): Violation[] => {
  const strays = schedule.keeping
    .filter(({ delivery }) => !delivered.some((one) => one.delivery.id === delivery))
    .map(({ delivery, from }) => violation('H18', from, { what: 'unknown' }, { deliveries: [delivery] }))
  const wrong = delivered.flatMap(({ delivery, served, ready, arrival, carry, happened }) => {
    const tell = (what: 'missing' | 'moved' | 'too-long', at: number, wanted: number, found: number) =>
      violation('H18', at, { what, wanted, found }, { deliveries: [delivery.id] })
    const listed = schedule.keeping.filter((keeping) => keeping.delivery === delivery.id)
    const due = ready < arrival ? 1 : 0
    const listing =
      listed.length !== due
        ? [tell('missing', ready, due, listed.length)]
        : listed
            .filter(({ from, to }) => from !== ready || to !== arrival)
            .map(({ from, to }) => tell('moved', from, arrival - ready, to - from))
    if (happened || !served.planned) return listing
    const { keeps } = delivery
    const waits = arrival - ready
    const carried = carry ? carry.to - carry.from : 0
    return [
      ...listing,
      ...(keeps.bound === 'safety' && waits > keeps.most ? [tell('too-long', ready, keeps.most, waits)] : []),
      ...(carry && delivery.carry?.bound === 'safety' && carried > delivery.carry.most
        ? [tell('too-long', carry.from, delivery.carry.most, carried)]
        : []),
    ]
  })
  return [...strays, ...wrong]
}
