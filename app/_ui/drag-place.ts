/** What is measured of a list and its items on the screen, without what is being dragged; pixels from the top. */
export interface Measured {
  readonly id: string
  readonly top: number
  readonly bottom: number
  readonly items: readonly { readonly id: string; readonly top: number; readonly bottom: number }[]
}

/** Where something would land: behind an item of the list, or (null) first of all. */
export interface Landing {
  readonly list: string
  readonly after: string | null
}

/** The landing at height `y`: in the list that is nearest, behind the last item whose middle lies above. Null without a list. */
export const landingAt = (lists: readonly Measured[], y: number): Landing | null => {
  const away = (list: Measured): number => (y < list.top ? list.top - y : y > list.bottom ? y - list.bottom : 0)
  const list = lists.reduce<Measured | null>((best, each) => (best === null || away(each) < away(best) ? each : best), null)
  if (!list) return null
  const above = list.items.filter((item) => (item.top + item.bottom) / 2 <= y)
  return { list: list.id, after: above[above.length - 1]?.id ?? null }
}

const EDGE = 72
const FASTEST = 14

/** Pixels that the page scrolls in a frame while something is held at this height of the window. */
export const scrollBy = (y: number, height: number): number => {
  const depth = y < EDGE ? y - EDGE : y > height - EDGE ? y - height + EDGE : 0
  return Math.round(Math.max(-1, Math.min(1, depth / EDGE)) * FASTEST)
}
