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
