import type { Span } from './atoms.ts'
import { secondsOf } from './duration.ts'
import type { Evening } from './evening.ts'
import type { Way } from './menu.ts'
import type { Refusal } from './result.ts'
import { epochMsOf } from './time.ts'

/**
 * The rules that no single field can show: unique ids, references that lead somewhere, spans and windows in order.
 * Returns every broken one, in the order of the document.
 */
export const checkEvening = (evening: Evening): Refusal[] => [
  ...duplicateIds(evening),
  ...unknownIds(evening),
  ...spansOutOfOrder(evening),
  ...windowsOutOfOrder(evening),
  ...missingCarries(evening),
  ...welcomes(evening),
]

const refusal = (path: string, kind: Refusal['kind'], why: string): Refusal => ({ path, kind, why })

function* named(evening: Evening): Generator<[path: string, id: string]> {
  for (const [k, kitchen] of evening.kitchens.entries()) {
    yield [`kitchens[${k}].id`, kitchen.id]
    for (const [i, kit] of kitchen.kit.entries()) yield [`kitchens[${k}].kit[${i}].id`, kit.id]
  }
  for (const list of ['cooks', 'courses', 'dishes', 'steps', 'ingredients', 'drinks', 'guests'] as const)
    for (const [i, item] of evening[list].entries()) yield [`${list}[${i}].id`, item.id]
  for (const list of ['offers', 'shopping', 'ticks'] as const)
    for (const [i, item] of (evening[list] ?? []).entries()) yield [`${list}[${i}].id`, item.id]
}

const duplicateIds = (evening: Evening): Refusal[] => {
  const first = new Map<string, string>()
  const found: Refusal[] = []
  for (const [path, id] of named(evening)) {
    const before = first.get(id)
    if (before) found.push(refusal(path, 'duplicate-id', `"${id}" is already the id at ${before}`))
    else first.set(id, path)
  }
  return found
}

