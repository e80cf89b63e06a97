import { Button } from '#app/_ui/button.tsx'
import { Link } from '#app/_ui/link.tsx'
import type { WarningWords } from '#app/_words/warning.ts'
import css from './warn-line.module.css'

interface Props {
  readonly words: WarningWords
  readonly eveningId: string
  readonly onAddDish: () => void
}

/** A warning: what it is about, and the way to where something can be done. */
export function WarnLine({ words: { says, todo, where }, eveningId, onAddDish }: Props) {
  return (
    <li className={css.line}>
      <svg className={css.mark} width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
        <path d="M4 4l10 10M14 4L4 14" />
      </svg>
      <p>
        <span className="vh">Worth a look: </span>
        {says}{' '}
        {where.kind === 'add-dish' ? (
          <Button tone="word" onClick={onAddDish}>
            {todo}
          </Button>
        ) : (
          <Link href={`/evenings/${eveningId}/${where.kind === 'order' ? 'order' : `menu/${where.id}`}`}>{todo}</Link>
        )}
      </p>
    </li>
  )
}
