import { numberText } from '#app/_words/amount.ts'
import { countText } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Proposal } from './proposals.ts'

/** What a proposal does, as the words of its button and as part of "with …". */
export const proposalWords = (proposal: Proposal, names: Names): { readonly todo: string; readonly short: string } => {
  switch (proposal.kind) {
    case 'covers':
      return { todo: `Make it ${countText(proposal.covers)}`, short: `the evening for ${countText(proposal.covers)}` }
    case 'portions': {
      const wanted = numberText(String(proposal.wanted))
      return { todo: `Make it for ${wanted}`, short: `${names.dishName(proposal.dish)} for ${wanted}` }
    }
    case 'for-all':
      return { todo: 'Change it for everybody', short: `${names.dishName(proposal.dish)} changed for everybody` }
    case 'for-some': {
      const portions = numberText(String(proposal.portions))
      return { todo: `Make a variant for ${portions}`, short: `a variant of ${names.dishName(proposal.dish)} for ${portions}` }
    }
    case 'guard':
      return { todo: 'Put that into the plan', short: `${names.dishName(proposal.dish)} kept apart` }
  }
}
