/**
 * A smallest subset that fails: without any one of its members it does not (QuickXplain: Junker 2004, "Preferred
 * explanations and relaxations for over-constrained problems", AAAI). Pre: `all` fails, and what contains a failing set
 * fails. Empty when nothing at all fails already. Later members are kept where there is a choice.
 */
export const smallest = <T>(all: readonly T[], fails: (some: readonly T[]) => boolean): T[] => {
  const within = (base: readonly T[], doubtful: readonly T[], grown: boolean): T[] => {
    if (grown && fails(base)) return []
    if (doubtful.length < 2) return [...doubtful]
    const half = doubtful.length >> 1
    const [left, right] = [doubtful.slice(0, half), doubtful.slice(half)]
    const later = within([...base, ...left], right, true)
    const earlier = within([...base, ...later], left, later.length > 0)
    return [...earlier, ...later]
  }
  return fails([]) ? [] : within([], all, false)
}
