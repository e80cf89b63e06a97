import { msOfInstant } from '#lib/domain/time.ts'
import type { CoreEstimate } from '#lib/night/core-estimate.ts'
import { clockText } from './clock.ts'

type When = Extract<CoreEstimate, { kind: 'when' }>

const degrees = (celsius: number): string => `${Math.round(celsius * 10) / 10}°`

/** Reads what a thermometer shows: "58", "58.5 °C", "58,5". Null when it is none. */
export const readCelsius = (text: string): number | null => {
  const found = /^(-?\d{1,3}(?:[.,]\d)?)\s*°?\s*C?$/i.exec(text.trim())
  const celsius = found?.[1] === undefined ? Number.NaN : Number(found[1].replace(',', '.'))
  return celsius >= -20 && celsius <= 150 ? celsius : null
}

interface Reading {
  readonly at: string
  readonly coreC: number
}

/** "54° at 18:40, of 74°." Before the first reading it says what it is to come to. */
export const readingsText = (readings: readonly Reading[], coreC: number, zone: string): string => {
  const last = readings.at(-1)
  if (!last) return `To ${degrees(coreC)} inside. Two readings a few minutes apart say when that is.`
  const one = readings.length < 2 ? ' One more, a few minutes later, says when it is there.' : ''
  return `${degrees(last.coreC)} at ${clockText(msOfInstant(last.at), zone)}, of ${degrees(coreC)}.${one}`
}

/** "74° likely at 19:24, between 19:18 and 19:33: an estimate, the thermometer decides." */
export const estimatedText = ({ least, likely, most }: When, coreC: number, zone: string): string => {
  const range =
    most === null
      ? `at the earliest ${clockText(least, zone)}, and it may stay below`
      : `between ${clockText(least, zone)} and ${clockText(most, zone)}`
  return `${degrees(coreC)} likely at ${clockText(likely, zone)}, ${range}: an estimate, the thermometer decides.`
}

/** It has got there where it was measured, which says nothing of elsewhere. */
export const reachedText = (coreC: number): string =>
  `It has reached ${degrees(coreC)} there. Measure in a second place before you take it as done.`
