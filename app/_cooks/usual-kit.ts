import { sameTool } from '#lib/domain/kit-wants.ts'
import type { Kit, Use } from '#lib/domain/kitchen.ts'

type Without<T> = T extends unknown ? Omit<T, 'id'> : never
export type NewKit = Without<Kit>

/** Tools that many kitchens have, to be added in one tap. */
const USUAL_TOOLS = [
  'sink',
  'kettle',
  'blender',
  'mixer',
  'food processor',
  'grill',
  'coffee pot',
  'big pan',
  'roasting tray',
  'big board',
  'ice bucket',
] as const

/** Kit to add in one tap to a kitchen that has this kit: what it is called on the button, and the piece. */
export const kitToAdd = (kit: readonly Kit[]): readonly (readonly [words: string, piece: NewKit])[] => {
  const ovens = kit.filter((piece) => piece.kind === 'oven').length
  const size = (['medium', 'large', 'small'] as const).find(
    (each) => !kit.some((piece) => piece.kind === 'ring' && piece.size === each),
  )
  const tools = USUAL_TOOLS.filter((name) => !kit.some((piece) => piece.kind === 'tool' && sameTool(piece.tool, name)))
  return [
    [
      'an oven',
      {
        kind: 'oven',
        name: ovens === 0 ? 'Oven' : ovens === 1 ? 'Second oven' : `Oven ${ovens + 1}`,
        shelves: 2,
        maxC: 250,
        upPerMin: 8,
        downPerMin: 3,
      },
    ],
    [size ? `a ${size} ring` : 'more rings', { kind: 'ring', size: size ?? 'medium', count: 1 }],
    ['a fridge', { kind: 'cold', keep: 'cold', places: 4 }],
    ['a freezer', { kind: 'cold', keep: 'frozen', places: 2 }],
    ['worktop', { kind: 'worktop', places: 4 }],
    ...tools.map((tool) => [tool, { kind: 'tool', tool, count: 1 }] as const),
    ['another tool', { kind: 'tool', tool: 'another tool', count: 1 }],
  ]
}

/** The least kit that serves a use. */
export const kitFor = (use: Use): NewKit => {
  switch (use.kind) {
    case 'ring':
      return { kind: 'ring', size: use.size, count: 1 }
    case 'oven':
      return {
        kind: 'oven',
        name: 'Oven',
        shelves: Math.max(2, use.shelves),
        maxC: Math.max(250, use.highC),
        upPerMin: 8,
        downPerMin: 3,
      }
    case 'cold':
      return { kind: 'cold', keep: use.keep, places: Math.max(4, use.places) }
    case 'worktop':
      return { kind: 'worktop', places: Math.max(4, use.places) }
    case 'tool':
      return { kind: 'tool', tool: use.tool, count: use.count }
  }
}