const unknownIds = (evening: Evening): Refusal[] => {
  const found: Refusal[] = []
  const ids = (items: readonly { id: string }[]) => new Set(items.map((item) => item.id))
  const [kitchens, cooks, courses, dishes, steps] = [
    ids(evening.kitchens),
    ids(evening.cooks),
    ids(evening.courses),
    ids(evening.dishes),
    ids(evening.steps),
  ]
  const ovens = ids(evening.kitchens.flatMap((kitchen) => kitchen.kit.filter((kit) => kit.kind === 'oven')))
  const expect = (known: ReadonlySet<string>, noun: string, path: string, id: string | null | undefined) => {
    if (id !== null && id !== undefined && !known.has(id))
      found.push(refusal(path, 'unknown-id', `no ${noun} has the id "${id}"`))
  }
  expect(kitchens, 'kitchen', 'host', evening.host)
  for (const [c, cook] of evening.cooks.entries())
    for (const [p, presence] of cook.presence.entries())
      expect(kitchens, 'kitchen', `cooks[${c}].presence[${p}].kitchen`, presence.kitchen)
  for (const [c, course] of evening.courses.entries())
    for (const part of ['lead', 'hosts', 'pours', 'clears'] as const) expect(cooks, 'cook', `courses[${c}].${part}`, course[part])
  for (const [d, dish] of evening.dishes.entries()) {
    expect(courses, 'course', `dishes[${d}].course`, dish.course)
    expect(kitchens, 'kitchen', `dishes[${d}].kitchen`, dish.kitchen)
    expect(dishes, 'dish', `dishes[${d}].standIn`, dish.standIn)
    expect(dishes, 'dish', `dishes[${d}].variant.of`, dish.variant?.of)
    expect(steps, 'step', `dishes[${d}].variant.fork`, dish.variant?.fork)
    for (const [u, use] of dish.keeps.uses.entries())
      if (use.kind === 'oven') expect(ovens, 'oven', `dishes[${d}].keeps.uses[${u}].oven`, use.oven)
  }
  for (const [s, step] of evening.steps.entries()) {
    expect(dishes, 'dish', `steps[${s}].dish`, step.dish)
    for (const [a, after] of step.after.entries()) expect(steps, 'step', `steps[${s}].after[${a}].step`, after.step)
    for (const [w, way] of step.ways.entries())
      for (const [u, use] of way.uses.entries())
        if (use.kind === 'oven') expect(ovens, 'oven', `steps[${s}].ways[${w}].uses[${u}].oven`, use.oven)
  }
  for (const [i, ingredient] of evening.ingredients.entries()) {
    expect(dishes, 'dish', `ingredients[${i}].dish`, ingredient.dish)
    expect(steps, 'step', `ingredients[${i}].step`, ingredient.step)
  }
  for (const [i, drink] of evening.drinks.entries()) expect(courses, 'course', `drinks[${i}].course`, drink.course)
  for (const [o, offer] of (evening.offers ?? []).entries()) {
    expect(cooks, 'cook', `offers[${o}].cook`, offer.cook)
    expect(courses, 'course', `offers[${o}].course`, offer.course)
    expect(kitchens, 'kitchen', `offers[${o}].kitchen`, offer.kitchen)
    expect(dishes, 'dish', `offers[${o}].dish`, offer.dish)
  }
  const targets = new Set([...courses, ...dishes, ...steps])
  for (const [i, claim] of evening.claims.entries()) {
    expect(targets, 'course, dish or step', `claims[${i}].target`, claim.target)
    expect(cooks, 'cook', `claims[${i}].cook`, claim.cook)
    for (const [a, also] of (claim.also ?? []).entries()) expect(cooks, 'cook', `claims[${i}].also[${a}]`, also)
  }
  for (const [i, note] of (evening.shopping ?? []).entries()) {
    expect(cooks, 'cook', `shopping[${i}].by`, note.by)
    expect(cooks, 'cook', `shopping[${i}].read.by`, note.read?.by)
  }
  for (const [i, tick] of (evening.ticks ?? []).entries()) expect(cooks, 'cook', `ticks[${i}].by`, tick.by)
  for (const [i, fact] of evening.night.entries()) {
    expect(cooks, 'cook', `night[${i}].by`, fact.by)
    if ('step' in fact) expect(steps, 'step', `night[${i}].step`, fact.step)
    if ('course' in fact) expect(courses, 'course', `night[${i}].course`, fact.course)
    if ('cook' in fact) expect(cooks, 'cook', `night[${i}].cook`, fact.cook)
    if ('dish' in fact) expect(dishes, 'dish', `night[${i}].dish`, fact.dish)
    if ('instead' in fact) expect(dishes, 'dish', `night[${i}].instead`, fact.instead)
    if ('alarm' in fact)
      for (const [c, one] of (fact.confirmed ?? []).entries()) expect(cooks, 'cook', `night[${i}].confirmed[${c}].cook`, one.cook)
  }
  return found
}

