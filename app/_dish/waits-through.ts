import type { Step } from '#lib/domain/menu.ts'

/** The shortest chain of waits by which `from` waits for `goal`, both ends in it; null when it does not wait for it. */
export const waitsThrough = (steps: readonly Step[], from: string, goal: string): readonly string[] | null => {
  const after = new Map(steps.map((step) => [step.id, step.after.map((lag) => lag.step)]))
  const cameFrom = new Map<string, string | null>([[from, null]])
  const open = [from]
  for (let node = open.shift(); node !== undefined; node = open.shift()) {
    if (node === goal) return chain(cameFrom, node)
    for (const next of after.get(node) ?? []) {
      if (cameFrom.has(next)) continue
      cameFrom.set(next, node)
      open.push(next)
    }
  }
  return null
}

const chain = (cameFrom: ReadonlyMap<string, string | null>, end: string): readonly string[] => {
  const back: string[] = []
  for (let node: string | null | undefined = end; node; node = cameFrom.get(node)) back.push(node)
  return back.reverse()
}
