import { partiesOf } from './kit.ts'
import type { Hold, Scene } from './scene.ts'
import { overlaps, type Span } from './span.ts'
import { type Violation, violation } from './violation.ts'

const onOneRing = (a: Hold, b: Hold): boolean => a.kit.id === b.kit.id && a.unit === b.unit

const vesselOf = ({ by }: Hold): { readonly vessel: string; readonly place: string } | undefined => {
  if (!('activity' in by)) return undefined
  const { vessel, place } = by.activity.activity
  return vessel === undefined ? undefined : { vessel, place }
}

const inOneVessel = (a: Hold, b: Hold): boolean => {
  const [here, there] = [vesselOf(a), vesselOf(b)]
  return here !== undefined && there !== undefined && here.vessel === there.vessel && here.place === there.place
}

const rings = ({ holds }: Scene): Hold[] => holds.filter(({ kit }) => kit.kind === 'ring')

function* pairsOf<T>(items: readonly T[]): Generator<[T, T]> {
  for (const [index, a] of items.entries()) for (const b of items.slice(index + 1)) yield [a, b]
}

/** H11, second half: a ring is held by one thing at a time. */
export const h11Rings = (scene: Scene): Violation[] =>
  [...pairsOf(rings(scene))]
    .filter(([a, b]) => onOneRing(a, b) && !inOneVessel(a, b) && (a.planned || b.planned) && overlaps(a, b))
    .map(([a, b]) => violation('H11', Math.max(a.from, b.from), { what: 'overlap' }, { kit: [a.kit.id], ...partiesOf([a, b]) }))

/** H12: one vessel keeps one ring from its first start to its last hold's end, one activity at a time. */
export const h12 = (scene: Scene): Violation[] => {
  const holds = rings(scene)
  const within = [...pairsOf(holds)]
    .filter(([a, b]) => inOneVessel(a, b) && (a.planned || b.planned))
    .flatMap(([a, b]) => {
      const tell = (what: 'other-ring' | 'overlap') =>
        violation('H12', Math.max(a.from, b.from), { what }, { kit: [a.kit.id, b.kit.id], ...partiesOf([a, b]) })
      return [...(onOneRing(a, b) ? [] : [tell('other-ring')]), ...(overlaps(a, b) ? [tell('overlap')] : [])]
    })
  return [...within, ...gapClashes(holds)]
}

/** The time before a planned hold of a vessel in which its pan stands idle on the ring. */
interface Gap extends Span {
  readonly before: Hold
}

const gapsOf = (holds: readonly Hold[]): Gap[] =>
  holds.flatMap((hold) => {
    const earlier = holds.filter((other) => other !== hold && inOneVessel(hold, other) && other.from < hold.from)
    const idleFrom = Math.max(...earlier.map(({ to }) => to))
    return hold.planned && earlier.length > 0 && idleFrom < hold.from ? [{ from: idleFrom, to: hold.from, before: hold }] : []
  })

const gapClashes = (holds: readonly Hold[]): Violation[] => {
  const gaps = gapsOf(holds)
  const tell = (gap: Gap, at: number, others: readonly Hold[]) =>
    violation('H12', at, { what: 'overlap' }, { kit: [gap.before.kit.id], ...partiesOf([gap.before, ...others]) })
  const againstHolds = gaps.flatMap((gap) =>
    holds
      .filter((hold) => hold.planned && onOneRing(hold, gap.before) && !inOneVessel(hold, gap.before) && overlaps(hold, gap))
      .map((hold) => tell(gap, Math.max(gap.from, hold.from), [hold])),
  )
  const againstGaps = [...pairsOf(gaps)]
    .filter(([a, b]) => onOneRing(a.before, b.before) && !inOneVessel(a.before, b.before) && overlaps(a, b))
    .map(([a, b]) => tell(a, Math.max(a.from, b.from), [b.before]))
  return [...againstHolds, ...againstGaps]
}
