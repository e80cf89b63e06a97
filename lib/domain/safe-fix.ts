/** An edit of the plan that puts a limit of food safety into it. */
export type SafeFix =
  /** The step begins within `minutes` of the end (or the start) of the other one, for safety. */
  | {
      readonly kind: 'limit'
      readonly step: string
      readonly after: string
      readonly from: 'end' | 'start'
      readonly minutes: number
    }
  /** The finished dish waits no longer, for safety. */
  | { readonly kind: 'keep'; readonly dish: string; readonly minutes: number }
  /** Between the two steps it stands in the fridge: in within `minutes`, and out for no longer. */
  | { readonly kind: 'fridge'; readonly after: string; readonly before: string; readonly minutes: number }
