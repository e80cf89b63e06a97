import type { Doubt } from '#lib/recipes/preview.ts'

/** What of a line was not understood, and what is done with it. */
export const doubtText = (doubt: Doubt, text: string): string => {
  const said = `“${text.slice(doubt.from, doubt.to)}”`
  switch (doubt.kind) {
    case 'number':
      return `the number ${said} is not understood and stays in the words`
    case 'decimal':
      return `${said} may mean two numbers: write a point for parts, or a whole number`
    case 'no-amount':
      return 'no amount is found: it is kept as to taste'
    case 'alternative':
      return `there is another choice at ${said}: only the first amount is taken`
    case 'sum':
      return `${said} cannot be added to what stands before it`
    case 'sentence':
      return 'this reads like a step, not like an ingredient'
    case 'too-long':
      return 'this is longer than an ingredient can be'
    case 'vague':
      return `${said} does not say how much`
  }
}
