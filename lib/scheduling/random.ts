/** A seeded source of numbers: the same seed gives the same sequence everywhere. Not for secrets. */
export interface Random {
  /** A number in [0, 1). */
  readonly unit: () => number
  /** An integer in [0, below); 0 when below is not above 0. */
  readonly below: (below: number) => number
}

/** sfc32 by Chris Doty-Humphrey (PractRand), started from one 32-bit seed and stirred. */
export const randomFrom = (seed: number): Random => {
  let a = 0x9e3779b9
  let b = 0x243f6a88
  let c = seed | 0
  let counter = 1
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (((c << 21) | (c >>> 11)) + sum) | 0
    return sum >>> 0
  }
  for (let i = 0; i < 12; i++) next()
  const unit = () => next() / 4294967296
  return { unit, below: (below) => (below > 0 ? Math.floor(unit() * below) : 0) }
}
