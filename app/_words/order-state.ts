import type { OrderState } from '#app/_sync/plan.ts'

/** The one line above a running order that is not the last word on the plan on the screen; null when it is. */
export const orderStateText = (state: OrderState): string | null => {
  switch (state.kind) {
    case 'none':
      return null
    case 'current':
      return state.more ? 'A better order is being looked for.' : null
    case 'planning':
      return state.order
        ? 'Being planned again. What you see is from before the last change.'
        : 'The running order is being planned.'
    case 'failed':
      return state.order
        ? `It could not be planned again: ${state.why} What you see is from before.`
        : `It could not be planned: ${state.why}`
  }
}
