import type { Source } from '#lib/domain/source.ts'

/** By how many degrees a tenfold shorter time is enough: Listeria as FSAI 2018 has it, E. coli O157 in burgers as ACMSF 2007 has it. */
export const Z_C = { listeria: 7.5, coli: 6 } as const

const BASE_C = 70
const BASE_MINUTES = 2

/** Minutes at one temperature all through that do as much as two minutes at 70 °C: 2 × 10^((70 − T)/z). */
export const holdMinutes = (celsius: number, z: number): number => BASE_MINUTES * 10 ** ((BASE_C - celsius) / z)

const Z_ACMSF: Source = {
  publisher: 'ACMSF',
  title: 'Report on the safe cooking of burgers, March',
  year: 2007,
  standing: 'read',
}

const Z_FSAI: Source = {
  publisher: 'FSAI',
  title: 'An Investigation of the Most Appropriate z-Value',
  year: 2018,
  standing: 'quoted',
}

/** As `holdMinutes` by whichever of the two asks for longer. */
export const holdAt = (celsius: number): { readonly minutes: number; readonly source: Source } => {
  const [listeria, coli] = [holdMinutes(celsius, Z_C.listeria), holdMinutes(celsius, Z_C.coli)]
  return listeria > coli ? { minutes: listeria, source: Z_FSAI } : { minutes: coli, source: Z_ACMSF }
}

/** Inside and for how long all through, as published: each does as much as the others. */
export interface Equivalent {
  readonly celsius: number
  readonly seconds: number
}

export const SFBB: { readonly source: Source; readonly rows: readonly Equivalent[] } = {
  source: {
    publisher: 'FSA',
    title: 'Safer Food Better Business, Cooking safely; the same set',
    year: null,
    standing: 'quoted',
  },
  rows: [
    { celsius: 60, seconds: 45 * 60 },
    { celsius: 65, seconds: 10 * 60 },
    { celsius: 70, seconds: 2 * 60 },
    { celsius: 75, seconds: 30 },
    { celsius: 80, seconds: 6 },
  ],
}
