import { parseArgs } from 'node:util'
import { Instant } from '#lib/domain/atoms.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { parseEvening } from '#lib/domain/parse.ts'
import { fail, ok, type Result } from '#lib/domain/result.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { DEFAULT_BUDGET, planEvening } from '#lib/order/engine.ts'
import { WAYS_STEPS, withWaysOut } from '#lib/order/ways-out.ts'
import type { Budget } from '#lib/scheduling/schedule.ts'
import { orderText } from './order-text.ts'

const HELP = `Plans an evening and prints its running order.

  npm run --silent order -- FILE.json [--json] [--budget MS] [--seed N] [--now INSTANT]

  FILE.json      an evening (docs/evening.schema.json); - reads it from standard input
  --json         print the running order as JSON (docs/running-order.schema.json)
  --budget MS    search for so many milliseconds; without it the work is counted, and the answer always the same
  --seed N       another whole number is another search (default ${DEFAULT_BUDGET.seed})
  --now INSTANT  plan on the night, from this moment on: 2026-11-14T19:20:00Z
  -h, --help     this text

Exit 0 with a running order, also one with clashes; 2 when the file is not an evening or a flag is wrong.`

interface Wanted {
  readonly file: string
  readonly json: boolean
  readonly work: Work
  readonly now?: string
}

/** How long to search: steps, and a time limit where one is asked for. */
interface Work {
  readonly steps: number
  readonly seed: number
  readonly ms?: number
}

/** Insertions a millisecond: fewer than most evenings allow, so that time is left for a better chance. */
const STEPS_A_MS = 12

/** The share of a time limit after which an order with clashes is not made better, but ways out of them are looked for. */
const PLANNING = 0.5

const workOf = (ms: string | undefined, seed: string | undefined): Result<Work, string> => {
  const number = seed === undefined ? DEFAULT_BUDGET.seed : Number(seed)
  if (seed?.trim() === '' || !Number.isSafeInteger(number)) return fail(`--seed: not a whole number: ${seed}`)
  if (ms === undefined) return ok({ steps: DEFAULT_BUDGET.steps, seed: number })
  const limit = Number(ms)
  if (ms.trim() === '' || !(limit > 0) || limit > 3_600_000) return fail(`--budget: not milliseconds from 1 to 3600000: ${ms}`)
  return ok({ steps: Math.ceil(limit * STEPS_A_MS), seed: number, ms: limit })
}

const OPTIONS = {
  json: { type: 'boolean' },
  budget: { type: 'string' },
  seed: { type: 'string' },
  now: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const

const readFlags = (args: readonly string[]): Result<Wanted | 'help', string> => {
  let parsed: ReturnType<typeof parseArgs<{ options: typeof OPTIONS; allowPositionals: true }>>
  try {
    parsed = parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true })
  } catch (error) {
    return fail(error instanceof Error ? error.message : String(error))
  }
  const { values, positionals } = parsed
  if (values.help) return ok('help')
  const [file, ...others] = positionals
  if (file === undefined) return fail('FILE.json is missing; -h says more')
  if (others.length > 0) return fail(`one file at a time, not also ${others[0]}`)
  if (values.now !== undefined && !Instant.safeParse(values.now).success)
    return fail(`--now: not an instant such as 2026-11-14T19:20:00Z: ${values.now}`)
  const work = workOf(values.budget, values.seed)
  if (!work.ok) return work
  return ok({ file, json: values.json ?? false, work: work.value, ...(values.now === undefined ? {} : { now: values.now }) })
}

const oneLine = (text: string): string => text.replace(/\s+/g, ' ')

const CANNOT: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be read',
}

const readEvening = (file: string, read: (file: string) => string): Result<Evening, string> => {
  const name = file === '-' ? 'standard input' : file
  let data: unknown
  try {
    data = JSON.parse(read(file).replace(/^\uFEFF/, ''))
  } catch (error) {
    if (error instanceof SyntaxError) return fail(`${name}: not JSON: ${error.message}`)
    const code = error instanceof Error && 'code' in error ? String(error.code) : ''
    return fail(`${name}: cannot be read: ${CANNOT[code] ?? String(error)}`)
  }
  const parsed = parseEvening(data)
  if (parsed.ok) return parsed
  const [first, ...others] = parsed.error
  const more = others.length > 0 ? ` (and ${others.length} more)` : ''
  return fail(`${name}: ${first?.path || 'the document'}: ${first?.why ?? 'not an evening'}${more}`)
}

/** With a time limit the last part of it is for ways out when something clashes, and for a better order when nothing does. */
const planned = (evening: Evening, { steps, seed, ms }: Work, now: string | undefined): RunningOrder => {
  const told = now === undefined ? {} : { now }
  const begin = performance.now()
  const until = (share: number): Pick<Budget, 'stop'> =>
    ms === undefined ? {} : { stop: () => performance.now() > begin + ms * share }
  const order = planEvening(evening, { ...told, budget: { steps, seed, ...until(PLANNING) } })
  if (order.clashes.length > 0) return withWaysOut(evening, order, { ...told, budget: { steps: WAYS_STEPS, seed, ...until(1) } })
  return ms === undefined ? order : planEvening(evening, { ...told, hint: order, budget: { steps, seed, ...until(1) } })
}

/**
 * What to print for these arguments, or why not, in one line. `read` gives a file's text, "-" being standard input, and
 * throws as `readFileSync` does.
 */
export const runOrder = (args: readonly string[], read: (file: string) => string): Result<string, string> => {
  const wanted = readFlags(args)
  if (!wanted.ok) return fail(oneLine(wanted.error))
  if (wanted.value === 'help') return ok(`${HELP}\n`)
  const { file, json, work, now } = wanted.value
  const evening = readEvening(file, read)
  if (!evening.ok) return fail(oneLine(evening.error))
  const order = planned(evening.value, work, now)
  return ok(json ? `${JSON.stringify(order, null, 1)}\n` : orderText(evening.value, order))
}
