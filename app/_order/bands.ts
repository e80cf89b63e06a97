import type { Label } from './picture/labels.ts'
import type { Box } from './picture/outline.ts'
import type { Picture } from './picture/picture.ts'

/** The whole column is live: each line's target reaches half way to its neighbours. */
export const bandsOf = (picture: Picture): ReadonlyMap<string, Box> =>
  new Map(
    picture.columns.cooks.flatMap((column) => {
      const own = picture.labels.filter((label) => label.column === column.id).toSorted((a, b) => a.box.y - b.box.y)
      const middle = (label: Label) => label.box.y + label.box.height / 2
      return own.map((label, index) => {
        const [before, after] = [own[index - 1], own[index + 1]]
        const from = before ? (middle(before) + middle(label)) / 2 : Math.max(0, middle(label) - 24)
        const to = after ? (middle(label) + middle(after)) / 2 : Math.min(picture.height, middle(label) + 24)
        return [label.key, { x: column.x, y: from, width: column.width, height: to - from }] as const
      })
    }),
  )
