import type { Care, Course, Dish, Step, StepRole, Touch } from '#lib/domain/menu.ts'
import { durationText } from './duration.ts'

/** What a step asks of its cook, as the first words of a sentence. */
export const careWords: Readonly<Record<Care, string>> = {
  'hands-on': 'Hands on',
  eye: 'Keep an eye on it',
  leave: 'Leave it',
}

export const careHelp: Readonly<Record<Care, string>> = {
  'hands-on': 'somebody works on it all the time',
  eye: 'somebody stays near it',
  leave: 'nobody is needed, but at its ends',
}

export const roleWords: Readonly<Record<StepRole, string>> = {
  make: 'made in its own kitchen',
  carry: 'carried to the hosts’ kitchen',
  finish: 'finished in the hosts’ kitchen',
  plate: 'put on the plates, last of all',
  chore: 'a chore of the house',
}

export const whereWords: Readonly<Record<Step['where'], string>> = {
  kitchen: 'in the kitchen',
  table: 'at the table',
  outside: 'outside',
}

export const serviceWords: Readonly<Record<Course['service'], string>> = {
  plated: 'plated',
  platters: 'on platters',
  'on-table': 'already on the table',
}

export const stateWords: Readonly<Record<Dish['state'], string>> = {
  on: 'on the menu',
  dropped: 'not this time',
  spare: 'kept as a spare',
}

export const keepWords: Readonly<Record<Dish['keeps']['how'], string>> = {
  hot: 'hot',
  warm: 'warm',
  room: 'at room temperature',
  cold: 'cold',
  frozen: 'frozen',
}

export const handsWords: Readonly<Record<1 | 2 | 3, string>> = { 1: 'one cook', 2: 'two cooks', 3: 'three cooks' }

type TouchKind = 'in' | 'out' | 'every'
export const touchKind = (touch: Touch): TouchKind => (typeof touch.when === 'string' ? touch.when : 'every')

export const touchWords: Readonly<Record<TouchKind, string>> = {
  in: 'put it in',
  out: 'take it out',
  every: 'see to it every',
}

/** "put in, seen to every 30 min, taken out". */
export const touchesText = (touches: readonly Touch[]): string =>
  touches
    .map((touch) => {
      if (touch.when === 'in') return 'put in'
      if (touch.when === 'out') return 'taken out'
      return `${touch.does ?? 'seen to'} every ${durationText(touch.when.every)}`
    })
    .join(', ')