const spansOutOfOrder = (evening: Evening): Refusal[] => {
  const found: Refusal[] = []
  const spanAt = (path: string, span: Span) => {
    if (secondsOf(span.least) > secondsOf(span.likely)) found.push(refusal(path, 'order', 'least must not be longer than likely'))
    if (secondsOf(span.likely) > secondsOf(span.most)) found.push(refusal(path, 'order', 'likely must not be longer than most'))
  }
  const wayAt = (path: string, way: Way) => {
    spanAt(`${path}.takes`, way.takes)
    if (way.upTo !== undefined && way.care !== 'leave')
      found.push(refusal(`${path}.upTo`, 'up-to', 'only a step that is left alone may last longer by choice'))
    if (way.upTo !== undefined && secondsOf(way.upTo) < secondsOf(way.takes.most))
      found.push(refusal(`${path}.upTo`, 'up-to', 'must not be shorter than takes.most'))
    for (const [t, touch] of way.touches.entries())
      if (typeof touch.when === 'object' && secondsOf(touch.when.every) === 0)
        found.push(refusal(`${path}.touches[${t}].when.every`, 'order', 'must be longer than nothing'))
    for (const [u, use] of way.uses.entries())
      if (use.kind === 'oven' && use.lowC > use.highC)
        found.push(refusal(`${path}.uses[${u}].highC`, 'order', 'must not be below lowC'))
  }
  for (const [c, course] of evening.courses.entries()) {
    spanAt(`courses[${c}].eating`, course.eating)
    if (secondsOf(course.wait.ideal[0]) > secondsOf(course.wait.ideal[1]))
      found.push(refusal(`courses[${c}].wait.ideal`, 'order', 'the shorter wait comes first'))
  }
  for (const [d, dish] of evening.dishes.entries())
    for (const [u, use] of dish.keeps.uses.entries())
      if (use.kind === 'oven' && use.lowC > use.highC)
        found.push(refusal(`dishes[${d}].keeps.uses[${u}].highC`, 'order', 'must not be below lowC'))
  for (const [o, { home, atHost }] of (evening.offers ?? []).entries()) {
    if (home) spanAt(`offers[${o}].home`, home)
    if (atHost?.heat) spanAt(`offers[${o}].atHost.heat`, atHost.heat)
    if (atHost?.finish) spanAt(`offers[${o}].atHost.finish`, atHost.finish)
    if (atHost?.lowC !== undefined && atHost.highC !== undefined && atHost.lowC > atHost.highC)
      found.push(refusal(`offers[${o}].atHost.highC`, 'order', 'must not be below lowC'))
  }
  for (const [s, step] of evening.steps.entries()) {
    for (const [w, way] of step.ways.entries()) wayAt(`steps[${s}].ways[${w}]`, way)
    for (const [a, after] of step.after.entries())
      if (after.most !== undefined && secondsOf(after.most) < secondsOf(after.least))
        found.push(refusal(`steps[${s}].after[${a}].most`, 'order', 'must not be shorter than least'))
  }
  return found
}

const windowsOutOfOrder = (evening: Evening): Refusal[] => {
  const found: Refusal[] = []
  const ms = (at: { day: number; time: string }) => epochMsOf(evening, at)
  for (const [c, cook] of evening.cooks.entries())
    for (const [p, presence] of cook.presence.entries())
      if (ms(presence.from) >= ms(presence.to))
        found.push(refusal(`cooks[${c}].presence[${p}].to`, 'order', 'must be later than from'))
  for (const [c, cook] of evening.cooks.entries())
    for (const [b, busy] of (cook.busy ?? []).entries())
      if (ms(busy.from) >= ms(busy.to)) found.push(refusal(`cooks[${c}].busy[${b}].to`, 'order', 'must be later than from'))
  for (const [c, { children }] of evening.courses.entries())
    if (children && ms(children.at) > ms(evening.sitDown))
      found.push(refusal(`courses[${c}].children.at`, 'order', 'must not be later than sitDown'))
  for (const [s, step] of evening.steps.entries())
    if (step.earliest && step.latest && ms(step.earliest) >= ms(step.latest))
      found.push(refusal(`steps[${s}].latest`, 'order', 'must be later than earliest'))
  if (ms(evening.guestsFrom) > ms(evening.sitDown)) found.push(refusal('guestsFrom', 'order', 'must not be later than sitDown'))
  return found
}

const missingCarries = (evening: Evening): Refusal[] =>
  evening.dishes.flatMap((dish, d) => {
    if (dish.kitchen === evening.host || dish.state === 'dropped') return []
    const carried = evening.steps.some((step) => step.dish === dish.id && step.role === 'carry')
    return carried
      ? []
      : [
          refusal(
            `dishes[${d}].kitchen`,
            'carry-missing',
            `"${dish.name}" is made in another kitchen and no step carries it to the host's`,
          ),
        ]
  })

const welcomes = (evening: Evening): Refusal[] => [
  ...evening.courses
    .map((course, c) => ({ course, c }))
    .filter(({ course }) => course.welcome && !course.children)
    .slice(1)
    .map(({ c }) => refusal(`courses[${c}].welcome`, 'welcome-twice', 'only one course can be the welcome')),
  ...evening.courses.flatMap(({ welcome, children }, c) =>
    children && !welcome
      ? [refusal(`courses[${c}].children`, 'order', 'children eat before sit-down: the course must be a welcome')]
      : [],
  ),
]
