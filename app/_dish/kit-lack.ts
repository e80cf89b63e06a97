import { countOf, countText } from '#app/_words/clock.ts'
import { coldWords, ringWords } from '#app/_words/kit.ts'
import { sameTool, serves } from '#lib/domain/kit-wants.ts'
import type { Kit, Kitchen, Use } from '#lib/domain/kitchen.ts'

type Of<K extends Kit['kind']> = Extract<Kit, { kind: K }>
const kitOf = <K extends Kit['kind']>(kitchen: Kitchen, kind: K): Of<K>[] =>
  kitchen.kit.filter((kit): kit is Of<K> => kit.kind === kind)
const most = (counts: readonly number[]): number => Math.max(0, ...counts)

/** What a use asks of the kitchen and the kitchen has not, in a sentence; null when it has it. */
export const lackText = (use: Use, kitchen: Kitchen | undefined): string | null => {
  if (!kitchen || kitchen.kit.some((kit) => serves(kit, use))) return null
  const where = kitchen.name || 'This kitchen'
  switch (use.kind) {
    case 'ring':
      return `${where} has no ${ringWords[use.size]} ring.`
    case 'oven':
      return ovenLack(use, kitOf(kitchen, 'oven'), where)
    case 'cold': {
      const places = most(kitOf(kitchen, 'cold').flatMap((cold) => (cold.keep === use.keep ? [cold.places] : [])))
      return places === 0
        ? `${where} has no ${coldWords[use.keep]}.`
        : `${where} has ${countOf(places, 'place')} in the ${coldWords[use.keep]}.`
    }
    case 'worktop': {
      const places = most(kitOf(kitchen, 'worktop').map((worktop) => worktop.places))
      return `${where} has ${countOf(places, 'place')} on the worktop.`
    }
    case 'tool': {
      const same = kitOf(kitchen, 'tool').filter((kit) => sameTool(kit.tool, use.tool))
      const count = most(same.map((kit) => kit.count))
      return count === 0 ? `${where} has no ${use.tool} yet.` : `${where} has only ${countText(count)} of them.`
    }
  }
}

const ovenLack = (use: Extract<Use, { kind: 'oven' }>, all: readonly Of<'oven'>[], where: string): string => {
  const ovens = use.oven === undefined ? all : all.filter((oven) => oven.id === use.oven)
  if (ovens.length === 0) return `${where} has no ${use.oven === undefined ? 'oven' : 'such oven'}.`
  const [shelves, maxC] = [most(ovens.map((oven) => oven.shelves)), most(ovens.map((oven) => oven.maxC))]
  if (shelves < use.shelves) return `${where} has ${countOf(shelves, 'shelf', 'shelves')} in the oven.`
  if (maxC >= use.lowC)
    return `${where} has no one oven with ${countOf(use.shelves, 'shelf', 'shelves')} that reaches ${use.lowC}°.`
  return `The oven goes up to ${maxC}°.${use.lowC >= 300 ? ` If it is °F, write ${use.lowC} F.` : ''}`
}
