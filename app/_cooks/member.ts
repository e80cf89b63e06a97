/** Somebody who may open this evening. */
export interface Member {
  readonly id: string
  readonly name: string
  /** null: not told, or none. */
  readonly email: string | null
  /** They have an account; else they came by a link. */
  readonly account: boolean
  readonly role: 'host' | 'cook'
  readonly cook: string | null
  readonly you: boolean
}

/** A link that opens a seat now; `member`: who has sat down by it. */
export interface SeatLinkShown {
  readonly id: string
  readonly label: string
  readonly cook: string | null
  readonly member: string | null
}
