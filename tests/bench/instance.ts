import type { Project } from '#lib/scheduling/project/project.ts'

/** A published project and what is known of its shortest length: unknown bounds are absent. */
export interface Instance {
  readonly name: string
  readonly project: Project
  readonly known: Known
}

export interface Known {
  /** No schedule exists. */
  readonly unsat: boolean
  /** The shortest length anybody published. */
  readonly best?: number
  /** Published: nothing shorter exists. */
  readonly least?: number
}

/** A file that is not what its format says. */
export class BadFile extends Error {}

export const wholeNumbers = (line: string, file: string): number[] => {
  const numbers = line.trim().split(/\s+/).map(Number)
  if (line.trim() === '' || numbers.some((number) => !Number.isInteger(number)))
    throw new BadFile(`${file}: "${line.trim()}" is not a line of whole numbers`)
  return numbers
}
