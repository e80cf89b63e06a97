/** What the Evenings page tells of each one. */
export interface EveningShown {
  readonly id: string
  readonly name: string
  readonly date: string
  readonly zone: string
  readonly sitDown: string
  readonly covers: number
  readonly role: 'host' | 'cook'
  readonly courseNames: readonly string[]
  readonly cookNames: readonly string[]
  readonly dishes: number
}
