import type { Scene } from './scene.ts'
import { type Violation, violation } from './violation.ts'

/** H4: least lags, and the most of safety lags, hold when the later end is planned. */
export const h4 = ({ problem, placed }: Scene): Violation[] =>
  problem.lags.flatMap((lag) => {
    const from = placed.find(({ activity }) => activity.id === lag.from)
    const to = placed.find(({ activity }) => activity.id === lag.to)
    if (!from || !to?.planned) return []
    const found = to.start - (lag.edge === 'start' ? from.start : from.end)
    const parties = { activities: [lag.from, lag.to] }
    if (found < lag.least) return [violation('H4', to.start, { what: 'early', wanted: lag.least, found }, parties)]
    if (lag.bound === 'safety' && lag.most !== undefined && found > lag.most)
      return [violation('H4', to.start, { what: 'late', wanted: lag.most, found }, parties)]
    return []
  })

/** H5: no more of a group than allowed run at once. Judged whenever one of them starts. */
export const h5 = ({ problem, placed }: Scene): Violation[] =>
  problem.together.flatMap((group) => {
    const members = placed.filter(({ activity }) => group.activities.includes(activity.id))
    return [...new Set(members.map(({ start }) => start))].flatMap((at) => {
      const running = members.filter(({ start, end }) => start <= at && at < end)
      if (running.length <= group.most || !running.some(({ planned }) => planned)) return []
      const activities = running.map(({ activity }) => activity.id)
      return [violation('H5', at, { what: 'crowd', wanted: group.most, found: running.length }, { activities })]
    })
  })
