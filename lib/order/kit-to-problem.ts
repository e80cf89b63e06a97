import { TICKS_PER_MINUTE, ticksUp } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Kit, RingSize, Use } from '#lib/domain/kitchen.ts'
import type { Kit as ProblemKit, Use as ProblemUse } from '#lib/scheduling/problem.ts'
import { byText } from './ids.ts'

/** A bigger number is a bigger ring. */
export const RING_SIZE: Readonly<Record<RingSize, number>> = { small: 1, medium: 2, large: 3 }

/** Store classes; the name of a tool is the cook's own word, so its case and outer spaces do not count. */
const storeOf = {
  worktop: 'worktop',
  cold: (keep: 'cold' | 'frozen') => `cold:${keep}`,
  tool: (tool: string) => `tool:${tool.trim().toLowerCase()}`,
}

/** What a step or a waiting dish holds, in the engine's terms. */
export const useToProblem = (use: Use): ProblemUse => {
  switch (use.kind) {
    case 'ring':
      return { kind: 'ring', size: RING_SIZE[use.size] }
    case 'oven':
      return {
        kind: 'oven',
        ...(use.oven === undefined ? {} : { oven: use.oven }),
        shelves: use.shelves,
        lowC: use.lowC,
        highC: use.highC,
        preheated: use.preheated,
        ...(use.doorShut === undefined ? {} : { doorShut: ticksUp(use.doorShut) }),
      }
    case 'cold':
      return { kind: 'store', of: storeOf.cold(use.keep), amount: use.places }
    case 'worktop':
      return { kind: 'store', of: storeOf.worktop, amount: use.places }
    case 'tool':
      return { kind: 'store', of: storeOf.tool(use.tool), amount: use.count }
  }
}

const oneKit = (kit: Kit, place: string): ProblemKit => {
  switch (kit.kind) {
    case 'ring':
      return { kind: 'ring', id: kit.id, place, size: RING_SIZE[kit.size], count: kit.count }
    case 'oven':
      return {
        kind: 'oven',
        id: kit.id,
        place,
        shelves: kit.shelves,
        maxC: kit.maxC,
        up: kit.upPerMin / TICKS_PER_MINUTE,
        down: kit.downPerMin / TICKS_PER_MINUTE,
      }
    case 'cold':
      return { kind: 'store', id: kit.id, place, of: storeOf.cold(kit.keep), capacity: kit.places }
    case 'worktop':
      return { kind: 'store', id: kit.id, place, of: storeOf.worktop, capacity: kit.places }
    case 'tool':
      return { kind: 'store', id: kit.id, place, of: storeOf.tool(kit.tool), capacity: kit.count }
  }
}

/** The kit of all kitchens, by id. */
export const kitToProblem = (evening: Evening): ProblemKit[] =>
  evening.kitchens.flatMap((kitchen) => kitchen.kit.map((kit) => oneKit(kit, kitchen.id))).sort((a, b) => byText(a.id, b.id))
