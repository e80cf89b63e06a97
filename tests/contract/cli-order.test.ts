import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { RunningOrder } from '#lib/domain/running-order.ts'
import { runOrder } from '#server/cli/run-order.ts'
import { troubles } from '#tests/support/check-order.ts'
import { loadEvening } from '#tests/support/load-evening.ts'

const LAMB = 'tests/support/evenings/a-lamb.json'
const PORK = 'tests/support/evenings/c-pork.json'
const folder = mkdtempSync(join(tmpdir(), 'tableward-cli-'))
afterAll(() => rmSync(folder, { recursive: true }))

/** The command as people call it: it takes seconds to start, so only what needs a process of its own goes through it. */
const spawned = (args: readonly string[], input = '') => {
  const { status, stdout, stderr } = spawnSync('npm', ['run', '--silent', 'order', '--', ...args], { encoding: 'utf8', input })
  return { status, stdout, stderr }
}
const read = (file: string) => readFileSync(file, 'utf8')
const printed = (args: readonly string[]): string => {
  const result = runOrder(args, read)
  if (!result.ok) throw new Error(result.error)
  return result.value
}
const file = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
/** Planning it takes seconds: once for several tests, and in none that is left out. */
const lazily = (make: () => string): (() => string) => {
  let made: string | null = null
  return () => {
    made ??= make()
    return made
  }
}
const refused = (args: readonly string[], input = ''): string => {
  const result = runOrder(args, (file) => (file === '-' ? input : read(file)))
  if (result.ok) throw new Error(`not refused: ${result.value.slice(0, 200)}`)
  expect(result.error).toMatch(/^[^\n]+$/)
  return result.error
}

describe('a running order', () => {
  test('K1 reads like one: days, clock, cooks, care, kit, courses, figures', () => {
    const { status, stdout, stderr } = spawned([LAMB])
    expect(stderr).toBe('')
    expect(status).toBe(0)
    expect(stdout).toMatch(/^Lamb for six\nSaturday 14 November 2026, for 6\. Guests from 19:15, at the table 19:45\.\n/)
    expect(stdout).toContain('\nFriday 13 November 2026\n')
    expect(stdout).toMatch(
      /\n {2}19:(0[6-9]|1[0-3]) {2}(Kim|Lou) +Roast potatoes\n +leave it 25 min, to 19:3\d · oven at 205–220° · put in 19:\d\d (Kim|Lou)/,
    )
    expect(stdout).toMatch(/oven at 140–155°, 2 shelves · put in \d\d:\d\d \w+ · take out \d\d:\d\d \w+/)
    expect(stdout).toMatch(/\n {2}\d\d:\d\d {2}– +Oven to 205°, hot by 19:\d\d\n/)
    expect(stdout).toMatch(/\n── Soup to table 19:45 · plates off about 20:10\n/)
    expect(stdout).toMatch(/\n {2}(Kim|Lou) misses \d+(\.5)? min, sits 19:45–/)
    expect(stdout).toMatch(/\nNo clash: every wish is kept\.\n$/)
    const clocks = stdout
      .slice(stdout.indexOf('\nSaturday 14 November 2026\n'), stdout.indexOf('\nAt the table'))
      .match(/^ {2}\d\d:\d\d/gm)
    expect(clocks?.length).toBeGreaterThan(20)
    expect(clocks).toEqual([...(clocks ?? [])].sort())
  })

  const pork = lazily(() => printed([PORK]))

  test('K1 clashes are said in words, and are no refusal', () => {
    const stdout = pork()
    expect(stdout).toMatch(/\n(One clash|\d clashes)\n/)
    expect(stdout).toMatch(/ {2}– “[^”]+” comes \d+(\.5)? min too long after “[^”]+” \(\d\d:\d\d to \d\d:\d\d\)/)
  })

  test('K1 each clash is followed by its ways out, and what the guests would notice', () => {
    expect(pork()).toMatch(
      /\n {2}– “[^\n]+\n {6}a way out: let “Roast potatoes” be at 200–230°[^\n]*\. It may come out a little darker\.\n/,
    )
  })

  test('K2 --json prints the published running order, the same for the same seed', () => {
    const first = printed([LAMB, '--json', '--seed', '7'])
    const parsed = RunningOrder.parse(JSON.parse(first))
    expect(parsed.of.seed).toBe(7)
    expect(troubles(loadEvening('a-lamb'), parsed)).toEqual([])
    expect(printed([LAMB, '--seed', '7', '--json'])).toBe(first)
  })

  test('K2 - reads standard input', () => {
    const { status, stdout } = spawned(['-', '--json', '--budget', '50'], read(LAMB))
    expect(status).toBe(0)
    expect(RunningOrder.parse(JSON.parse(stdout)).evening).toBe('a')
  })

  test('K2 --budget ends the search in time', () => {
    const began = performance.now()
    const { cues } = RunningOrder.parse(JSON.parse(printed([LAMB, '--json', '--budget', '100'])))
    expect(cues.length).toBe(26)
    // A search that is not ended would take hours.
    expect(performance.now() - began).toBeLessThan(20_000)
  })

  test('K2 --now plans on the night: nothing starts before it', () => {
    const { cues } = RunningOrder.parse(JSON.parse(printed([LAMB, '--json', '--now', '2026-11-14T12:00:00Z'])))
    expect(cues.length).toBeGreaterThan(0)
    for (const cue of cues) expect(Date.parse(cue.start)).toBeGreaterThanOrEqual(Date.parse('2026-11-14T12:00:00Z'))
  })

  test('K1 -h says how', () => {
    expect(printed(['-h'])).toBe(printed([LAMB, '--help']))
    expect(printed(['-h'])).toContain('npm run --silent order -- FILE.json [--json] [--budget MS] [--seed N] [--now INSTANT]')
  })
})

