import { secondsOf } from '#lib/domain/duration.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { Clash, ClashKind, Cue, Remedy, RunningOrder } from '#lib/domain/running-order.ts'
import type { ColdWords } from '#lib/plan/commands/bring-dish-cold.ts'
import { atText, clockText, listText, sentence } from './clock.ts'
import { durationText } from './duration.ts'
import { heatText } from './heat.ts'
import type { Names } from './names.ts'
import { wayText } from './way.ts'
import { fightProvedText } from './wish.ts'

type CueState = Cue['state']

const quoted = (names: Names, steps: readonly string[]): string =>
  listText(steps.slice(0, 4).map((step) => `“${names.stepName(step)}”`)) || 'a step'

const titles: Readonly<Record<ClashKind, string>> = {
  lag: 'too long between two steps',
  keeps: 'waits longer than it keeps',
  carry: 'too long on the way',
  wait: 'a long wait between courses',
  'sit-down': 'late for sit-down',
  safety: 'not safe, so left out',
  'no-cook': 'nobody is free for it',
  'no-kit': 'no kit is free for it',
}

/** "too long between two steps". */
export const clashWhat = ({ kind }: Pick<Clash, 'kind'>): string => titles[kind]

/** "Clash at 20:14: too long between two steps". */
export const clashTitle = (clash: Clash, zone: string): string => `Clash at ${clockText(clash.from, zone)}: ${clashWhat(clash)}`

/** What cannot be kept and by how much, and what it fights with, in one to three sentences. */
export const clashText = (
  clash: Clash,
  names: Names,
  cues: readonly { readonly step: string; readonly state: CueState }[] = [],
): string => {
  const by = durationText(clash.by)
  const steps = quoted(names, clash.steps)
  const dish = clash.dish === null ? 'A dish' : names.dishName(clash.dish)
  const course = clash.course === null ? 'the next course' : names.courseName(clash.course)
  // A step in several batches may be left out in part.
  const left = clash.steps.some((step) => cues.some((cue) => cue.step === step))
    ? 'a batch of it is left out'
    : 'it is left out of the order'
  const fight = fightText(clash, names)
  // What is under way although it cannot be: a fact of the night, and nothing that was left out.
  const isUnderWay = clash.steps.every((step) => cues.some((cue) => cue.step === step && cue.state === 'running'))
  switch (clash.kind) {
    case 'lag': {
      const [before, after] = [quoted(names, clash.steps.slice(0, 1)), quoted(names, clash.steps.slice(1, 2))]
      return `${sentence(after)} comes ${by} later after ${before} than it should.${fight}`
    }
    case 'keeps':
      return `${dish} is ready early and waits ${by} longer than it keeps.${fight}`
    case 'carry':
      return `${dish} is on its way ${by} longer than it should be.${fight}`
    case 'wait':
      if (clash.dish !== null) return `${dish} comes ${by} after its course was served.`
      return `Guests wait ${by} longer than you wanted for ${course}.${fight}`
    case 'sit-down':
      return `${course} comes ${by} after you wanted to sit down.${fight}`
    case 'safety':
      if (isCarriedOver(clash, names))
        return `${dish} would be on its way and waiting ${by} longer than is safe, so ${left}.${fight}`
      return `${steps} cannot be placed within its safe times, so ${left}.${fight}`
    case 'no-cook':
      if (isUnderWay && clash.steps.length > 1) return `One cook is at ${steps} for ${by}.`
      if (isUnderWay) return `Nobody is there for ${steps}, which is under way, for ${by}.`
      return `No cook is there and free for ${steps}, so ${left}.`
    case 'no-kit':
      if (isUnderWay) return `${sentence(steps)} are under way and share what only one of them can have, for ${by}.${fight}`
      return `There is no kit for ${steps}, so ${left}.${fight}`
  }
}

/** Left out for being carried too long: then it is from when it leaves to when it is next touched, and by how much that is over its limit. */
const isCarriedOver = ({ steps, dish, from, to, by }: Clash, names: Names): boolean => {
  const limit = names.dish(dish)?.carry
  if (names.step(steps[0] ?? '')?.role !== 'carry' || limit?.kind !== 'safety') return false
  return Math.abs(Date.parse(to) - Date.parse(from) - 1000 * (secondsOf(by) + secondsOf(limit.most))) < 60_000
}

/** The steps that a clash is not itself about, and the kit that all of them want. */
const fightText = (clash: Clash, names: Names): string => {
  const own = (step: string, at: number): boolean => {
    const dish = names.dish(names.step(step)?.dish ?? null)
    if (clash.kind === 'lag') return at < 2
    return clash.kind === 'wait' || clash.kind === 'sit-down' ? dish?.course === clash.course : dish?.id === clash.dish
  }
  const others = clash.steps.filter((step, at) => !own(step, at))
  const kit = clash.kit === null ? null : names.kitName(clash.kit)
  if (others.length === 0) return kit === null ? '' : ` It is about ${kit}.`
  return ` It fights with ${quoted(names, others)}${kit === null ? '' : ` over ${kit}`}.`
}

