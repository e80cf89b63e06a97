import type { DishKit } from '#lib/table/dish-kit.ts'
import { countOf, countText, listText } from './clock.ts'
import { heatText } from './heat.ts'
import { coldWords, ringWords } from './kit.ts'

/** "oven 200 to 210°, one shelf · a medium ring · blender · fridge"; empty when it wants nothing. */
export const dishKitText = ({ ovens, rings, tools, colds }: DishKit): string =>
  [
    ovens.length === 0
      ? ''
      : `oven ${ovens.map((oven) => `${heatText(oven.lowC, oven.highC)}, ${countOf(oven.shelves, 'shelf', 'shelves')}`).join(', then ')}`,
    rings.length === 0
      ? ''
      : rings.length === 1
        ? rings.map((size) => `a ${ringWords[size]} ring`).join('')
        : `${listText(rings.map((size) => `a ${ringWords[size]}`))} ring`,
    ...tools.map(({ tool, count }) => (count === 1 ? tool : `${countText(count)} × ${tool}`)),
    ...colds.map((keep) => coldWords[keep]),
  ]
    .filter(Boolean)
    .join(' · ')
