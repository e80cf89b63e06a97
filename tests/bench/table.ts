export type Report = (line: string) => void

/** Columns as wide as what is in them, the first to the left, the others to the right. */
export const table = (report: Report, head: readonly string[], rows: readonly (readonly string[])[]): void => {
  const widths = head.map((name, at) => Math.max(name.length, ...rows.map((row) => row[at]?.length ?? 0)))
  for (const row of [head, ...rows])
    report(row.map((cell, at) => (at === 0 ? cell.padEnd(widths[at] ?? 0) : cell.padStart(widths[at] ?? 0))).join('  '))
  report('')
}