/** A way out, as what to do. What the guests would notice is its own `said`. */
export const remedyText = (remedy: Remedy, names: Names, evening: Evening): string => {
  switch (remedy.kind) {
    case 'use-way':
      return `Do “${names.stepName(remedy.step)}” the ${['first', 'second', 'third'][remedy.way] ?? 'other'} way${howText(remedy, names)}`
    case 'do-ahead':
      return `Do “${names.stepName(remedy.step)}” ahead, from ${atText(evening.date, remedy.earliest)}`
    case 'other-oven':
      return `Use ${names.kitName(remedy.kit)} for “${names.stepName(remedy.step)}”`
    case 'course-later':
      return `Serve ${names.courseName(remedy.course)} ${durationText(remedy.by)} later`
    case 'give-to':
      return `Give “${names.stepName(remedy.step)}” to ${names.cookName(remedy.cook)}`
    case 'widen-temperature':
      return `Let “${names.stepName(remedy.step)}” be at ${heatText(remedy.lowC, remedy.highC)}`
    case 'keep-longer':
      return `Let ${names.dishName(remedy.dish)} wait ${durationText(remedy.by)} longer`
    case 'wait-longer':
      return `Let “${names.stepName(remedy.step)}” wait ${durationText(remedy.by)} longer after “${names.stepName(remedy.after)}”`
    case 'bring-cold':
      return `Bring ${names.dishName(remedy.dish)} cold and heat it beside the table`
    case 'drop':
      return `Drop ${names.dishName(remedy.dish)}`
  }
}

/** What the steps are called with which a dish is chilled, kept and heated again when it is brought cold. */
export const coldWords = (dish: string): ColdWords => ({
  chill: `Put ${dish} into shallow boxes and chill it in the fridge`,
  fridge: `Put ${dish} in the fridge here`,
  heat: `Heat ${dish} until it is steaming hot throughout`,
})

/** ": keep an eye on it on a medium ring, usually 20 min". */
const howText = ({ step, way }: Extract<Remedy, { kind: 'use-way' }>, names: Names): string => {
  const how = names.step(step)?.ways[way]
  return how
    ? `: ${wayText(how)
        .replace(/^./, (letter) => letter.toLowerCase())
        .replace(/\.$/, '')}`
    : ''
}

/** What a way out costs the cooks: "The cooks miss 4 min more at the table." Null when it costs them nothing. */
export const remedyPrice = ({ missed }: Remedy): string | null =>
  secondsOf(missed) === 0 ? null : `The cooks miss ${durationText(missed)} more at the table.`

/** What a clash is of, whenever it is and whatever it fights with. */
export const clashKey = ({ kind, steps, dish, course }: Clash): string => {
  switch (kind) {
    case 'lag':
      return `lag ${steps.slice(0, 2).join(' ')}`
    case 'keeps':
    case 'carry':
      return `${kind} ${dish}`
    case 'wait':
    case 'sit-down':
      return `${kind} ${dish} ${course}`
    case 'safety':
    case 'no-cook':
    case 'no-kit':
      return `${kind} ${steps.join(' ')}`
  }
}

/** "the oven", "“Crisp the skin”", "Main": what a clash is about, in few words. */
export const clashSubject = (clash: Clash, names: Names): string => {
  if (clash.kit !== null) return names.kitName(clash.kit)
  if (clash.kind === 'wait' || clash.kind === 'sit-down')
    return clash.course === null ? 'a course' : `the wait for ${names.courseName(clash.course)}`
  const step = clash.kind === 'lag' ? clash.steps[1] : clash.steps[0]
  if (clash.kind === 'keeps' || clash.kind === 'carry' || step === undefined)
    return clash.dish === null ? 'a dish' : names.dishName(clash.dish)
  return `“${names.stepName(step)}”`
}

/** What a person can do where the planner knows no way out. */
const advice: Readonly<Record<ClashKind, string>> = {
  lag: 'Look at the two steps: may one wait longer, be done on another day, in another way or in another kitchen?',
  keeps:
    'Look at the dish: does it keep longer in another way, can its last step come later, or can another dish of its course go first?',
  carry: 'Look at the way: can it be packed to keep longer, or finished beside the table?',
  wait: 'Look at the course: may it be wanted later, can more of it be done ahead, or can somebody help?',
  'sit-down': 'Look at the first course: can you sit down later, begin sooner, or can somebody help?',
  safety:
    'Its times are a matter of safety and are not bent. Look at the dish: another way, another day, or something else in its place.',
  'no-cook': 'Look at who is there when: longer hours, another cook, or fewer hands for the step.',
  'no-kit': 'Look at the kitchen: does it have what the step asks for, or can the step do with something else?',
}

/** What is proved to fight where nothing solves it, and what a person can do. */
export const noWayText = (clash: Clash, names: Names, proof: RunningOrder['proof']): string =>
  `${proof.kind === 'fight' ? `${fightProvedText(proof.wishes, names)} ` : ''}${advice[clash.kind]}`
