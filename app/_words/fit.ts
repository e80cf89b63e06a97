import type { Fit, Verdict } from '#lib/potluck/fit.ts'
import type { Variant } from '#lib/potluck/variant.ts'
import { clashText } from './clash.ts'
import { clockText, sentence } from './clock.ts'
import { durationText } from './duration.ts'
import { useText as wantText } from './kit.ts'
import type { Names } from './names.ts'

/** A form of an offer, behind "fits if it comes": "cold, to be heated here". */
export const variantText = (variant: Variant): string => {
  switch (variant.kind) {
    case 'as-offered':
      return 'as it is offered'
    case 'cold':
      return 'cold, to be heated here'
    case 'ring':
      return 'to be heated on a ring, not in the oven'
    case 'hot':
      return 'heated at home and hot in its box'
    case 'earlier':
      return `${durationText(variant.by)} earlier`
  }
}

const kitThen = (fit: Extract<Fit, { kind: 'full' }>, names: Names, zone: string): string =>
  `${names.kitName(fit.kit)} is full ${clockText(fit.from, zone)}–${clockText(fit.to, zone)}`

const hoursWords: Readonly<Record<Extract<Fit, { kind: 'no-hours' }>['lacks'], (cook: string) => string>> = {
  home: (cook) => `${cook} has not said when they are at home`,
  host: (cook) => `${cook} has not said when they come here`,
  way: (cook) => `${cook} has less time between leaving home and being here than the way takes on a bad day`,
}

/** What stands in the way of an offer, or null: "the oven is full 19:10–19:40". */
export const fitText = (fit: Fit, names: Names, zone: string): string | null => {
  switch (fit.kind) {
    case 'fits':
      return null
    case 'no-hours':
      return hoursWords[fit.lacks](names.cookName(fit.cook))
    case 'lacks':
      return `it wants ${wantText(fit.use)}, which the kitchen here has not`
    case 'full':
      return kitThen(fit, names, zone)
    case 'too-long':
      return `it may take ${durationText(fit.most)} from home to the table, and would take ${durationText(fit.by)} longer`
    case 'hurts': {
      const [first, ...others] = fit.clashes
      if (!first) return null
      const more = others.length === 0 ? '' : ` And ${others.length === 1 ? 'one more thing' : `${others.length} more things`}.`
      return `${clashText(first, names)}${more}`
    }
  }
}

/** The verdict in one sentence: "It fits." "It fits if it comes cold, to be heated here. Otherwise the oven is full 19:10–19:40." */
export const verdictText = (verdict: Verdict, names: Names, zone: string): string => {
  switch (verdict.kind) {
    case 'fits':
      return 'It fits.'
    case 'fits-if': {
      const why = fitText(verdict.because, names, zone)
      const comes = verdict.variant.kind === 'ring' ? 'it is' : 'it comes'
      return ended(`It fits if ${comes} ${variantText(verdict.variant)}${why ? `. Otherwise ${why}` : ''}`)
    }
    case 'does-not':
      return ended(sentence(fitText(verdict.because, names, zone) ?? 'it does not fit'))
  }
}

const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`)
