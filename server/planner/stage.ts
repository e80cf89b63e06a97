/**
 * One piece of planning. quick: the first answer, in about 100 ms. better: the whole budget. ways: ways out of the clashes
 * that are left. proof: whether anything is better, where there is a prover. All but the first when nobody waits for one.
 */
export type Stage = 'quick' | 'better' | 'ways' | 'proof'

/** In the order in which they are done, for one evening and among evenings. */
export const STAGES: readonly Stage[] = ['quick', 'better', 'ways', 'proof']
