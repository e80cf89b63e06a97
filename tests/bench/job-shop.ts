import type { Project, ProjectLag } from '#lib/scheduling/project/project.ts'
import { BadFile, type Known, wholeNumbers } from './instance.ts'

/**
 * Reads a job shop in the standard form: comment lines, "jobs machines", then for each job machine and length of its operations in
 * order (Beasley 1990, "OR-Library", J. Oper. Res. Soc. 41:1069-1072). An operation is an activity, a machine a store of one.
 */
export const readJobShop = (text: string, file: string): Project => {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '' && !line.startsWith('#'))
  const [jobs, machines, ...more] = wholeNumbers(lines[0] ?? '', file)
  if (jobs === undefined || machines === undefined || more.length > 0)
    throw new BadFile(`${file}: begins without "jobs machines"`)
  if (lines.length !== jobs + 1) throw new BadFile(`${file}: ${lines.length - 1} lines for ${jobs} jobs`)
  const operations = lines.slice(1).flatMap((line, job) => {
    const numbers = wholeNumbers(line, file)
    if (numbers.length !== 2 * machines) throw new BadFile(`${file}: job ${job} does not have ${machines} operations`)
    return Array.from({ length: machines }, (_, k) => {
      const machine = numbers[2 * k] as number
      if (machine < 0 || machine >= machines) throw new BadFile(`${file}: job ${job} wants machine ${machine}`)
      return { machine, length: numbers[2 * k + 1] as number }
    })
  })
  const lengths = Int32Array.from(operations, ({ length }) => length)
  const lags: ProjectLag[] = []
  for (let i = 0; i + 1 < operations.length; i++)
    if ((i + 1) % machines !== 0) lags.push({ from: i, to: i + 1, least: lengths[i] as number })
  return {
    lengths,
    lags,
    from: new Int32Array(lengths.length),
    to: new Int32Array(lengths.length).fill(lengths.reduce((sum, length) => sum + length, 0)),
    stores: Array.from({ length: machines }, (_, machine) => ({
      capacity: 1,
      needs: Int32Array.from(operations, (operation) => (operation.machine === machine ? 1 : 0)),
    })),
  }
}

/** The published shortest lengths: Fisher & Thompson 1963; Lawrence 1984. All are proven. */
export const SHORTEST: Readonly<Record<string, Known>> = Object.fromEntries(
  Object.entries({ ft06: 55, ft10: 930, ft20: 1165, la01: 666, la02: 655, la03: 597, la04: 590, la05: 593 }).map(
    ([name, best]) => [name, { unsat: false, best, least: best }],
  ),
)
