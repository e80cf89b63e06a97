export type AlertKind = 'begin' | 'touch' | 'look' | 'get-up' | 'plate' | 'serve' | 'overdue'

/**
 * A moment at which somebody is called. The id holds no time, so an order that moves an alert before it has fired moves it, and what has
 * fired is not fired again; a word that something needs longer makes a new one of it.
 */
export interface Alert {
  readonly id: string
  /** Milliseconds since 1970. */
  readonly at: number
  readonly kind: AlertKind
  /** Whom it calls; empty: everybody. */
  readonly cooks: readonly string[]
  readonly step?: string
  readonly batch?: number
  /** `out`, or which of the looks in between, from 1. */
  readonly touch?: 'out' | number
  readonly course?: string
}
