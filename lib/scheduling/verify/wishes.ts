import type { Breach } from '#lib/scheduling/schedule.ts'
import type { Scene } from './scene.ts'

/** W1-W6: every wish that is broken, once, in the order of the problem; [from, to) is the stretch that is too long. */
export const wishes = (scene: Scene): Breach[] => [
  ...lags(scene),
  ...keeps(scene),
  ...carries(scene),
  ...waits(scene),
  ...sitDowns(scene),
]

const stretch = (from: number, to: number, most: number) => ({ from, to, by: to - from - most })

const lags = ({ problem, placed }: Scene): Breach[] =>
  problem.lags.flatMap((lag, index): Breach[] => {
    const from = placed.find(({ activity }) => activity.id === lag.from)
    const to = placed.find(({ activity }) => activity.id === lag.to)
    if (lag.bound !== 'quality' || lag.most === undefined || !from || !to?.planned) return []
    const broken = stretch(lag.edge === 'start' ? from.start : from.end, to.start, lag.most)
    return broken.by > 0 ? [{ kind: 'lag', lag: index, ...broken }] : []
  })

const keeps = ({ delivered }: Scene): Breach[] =>
  delivered.flatMap(({ delivery, served, ready, arrival }): Breach[] => {
    const broken = stretch(ready, arrival, delivery.keeps.most)
    return served.planned && broken.by > 0 ? [{ kind: 'keeps', delivery: delivery.id, ...broken }] : []
  })

const carries = ({ delivered }: Scene): Breach[] =>
  delivered.flatMap(({ delivery, served, carry }): Breach[] => {
    if (!served.planned || !carry || !delivery.carry) return []
    const broken = stretch(carry.from, carry.to, delivery.carry.most)
    return broken.by > 0 ? [{ kind: 'carry', delivery: delivery.id, ...broken }] : []
  })

/** The guests' wait before a serving: since the plates came off, or for a welcome since they came. Null: not counted. */
export const waitFrom = ({ served }: Scene, index: number): number | null => {
  const serving = served[index]?.serving
  if (serving?.role.kind === 'next') return served[index - 1]?.platesOff ?? null
  return serving?.role.kind === 'welcome' ? (serving.earliest ?? null) : null
}

const waits = (scene: Scene): Breach[] =>
  scene.served.flatMap(({ serving, moment, planned }, index): Breach[] => {
    const since = waitFrom(scene, index)
    if (since === null || !planned) return []
    const broken = stretch(since, moment, serving.wait.most)
    return broken.by > 0 ? [{ kind: 'wait', serving: serving.id, ...broken }] : []
  })

const sitDowns = ({ served }: Scene): Breach[] =>
  served.flatMap(({ serving, moment, planned }): Breach[] =>
    planned && serving.role.kind === 'first' && moment > serving.role.sitDown
      ? [{ kind: 'sit-down', serving: serving.id, ...stretch(serving.role.sitDown, moment, 0) }]
      : [],
  )
