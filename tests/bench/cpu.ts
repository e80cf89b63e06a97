/** Processor time of this process in user mode, in milliseconds: what others do meanwhile does not count. */
export const cpuMs = (): number => process.cpuUsage().user / 1000

export const measured = <T>(work: () => T): { readonly made: T; readonly ms: number } => {
  const began = cpuMs()
  const made = work()
  return { made, ms: cpuMs() - began }
}

export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

/** The value below which this part of them lies. */
export const share = (values: readonly number[], part: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * part))] ?? Number.NaN
