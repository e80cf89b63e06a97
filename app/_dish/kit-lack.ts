import { countOf, countText } from '#app/_words/clock.ts'
import { coldWords, ringWords } from '#app/_words/kit.ts'
import type { Kit, Kitchen, RingSize, Use } from '#lib/domain/kitchen.ts'

const SIZE: Readonly<Record<RingSize, number>> = { small: 1, medium: 2, large: 3 }

type Of<K extends Kit['kind']> = Extract<Kit, { kind: K }>
const kitOf = <K extends Kit['kind']>(kitchen: Kitchen, kind: K): Of<K>[] =>
  kitchen.kit.filter((kit): kit is Of<K> => kit.kind === kind)
const most = (counts: readonly number[]): number => Math.max(0, ...counts)

/** What a use asks of the kitchen and the kitchen has not, in a sentence; null when it has it. A bigger ring serves for a smaller. */
export const lackText = (use: Use, kitchen: Kitchen | undefined): string | null => {
  if (!kitchen) return null
  const where = kitchen.name || 'This kitchen'
  switch (use.kind) {
    case 'ring':
      return kitOf(kitchen, 'ring').some((ring) => SIZE[ring.size] >= SIZE[use.size])
        ? null
        : `${where} has no ${ringWords[use.size]} ring.`
    case 'oven':
      return ovenLack(use, kitOf(kitchen, 'oven'), where)
    case 'cold': {
      const places = most(kitOf(kitchen, 'cold').flatMap((cold) => (cold.keep === use.keep ? [cold.places] : [])))
      if (places === 0) return `${where} has no ${coldWords[use.keep]}.`
      return places < use.places ? `${where} has ${countOf(places, 'place')} in the ${coldWords[use.keep]}.` : null
    }
    case 'worktop': {
      const places = most(kitOf(kitchen, 'worktop').map((worktop) => worktop.places))
      return places < use.places ? `${where} has ${countOf(places, 'place')} on the worktop.` : null
    }
    case 'tool': {
      const same = kitOf(kitchen, 'tool').filter((kit) => kit.tool.trim().toLowerCase() === use.tool.trim().toLowerCase())
      const count = most(same.map((kit) => kit.count))
      if (count === 0) return `${where} has no ${use.tool} yet.`
      return count < use.count ? `${where} has only ${countText(count)} of them.` : null
    }
  }
}

const ovenLack = (use: Extract<Use, { kind: 'oven' }>, all: readonly Of<'oven'>[], where: string): string | null => {
  const ovens = use.oven === undefined ? all : all.filter((oven) => oven.id === use.oven)
  if (ovens.length === 0) return `${where} has no ${use.oven === undefined ? 'oven' : 'such oven'}.`
  const [shelves, maxC] = [most(ovens.map((oven) => oven.shelves)), most(ovens.map((oven) => oven.maxC))]
  if (shelves < use.shelves) return `${where} has ${countOf(shelves, 'shelf', 'shelves')} in the oven.`
  if (maxC >= use.lowC) return null
  return `The oven goes up to ${maxC}°.${use.lowC >= 300 ? ` If it is °F, write ${use.lowC} F.` : ''}`
}
