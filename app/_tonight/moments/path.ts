/** What every path through something that has happened is given. */
export interface PathProps {
  /** It is told: the path folds. */
  readonly onTaken: () => void
}
