import type { Evening } from '#lib/domain/evening.ts'
import type { Use } from '#lib/domain/kitchen.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'

/** What a dish wants of a kitchen, each thing once. Worktop, board and sink, which nearly all work takes, are not in it. */
export interface DishKit {
  /** Each heat it wants, in the order of its steps, with the most shelves at that heat. */
  readonly ovens: readonly { readonly lowC: number; readonly highC: number; readonly shelves: number }[]
  readonly rings: readonly Extract<Use, { kind: 'ring' }>['size'][]
  readonly tools: readonly { readonly tool: string; readonly count: number }[]
  readonly colds: readonly Extract<Use, { kind: 'cold' }>['keep'][]
}

// Common practice, no source.
const EVERYDAY: readonly string[] = ['board', 'sink']
const SIZES = ['small', 'medium', 'large'] as const
const KEEPS = ['cold', 'frozen'] as const

/** The kit of a dish's steps, each by the way that the running order chose, otherwise its first, and of its keeping. */
export const dishKit = (evening: Evening, dish: string, order: RunningOrder | null): DishKit => {
  const chosen = new Map(order?.cues.map((cue) => [cue.step, cue.way]))
  const steps = evening.steps.filter((step) => step.dish === dish)
  const ways = steps.map((step) => step.ways[chosen.get(step.id) ?? 0] ?? step.ways[0])
  const keeping = evening.dishes.find(({ id }) => id === dish)?.keeps.uses ?? []
  const uses = [...ways.flatMap((way) => way?.uses ?? []), ...keeping]
  const ovens = new Map<string, DishKit['ovens'][number]>()
  const tools = new Map<string, number>()
  for (const use of uses) {
    if (use.kind === 'oven') {
      const key = `${use.lowC} ${use.highC}`
      const shelves = Math.max(use.shelves, ovens.get(key)?.shelves ?? 0)
      ovens.set(key, { lowC: use.lowC, highC: use.highC, shelves })
    }
    if (use.kind === 'tool') {
      const tool = use.tool.toLowerCase()
      if (!EVERYDAY.includes(tool)) tools.set(tool, Math.max(use.count, tools.get(tool) ?? 0))
    }
  }
  return {
    ovens: [...ovens.values()],
    rings: SIZES.filter((size) => uses.some((use) => use.kind === 'ring' && use.size === size)),
    tools: [...tools].map(([tool, count]) => ({ tool, count })),
    colds: KEEPS.filter((keep) => uses.some((use) => use.kind === 'cold' && use.keep === keep)),
  }
}
