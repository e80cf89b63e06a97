import type { Project, ProjectLag } from '#lib/scheduling/project/project.ts'
import { randomFrom } from '#lib/scheduling/random.ts'

/** A project of so many activities; with `maximum` also maximum lags and windows, and then often none can be kept. */
export const randomProject = (seed: number, count: number, maximum: boolean): Project => {
  const random = randomFrom(seed)
  const lengths = Int32Array.from({ length: count }, () => random.below(5))
  const lags: ProjectLag[] = []
  for (let to = 1; to < count; to++)
    for (let from = Math.max(0, to - 6); from < to; from++) {
      const dice = random.unit()
      if (dice < 0.25) lags.push({ from, to, least: Number(lengths[from]) + random.below(2) })
      else if (maximum && dice < 0.4) lags.push({ from: to, to: from, least: -random.below(5) })
      else if (maximum && dice < 0.45) lags.push({ from, to, least: random.below(6) })
    }
  const stores = Array.from({ length: 2 }, () => {
    const capacity = 1 + random.below(4)
    return { capacity, needs: Int32Array.from({ length: count }, () => random.below(capacity + 1)) }
  })
  const end = 2 + lengths.reduce((sum, length) => sum + length + 1, 0)
  const window = () => maximum && random.unit() < 0.15
  return {
    lengths,
    lags,
    stores,
    from: Int32Array.from(lengths, () => (window() ? random.below(4) : 0)),
    to: Int32Array.from(lengths, (length) => (window() ? length + random.below(end - length) : end)),
  }
}
