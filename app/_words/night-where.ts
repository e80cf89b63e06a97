import type { Task } from '#lib/night/board.ts'
import { clockText, listText, sentence } from './clock.ts'
import { minutesText } from './duration.ts'
import { heatText } from './heat.ts'
import type { Names } from './names.ts'

const ovenHeat = ({ lowC, highC, setC }: NonNullable<Task['oven']>): string =>
  setC === null ? heatText(lowC, highC) : heatText(setC, setC)

const kitText = (task: Task, id: string, names: Names): string => {
  const kind = names.kit(id)?.kit.kind
  const name = names.kitName(id)
  if (kind === 'oven') return `in ${name}${task.oven ? ` at ${ovenHeat(task.oven)}` : ''}`
  if (kind === 'cold') return `in ${name}`
  if (kind === 'tool') return `with ${name}`
  return `on ${name}`
}

/** "In the oven at 190 to 200°, with Tess." What is at hand anyway, the worktop, is not said. */
export const placeText = (task: Task, cook: string | null, host: string, names: Names): string => {
  const kit = [...new Set(task.kit.map(({ id }) => id))].filter((id) => names.kit(id)?.kit.kind !== 'worktop')
  const others = task.cooks.filter((other) => other !== cook)
  const place = [
    ...kit.map((id) => kitText(task, id, names)),
    ...(task.kitchen === host ? [] : [`in ${names.kitchenName(task.kitchen)}`]),
    ...(task.where === 'table' ? ['at the table'] : task.where === 'outside' ? ['outside'] : []),
    ...(cook !== null && others.length > 0 ? [`with ${listText(others.map(names.cookName))}`] : []),
  ].join(', ')
  return place === '' ? '' : `${sentence(place)}.`
}

/** "In the oven at 190 to 200°, with Tess. Leave it until 20:27." */
export const whereText = (task: Task, cook: string | null, host: string, names: Names, zone: string): string =>
  [placeText(task, cook, host, names), timeText(task, zone)].filter(Boolean).join(' ')

const timeText = (task: Task, zone: string): string => {
  const end = clockText(task.end, zone)
  if (task.touch?.what === 'in') return `Then leave it until ${end}.`
  if (task.touch !== null) return task.touch.what === 'out' ? '' : `It stays until ${end}.`
  if (task.isBegun) return `Until ${end}.`
  const minutes = Math.round((task.end - task.start) / 60_000)
  return `${clockText(task.start, zone)} to ${end}, usually ${minutesText(minutes)}.`
}

/** "Due 6 min ago, at 19:46." */
export const overdueText = (overdue: NonNullable<Task['overdue']>, zone: string): string => {
  const since = `${minutesText(overdue.minutes)} ago, at ${clockText(overdue.since, zone)}`
  switch (overdue.what) {
    case 'begin':
      return `Should have begun ${since}.`
    case 'end':
      return `Should have been done ${since}.`
    case 'touch':
      return `Was due ${since}.`
  }
}
