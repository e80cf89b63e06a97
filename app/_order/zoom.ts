import type { Zoom as Near } from './picture/lines.ts'

/** How near the running order is looked at: with all its days, the evening, an hour or ten minutes on a screen. */
export type Zoom = 'days' | Near

const ALL: readonly Zoom[] = ['days', 'evening', 'hour', 'ten']

/** The steps of the zoom that an evening has: without days before it, it begins with the evening. */
export const zoomsOf = (hasDays: boolean): readonly Zoom[] => (hasDays ? ALL : ALL.slice(1))

/** One step nearer or farther; the end stays. */
export const zoomBy = (zooms: readonly Zoom[], zoom: Zoom, by: 1 | -1): Zoom =>
  zooms[Math.max(0, Math.min(zooms.length - 1, zooms.indexOf(zoom) + by))] ?? zoom

/** How near the drawing of the evening's own day is. */
export const nearOf = (zoom: Zoom): Near => (zoom === 'days' ? 'evening' : zoom)
