import type { Kit } from './kitchen.ts'

type Without<T> = T extends unknown ? Omit<T, 'id'> : never
/** A piece of kit before it has an id. `key` is its own within the template. */
export type TemplateKit = Without<Kit> & { readonly key: string }

/** The usual kinds of kitchen that one can begin with. */
export const KITCHEN_TEMPLATES = ['one-oven', 'small', 'two-ovens', 'no-oven', 'hall', 'cold-only'] as const
export type KitchenTemplate = (typeof KITCHEN_TEMPLATES)[number]

/** What a kitchen has of which nothing was said. */
export const DEFAULT_TEMPLATE: KitchenTemplate = 'one-oven'

/**
 * An oven heats fast and cools slowly: 8 and 3 °C a minute, with 220 to 250 °C at most. Common practice, no source; each
 * of these can be said otherwise. A place on the worktop holds one plate or one board.
 */
const oven = (key: string, name: string, shelves: number, maxC: number): TemplateKit => ({
  key,
  kind: 'oven',
  name,
  shelves,
  maxC,
  upPerMin: 8,
  downPerMin: 3,
})
const rings = (small: number, medium: number, large: number): TemplateKit[] =>
  [['small', small] as const, ['medium', medium] as const, ['large', large] as const].flatMap(([size, count]) =>
    count > 0 ? [{ key: `ring-${size}`, kind: 'ring' as const, size, count }] : [],
  )
const cold = (fridge: number, freezer: number): TemplateKit[] => [
  { key: 'fridge', kind: 'cold', keep: 'cold', places: fridge },
  ...(freezer > 0 ? [{ key: 'freezer', kind: 'cold' as const, keep: 'frozen' as const, places: freezer }] : []),
]
const worktop = (places: number): TemplateKit => ({ key: 'worktop', kind: 'worktop', places })
const tool = (name: string, count = 1): TemplateKit => ({ key: name.replaceAll(' ', '-'), kind: 'tool', tool: name, count })

const TEMPLATES: { readonly [template in KitchenTemplate]: readonly TemplateKit[] } = {
  // Two worktops of four places each.
  'one-oven': [
    oven('oven', 'Oven', 2, 250),
    ...rings(1, 2, 1),
    ...cold(6, 2),
    worktop(8),
    tool('sink'),
    tool('kettle'),
    tool('blender'),
  ],
  small: [oven('oven', 'Oven', 1, 220), ...rings(1, 1, 0), ...cold(3, 1), worktop(4), tool('sink'), tool('kettle')],
  'two-ovens': [
    oven('oven-upper', 'Upper oven', 1, 250),
    oven('oven-lower', 'Lower oven', 2, 250),
    ...rings(1, 2, 2),
    ...cold(10, 4),
    worktop(12),
    tool('sink'),
    tool('kettle'),
    tool('blender'),
    tool('mixer'),
    tool('food processor'),
  ],
  'no-oven': [...rings(1, 1, 0), ...cold(3, 1), worktop(4), tool('sink'), tool('kettle')],
  hall: [
    oven('oven-left', 'Left oven', 4, 250),
    oven('oven-right', 'Right oven', 4, 250),
    ...rings(0, 2, 4),
    ...cold(24, 8),
    worktop(24),
    tool('sink', 2),
    tool('kettle', 2),
  ],
  'cold-only': [...cold(4, 0), worktop(6), tool('sink')],
}

/** The kit of a template; `idOf` gives each piece its id, which no other entry of the evening may have. */
export const templateKit = (template: KitchenTemplate, idOf: (key: string) => string): Kit[] =>
  TEMPLATES[template].map(({ key, ...kit }): Kit => ({ ...kit, id: idOf(key) }))
