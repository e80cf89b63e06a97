import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

const text = readFileSync(new URL('../../../app/tokens.css', import.meta.url), 'utf8')

/** The colours of one block of the stylesheet, by name. */
const coloursOf = (block: string): ReadonlyMap<string, string> =>
  new Map([...block.matchAll(/--([a-z0-9-]+): (#[0-9a-f]{6});/g)].map(([, name = '', value = '']) => [name, value]))

const blockAfter = (start: string): string => {
  const at = text.indexOf(start)
  return at < 0 ? '' : text.slice(at, text.indexOf('}', at))
}

const light = coloursOf(blockAfter(':root {'))
const themes = {
  light,
  'dark, as the device likes': new Map([...light, ...coloursOf(blockAfter(':root:not([data-theme="light"])'))]),
  'dark, as chosen': new Map([...light, ...coloursOf(blockAfter(':root[data-theme="dark"]'))]),
} as const

/** Relative luminance: WCAG 2.2, definitions. */
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** Contrast ratio: WCAG 2.2, definitions. */
const contrast = (one: string, other: string): number => {
  const [high = 0, low = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a)
  return (high + 0.05) / (low + 0.05)
}

const GROUNDS = ['page', 'kitchen', 'cloth', 'cloth-2']
const on = (words: readonly string[], grounds: readonly string[], least: number) =>
  words.flatMap((word) => grounds.map((ground) => [word, ground, least] as const))

/** Words and what they stand on, with the least that success criteria 1.4.3 (4.5) and 1.4.11 (3) of WCAG 2.2 ask, or more. */
const PAIRS = [
  ...on(['ink'], GROUNDS, 7),
  ...on(['ink-2', 'ink-3', 'aubergine', 'now-ink', 'late', 'fine'], ['page', 'kitchen', 'cloth'], 4.5),
  ...on(['ink', 'now-ink'], ['now-wash'], 4.5),
  ...on(['ink', 'late'], ['late-wash'], 4.5),
  ...on(['on-night'], ['night'], 7),
  ...on(['on-night-2'], ['night'], 4.5),
  ...on(['on-act'], ['act'], 4.5),
  ...on(['on-now'], ['now'], 7),
  ...on(['on-late'], ['late'], 4.5),
  ...on(['on-aubergine'], ['aubergine'], 4.5),
  ...on(['hem'], ['page', 'cloth'], 3),
]

test('the ratio is that of the standard: black on white 21, #767676 on white 4.54 (WCAG 2.2, technique G18)', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5)
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2)
})

test.each(Object.entries(themes))('E5 words stand out from what they are on: %s', (_, colours) => {
  expect(colours.size).toBeGreaterThan(30)
  const faint = PAIRS.flatMap(([word, ground, least]) => {
    const found = contrast(colours.get(word) ?? '#000000', colours.get(ground) ?? '#000000')
    return found < least ? [`${word} on ${ground}: ${found.toFixed(2)}, not ${least}`] : []
  })
  expect(faint).toEqual([])
})
