/** Somebody who may open this evening. */
export interface Member {
  readonly id: string
  readonly name: string
  readonly email: string
  readonly role: 'host' | 'cook'
  readonly cook: string | null
  readonly you: boolean
}
