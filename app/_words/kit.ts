import type { Kit, Use } from '#lib/domain/kitchen.ts'
import { countOf, countText } from './clock.ts'
import { heatText } from './heat.ts'

type RingSize = Extract<Kit, { kind: 'ring' }>['size']
type Keep = Extract<Kit, { kind: 'cold' }>['keep']

export const ringWords: Readonly<Record<RingSize, string>> = { small: 'small', medium: 'medium', large: 'large' }
export const ringLetters: Readonly<Record<RingSize, string>> = { small: 'S', medium: 'M', large: 'L' }
export const coldWords: Readonly<Record<Keep, string>> = { cold: 'fridge', frozen: 'freezer' }

/** What a piece of kit is called in a sentence: "the oven", "the medium ring". */
export const kitName = (kit: Kit): string => {
  switch (kit.kind) {
    case 'ring':
      return `the ${ringWords[kit.size]} ring`
    case 'oven':
      return /\boven\b/i.test(kit.name) ? `the ${kit.name.toLowerCase()}` : kit.name ? `the oven “${kit.name}”` : 'the oven'
    case 'cold':
      return `the ${coldWords[kit.keep]}`
    case 'worktop':
      return 'the worktop'
    case 'tool':
      return `the ${kit.tool}`
  }
}

/** What a step occupies, as it stands in a sentence. */
export const useText = (use: Use): string => {
  switch (use.kind) {
    case 'ring':
      return `a ${ringWords[use.size]} ring`
    case 'oven':
      return `the oven at ${heatText(use.lowC, use.highC)}, ${countOf(use.shelves, 'shelf', 'shelves')}${use.preheated ? ', already hot' : ''}`
    case 'cold':
      return `${countOf(use.places, 'place')} in the ${coldWords[use.keep]}`
    case 'worktop':
      return use.places === 1 ? 'the worktop' : `${countText(use.places)} places on the worktop`
    case 'tool':
      return use.count === 1 ? `the ${use.tool}` : `${countText(use.count)} × ${use.tool}`
  }
}
