import type { Evening } from './evening.ts'
import type { Kit, Kitchen, RingSize, Use } from './kitchen.ts'
import type { Dish, Step } from './menu.ts'

const SIZE: Readonly<Record<RingSize, number>> = { small: 1, medium: 2, large: 3 }

/** A tool is called by the cook's own word: its case and outer spaces do not count. */
export const sameTool = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase()

/** Whether this piece of kit alone can serve that use; a bigger ring serves what wants a smaller one. */
export const serves = (kit: Kit, use: Use): boolean => {
  switch (use.kind) {
    case 'ring':
      return kit.kind === 'ring' && SIZE[kit.size] >= SIZE[use.size]
    case 'oven':
      return (
        kit.kind === 'oven' &&
        (use.oven === undefined || use.oven === kit.id) &&
        kit.shelves >= use.shelves &&
        kit.maxC >= use.lowC
      )
    case 'cold':
      return kit.kind === 'cold' && kit.keep === use.keep && kit.places >= use.places
    case 'worktop':
      return kit.kind === 'worktop' && kit.places >= use.places
    case 'tool':
      return kit.kind === 'tool' && sameTool(kit.tool, use.tool) && kit.count >= use.count
  }
}

/** A use of a step or of a waiting dish that its kitchen cannot serve. */
export interface Want {
  readonly kitchen: string
  readonly use: Use
  /** The step that wants it; null when the finished dish does, while it waits. */
  readonly step: Step | null
  readonly dish: Dish | null
  /** False when the step has another way that its kitchen can serve. */
  readonly stuck: boolean
}

/** The kitchen in which a step is done: its dish's own until the dish is carried, the host's after that and for chores. */
const kitchenOf = (step: Step, dish: Dish | null, host: string): string =>
  dish !== null && (step.role === 'make' || step.role === 'carry') ? dish.kitchen : host

/** What the evening's steps and waiting dishes want of kit that their kitchens have not, each use looked at alone. */
export const missingKit = (evening: Evening): Want[] => {
  const kitchens = new Map(evening.kitchens.map((kitchen) => [kitchen.id, kitchen]))
  const dishes = new Map(evening.dishes.map((dish) => [dish.id, dish]))
  const lacks = (kitchen: Kitchen | undefined, use: Use): boolean => !kitchen?.kit.some((kit) => serves(kit, use))
  const found: Want[] = []
  for (const step of evening.steps) {
    const dish = (step.dish === null ? null : dishes.get(step.dish)) ?? null
    if (dish?.state === 'dropped') continue
    const id = kitchenOf(step, dish, evening.host)
    const ways = step.ways.map((way) => way.uses.filter((use) => lacks(kitchens.get(id), use)))
    const stuck = ways.every((uses) => uses.length > 0)
    for (const use of ways.flat()) found.push({ kitchen: id, use, step, dish, stuck })
  }
  for (const dish of evening.dishes)
    if (dish.state !== 'dropped')
      for (const use of dish.keeps.uses)
        if (lacks(kitchens.get(evening.host), use)) found.push({ kitchen: evening.host, use, step: null, dish, stuck: true })
  return found
}