describe('what is refused, in one line and with exit 2', () => {
  const lamb = JSON.parse(readFileSync(LAMB, 'utf8'))

  test('K3 the command says so on standard error and exits with 2', () => {
    const { status, stdout, stderr } = spawned([file('empty.json', '{}')])
    expect(stdout).toBe('')
    expect(stderr).toMatch(/^order: [^\n]+empty\.json: format: [^\n]+ \(and \d+ more\)\n$/)
    expect(status).toBe(2)
  })

  test('K3 an unknown field is named with its path, others are counted', () => {
    const text = JSON.stringify({ ...lamb, guests: 3, dishes: lamb.dishes.map((dish: object) => ({ ...dish, colour: 'red' })) })
    expect(refused([file('fields.json', text)])).toMatch(/fields\.json: dishes\[0\]\.colour: unknown field \(and 4 more\)$/)
  })

  test('K3 a reference that leads nowhere is named with its path', () => {
    const steps = lamb.steps.map((step: object, index: number) => (index === 3 ? { ...step, dish: 'sopu' } : step))
    expect(refused([file('nowhere.json', JSON.stringify({ ...lamb, steps }))])).toMatch(
      /nowhere\.json: steps\[3\]\.dish: no dish has the id "sopu"$/,
    )
  })

  test('K3 a wrong duration, from standard input', () => {
    const courses = lamb.courses.map((course: object, index: number) => (index === 1 ? { ...course, clearing: 'P1M' } : course))
    expect(refused(['-'], JSON.stringify({ ...lamb, courses }))).toMatch(
      /standard input: courses\[1\]\.clearing: must be an ISO 8601 duration/,
    )
  })

  test.each([
    ['a list', '[]', /document: /],
    ['nothing', '', /not JSON/],
    ['no JSON', '{ "format": \n oops', /not JSON/],
  ])('K3 %s', (_, text, why) => {
    expect(refused([file('not.json', text)])).toMatch(why)
  })

  test('K3 a file that is not there, and a folder', () => {
    expect(refused([join(folder, 'missing.json')])).toMatch(/missing\.json: cannot be read: there is no such file$/)
    expect(refused([folder])).toMatch(/cannot be read: it is a folder$/)
  })

  test.each([
    [[], /FILE\.json is missing/],
    [[LAMB, PORK], /one file at a time/],
    [[LAMB, '--colour'], /--colour/],
    [[LAMB, '--seed', 'one'], /--seed: not a whole number: one/],
    [[LAMB, '--seed', '1.5'], /--seed/],
    [[LAMB, '--budget', '-5'], /--budget/],
    [[LAMB, '--budget', '0'], /--budget: not milliseconds/],
    [[LAMB, '--now', 'tonight'], /--now: not an instant/],
  ])('K3 flags %j', (args, why) => {
    expect(refused(args)).toMatch(why)
  })
})
