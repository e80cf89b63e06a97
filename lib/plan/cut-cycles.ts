/** An arrow from one node to another that it depends on. */
export interface Arrow {
  readonly from: string
  readonly to: string
}

/**
 * The arrows that close a circle when arrows are taken in one by one, in the order of their ends' ids: the same ones on
 * every device, whatever order the document gives them in. An arrow to itself is one of them.
 */
export const circularArrows = <A extends Arrow>(arrows: readonly A[]): ReadonlySet<A> => {
  const cut = new Set<A>()
  const suspects = onCircles(arrows)
  if (suspects.length === 0) return cut
  const kept = new Map<string, string[]>()
  for (const arrow of suspects.toSorted(byEnds)) {
    if (reaches(kept, arrow.to, arrow.from)) cut.add(arrow)
    else kept.set(arrow.from, [...(kept.get(arrow.from) ?? []), arrow.to])
  }
  return cut
}

const byEnds = (a: Arrow, b: Arrow): number =>
  a.from < b.from ? -1 : a.from > b.from ? 1 : a.to < b.to ? -1 : a.to > b.to ? 1 : 0

/** Peels off nodes that nothing depends on, again and again (Kahn 1962); arrows between what remains may be circular. */
const onCircles = <A extends Arrow>(arrows: readonly A[]): A[] => {
  const entering = new Map<string, number>()
  const leaving = new Map<string, A[]>()
  for (const arrow of arrows) {
    entering.set(arrow.from, entering.get(arrow.from) ?? 0)
    entering.set(arrow.to, (entering.get(arrow.to) ?? 0) + 1)
    const known = leaving.get(arrow.from)
    if (known) known.push(arrow)
    else leaving.set(arrow.from, [arrow])
  }
  const free = [...entering].filter(([, count]) => count === 0).map(([node]) => node)
  for (let node = free.pop(); node !== undefined; node = free.pop()) {
    entering.delete(node)
    for (const arrow of leaving.get(node) ?? []) {
      const left = (entering.get(arrow.to) ?? 0) - 1
      entering.set(arrow.to, left)
      if (left === 0) free.push(arrow.to)
    }
  }
  return arrows.filter((arrow) => entering.has(arrow.from) && entering.has(arrow.to))
}

const reaches = (arrows: ReadonlyMap<string, readonly string[]>, start: string, goal: string): boolean => {
  const seen = new Set([start])
  const open = [start]
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (node === goal) return true
    for (const next of arrows.get(node) ?? []) {
      if (seen.has(next)) continue
      seen.add(next)
      open.push(next)
    }
  }
  return false
}
