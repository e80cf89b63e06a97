import { means, type Parts, wrong } from '#app/_ui/parts.ts'
import { listText } from '#app/_words/clock.ts'
import { heatText, readDegrees } from '#app/_words/heat.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Step } from '#lib/domain/menu.ts'
import { type SafeCore, safeCores } from '#lib/domain/safe-core.ts'
import type { Scene } from './scene.ts'
import type { StepPatch } from './step-edit.ts'

const MOST_LETTERS = 200

const withUntil = (
  until: Step['until'],
  change: { readonly sign?: string | undefined; readonly coreC?: number | undefined },
): StepPatch => {
  const { sign, coreC } = { ...until, ...change }
  const next = { ...(coreC === undefined ? {} : { coreC }), ...(sign === undefined ? {} : { sign }) }
  return { until: Object.keys(next).length === 0 ? undefined : next }
}

/** "Ready when the edge is deep gold, and 74° inside." With the published temperatures beside it. */
export const readyParts = (scene: Scene): Parts<StepPatch> => {
  const { step, name } = scene
  return [
    'Ready when ',
    {
      kind: 'text',
      at: 'until.sign',
      label: `${name}: sign that it is ready`,
      text: step.until?.sign ?? '',
      empty: 'you say how it looks or feels',
      write: (text) => {
        const sign = cleanText(text.trim(), false)
        return sign.length > MOST_LETTERS
          ? wrong(`Say it in at most ${MOST_LETTERS} letters.`)
          : means(withUntil(step.until, { sign: sign || undefined }))
      },
    },
    ', and inside it is ',
    {
      kind: 'text',
      at: 'until.coreC',
      label: `${name}: temperature inside`,
      text: step.until?.coreC === undefined ? '' : heatText(step.until.coreC, step.until.coreC),
      empty: 'as warm as it will',
      write: (text) => {
        if (text.trim() === '') return means(withUntil(step.until, { coreC: undefined }))
        const coreC = readDegrees(text)
        return coreC === null ? wrong('Write degrees, such as 74° or 165 F.') : means(withUntil(step.until, { coreC }))
      },
    },
    '.',
    ...safeNotes(scene),
  ]
}

const rowText = ({ words, atLeastC, restMinutes }: SafeCore): string =>
  `${atLeastC}° for ${words}${restMinutes > 0 ? ` and ${restMinutes} min of rest` : ''}`

/** What is published for the foods of this dish, and whether the step says less. Nothing here says that anything is safe. */
const safeNotes = ({ evening, step }: Scene): Parts<never> => {
  const coreC = step.until?.coreC
  const rows = safeCores(evening.ingredients.filter((ingredient) => ingredient.dish === step.dish))
  const lower = coreC === undefined ? [] : rows.filter((row) => coreC < row.atLeastC)
  if (rows.length === 0)
    return coreC === undefined
      ? []
      : [{ kind: 'note', at: 'until.safe', tone: 'means', words: `How warm it must be depends on the food. ${DEFER}` }]
  return [
    {
      kind: 'note',
      at: 'until.safe',
      tone: lower.length > 0 ? 'amiss' : 'means',
      words:
        lower.length > 0
          ? `That is less than FoodSafety.gov gives: ${listText(lower.map(rowText))}. ${DEFER}`
          : `FoodSafety.gov gives at least ${listText(rows.map(rowText))}. ${DEFER}`,
    },
  ]
}

const DEFER = 'Follow your local rules; the thermometer decides.'
