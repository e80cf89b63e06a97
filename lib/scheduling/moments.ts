import type { Model } from './model.ts'
import type { Tick } from './problem.ts'

/** The earliest a serving may be, given the moment of the one before it. */
export const floorOf = (model: Model, index: number, before: Tick | undefined): Tick => {
  const serving = model.servings[index]
  if (!serving) return model.from
  if (serving.served) return serving.served.toTable
  const off = before === undefined ? undefined : platesOff(model, index - 1, before)
  return Math.max(serving.earliest, off === undefined ? serving.earliest : off + serving.pouring)
}

export const platesOff = (model: Model, index: number, moment: Tick): Tick => {
  const serving = model.servings[index]
  return serving?.served?.platesOff ?? moment + (serving?.eating ?? 0) + (serving?.clearing ?? 0)
}

/**
 * Moments as near to what is wished as the earlier ones allow: each at least `floors` and, for later courses, the ideal
 * wait after plates off. Served ones are as they were.
 */
export const momentsFrom = (model: Model, floors: readonly Tick[]): Tick[] => {
  const moments: Tick[] = []
  for (const serving of model.servings) {
    const before = moments[serving.index - 1]
    let moment = Math.max(floorOf(model, serving.index, before), floors[serving.index] ?? model.from)
    if (serving.kind === 'first') moment = Math.max(moment, serving.wished)
    if (serving.kind === 'welcome' && serving.hasEarliest) moment = Math.max(moment, serving.earliest + serving.ideal[0])
    if (serving.kind === 'welcome') moment = Math.min(moment, serving.wished)
    if (serving.kind === 'next' && before !== undefined)
      moment = Math.max(moment, platesOff(model, serving.index - 1, before) + serving.ideal[0])
    moments.push(serving.served ? serving.served.toTable : moment)
  }
  return moments
}

/** Moments moved no further than hard rules ask: earlier than its floor none is, and a welcome no later than it may. */
export const repairMoments = (model: Model, wished: readonly Tick[]): Tick[] => {
  const moments: Tick[] = []
  for (const serving of model.servings) {
    const floor = floorOf(model, serving.index, moments[serving.index - 1])
    let moment = Math.max(floor, wished[serving.index] ?? floor)
    if (serving.kind === 'welcome') moment = Math.max(floor, Math.min(moment, serving.wished))
    moments.push(serving.served ? serving.served.toTable : moment)
  }
  return moments
}
