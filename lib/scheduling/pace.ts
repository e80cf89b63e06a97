/** ⌈x⌉, forgiving what binary fractions add: 10 × 1.1 is 11. */
export const roundUp = (x: number): number => Math.ceil(x - 1e-9)
