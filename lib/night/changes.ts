/** What a new order changes for one cook, or for the courses: a line each. Instants are milliseconds since 1970. */
export type Change =
  | { readonly kind: 'moved'; readonly step: string; readonly batch: number; readonly from: number; readonly to: number }
  /** Taking it out, or a look in between. */
  | {
      readonly kind: 'touch-moved'
      readonly step: string
      readonly batch: number
      readonly touch: 'out' | number
      readonly from: number
      readonly to: number
    }
  | { readonly kind: 'given'; readonly step: string; readonly batch: number; readonly at: number; readonly by: readonly string[] }
  | { readonly kind: 'taken'; readonly step: string; readonly batch: number; readonly to: readonly string[] }
  /** It is not made any more. */
  | { readonly kind: 'gone'; readonly step: string; readonly batch: number }
  /** It is done another way, at its time or another. */
  | { readonly kind: 'other-way'; readonly step: string; readonly batch: number; readonly way: number; readonly at: number }
  | { readonly kind: 'course-moved'; readonly course: string; readonly from: number; readonly to: number }
  | { readonly kind: 'course-gone'; readonly course: string }
