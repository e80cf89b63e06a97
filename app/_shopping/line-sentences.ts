import { means, type Parts, type Said, wrong } from '#app/_ui/parts.ts'
import { dayName } from '#app/_words/clock.ts'
import { DAYS, dayWords } from '#app/_words/day.ts'
import { aisleText, lineAmountText, moneyText, readMoney } from '#app/_words/shopping.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { LineAmount } from '#lib/domain/shopping.ts'
import type { NotePatch } from '#lib/plan/commands/shop.ts'
import { exact, amountText as storedAmount } from '#lib/quantities/exact.ts'
import { readUnit, sizeOf } from '#lib/quantities/units.ts'
import { readAmount } from '#lib/recipes/make-ingredient.ts'
import type { Line } from '#lib/shopping/line.ts'

type Sentence = Parts<NotePatch>
const NONE = ''

const inLine = (text: string): string => cleanText(text, false).replace(/\s+/g, ' ').trim()

/** An amount in the line's own unit: "1.5 kg" is 1500 g; null when it is none of that kind. */
export const readLineAmount = (text: string, unit: string): LineAmount | null => {
  const amount = readAmount(text, '.')
  if (amount === null) return null
  const n = exact(amount.upTo ?? amount.n)
  const reading = readUnit(amount.unit, null)
  if (unit === 'g' || unit === 'ml') {
    if (reading.kind !== 'unit' || reading.unit.kind !== (unit === 'g' ? 'mass' : 'volume')) return null
    return { n: storedAmount(sizeOf(n, reading.unit)).n, unit }
  }
  return amount.unit === '' || amount.unit.toLowerCase() === unit.toLowerCase() || amount.unit.toLowerCase() === `${unit}s`
    ? { n: storedAmount(n).n, unit }
    : null
}

const exampleOf = (unit: string): string => (unit === 'g' ? '250 g' : unit === 'ml' ? '300 ml' : `3 ${unit}`.trim())

/** "We have 200 g of it; it comes in 250 g packs, buy 2." */
export const amountParts = (line: Line): Sentence => {
  const { unit, have, pack, packs, buy } = line
  const named = (what: string) => `${line.food}: ${what}`
  const haveOf = (text: string): Said<NotePatch> => {
    const said = inLine(text).toLowerCase()
    if (/^(|none|nothing|no)$/.test(said)) return means({ have: undefined })
    if (/^(all|enough|plenty|yes)( of it)?$/.test(said)) return means({ have: 'all' })
    const amount = unit === null ? null : readLineAmount(text, unit)
    return amount ? means({ have: amount }) : wrong(`Write how much, such as ${exampleOf(unit ?? '')}, or all, or none.`)
  }
  const packOf = (text: string): Said<NotePatch> => {
    if (inLine(text) === '') return means({ pack: undefined })
    const amount = unit === null ? null : readLineAmount(text, unit)
    return amount && exact(amount.n).compare(0) > 0
      ? means({ pack: amount })
      : wrong(`Write what one pack holds, such as ${exampleOf(unit ?? '')}. Leave it empty for the usual.`)
  }
  const buyOf = (text: string): Said<NotePatch> => {
    if (inLine(text) === '') return means({ buy: undefined })
    const count = /^\d{1,3}$/.exec(inLine(text))
    return count ? means({ buy: Number(count[0]) }) : wrong('Write a whole number. Leave it empty for as many as are wanted.')
  }
  const haveText = have === null ? '' : have === 'all' ? 'all' : lineAmountText(have, unit ?? '')
  return [
    'In the house we have ',
    { kind: 'text', at: 'have', label: named('how much is in the house'), text: haveText, empty: 'none', write: haveOf },
    ' of it. ',
    ...(unit === null || line.kind === 'own'
      ? []
      : ([
          'It comes in packs of ',
          {
            kind: 'text',
            at: 'pack',
            label: named('what a pack holds'),
            text: pack ? lineAmountText(pack.n, pack.unit) : '',
            empty: 'any size',
            write: packOf,
          },
          '. ',
        ] as const)),
    ...(packs === null && buy === null
      ? []
      : ([
          'Buy ',
          {
            kind: 'text',
            at: 'buy',
            label: named('how many are bought'),
            text: buy === null ? '' : String(buy),
            empty: packs === null ? 'as wanted' : `${packs}, as wanted`,
            write: buyOf,
          },
          '. ',
        ] as const)),
    ...weighedParts(line),
  ]
}

/** "The recipe's weight is as bought", where a table knows what is thrown away. */
const weighedParts = (line: Line): Sentence =>
  line.refuse === null
    ? []
    : [
        'The recipes’ weight is ',
        {
          kind: 'choice',
          at: 'weighed',
          label: `${line.food}: what the recipes weigh`,
          value: line.ready ? 'ready' : 'bought',
          options: [
            ['bought', 'as it is bought'],
            ['ready', 'ready to cook'],
          ],
          choose: (value) => means({ weighed: value === 'ready' ? 'ready' : 'bought' }),
        },
        '.',
      ]

/** "Noor gets it, at the market, among the fish, on Saturday. It costs 4.20." */
export const errandParts = (line: Line, evening: Evening): Sentence => {
  const named = (what: string) => `${line.food}: ${what}`
  const said = evening.shopping?.find(({ id }) => id === line.note)
  const text = (at: 'shop' | 'aisle', what: string, value: string, empty: string): Sentence[number] => ({
    kind: 'text',
    at,
    label: named(what),
    text: value,
    empty,
    write: (written) =>
      inLine(written).length > 80
        ? wrong('Say it in at most 80 letters.')
        : means({ [at]: inLine(written) === '' ? undefined : inLine(written) }),
  })
  return [
    {
      kind: 'choice',
      at: 'by',
      label: named('who gets it'),
      value: line.by ?? NONE,
      options: [[NONE, 'Nobody in particular'], ...evening.cooks.map(({ id, name }) => [id, name || 'A cook'] as const)],
      choose: (by) => means({ by: by === NONE ? undefined : by }),
    },
    ' gets it, at ',
    text('shop', 'shop', line.shop ?? '', 'any shop'),
    ', among ',
    text('aisle', 'where in the shop', line.aisle.kind === 'named' ? line.aisle.name : '', aisleText(line.aisle).toLowerCase()),
    ', on ',
    {
      kind: 'choice',
      at: 'day',
      label: named('day on which it is bought'),
      value: said?.day === undefined ? NONE : String(said.day),
      options: [
        [NONE, line.when.kind === 'on' && !line.when.said ? `${dayName(evening.date, line.when.day)}, being fresh` : 'any day'],
        ...DAYS.map((day) => [String(day), dayWords(evening.date, day)] as const),
      ],
      choose: (day) => means({ day: day === NONE ? undefined : Number(day) }),
    },
    '. It costs ',
    {
      kind: 'text',
      at: 'price',
      label: named('what it costs'),
      text: line.price === null ? '' : moneyText(line.price),
      empty: 'not said',
      write: (written) => {
        if (inLine(written) === '') return means({ price: undefined })
        const price = readMoney(written)
        return price === null ? wrong('Write a price such as 4.20.') : means({ price })
      },
    },
    '.',
  ]
}
