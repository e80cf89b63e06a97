import type { Trial } from '#app/_sync/plan.ts'
import { comparedText } from '#app/_words/compare.ts'
import { movesBetween, moveText } from '#app/_words/moves.ts'
import { namesOf } from '#app/_words/names.ts'
import css from './comparing.module.css'

/** Clauses of one sentence: names keep their capital, articles after a semicolon do not. */
const joined = (said: readonly string[]): string =>
  `${said.join('; ').replace(/; (The clash|A new clash|All hosts) /g, (article) => article.toLowerCase())}.`

/** What a change would make better and worse, in two sentences of figures, and which steps it moves. */
export function Comparing({ trial: { before, after, evening } }: { readonly trial: Trial }) {
  const names = namesOf(evening)
  const { better, worse, moved, same } = comparedText(before, after, names)
  const moves = movesBetween(before, after)
  if (same) return <p className={css.line}>Nothing would change.</p>
  return (
    <div className={css.compared}>
      {better.length > 0 ? (
        <p className={css.line}>
          <b className={css.better}>Better:</b> {joined(better)}
        </p>
      ) : null}
      {worse.length > 0 ? (
        <p className={css.line}>
          <b className={css.worse}>Worse:</b> {joined(worse)}
        </p>
      ) : null}
      {better.length === 0 && worse.length === 0 ? <p className={css.line}>No figure changes.</p> : null}
      {moved === null ? null : (
        <details className={css.moves}>
          <summary>{moved}</summary>
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls by itself, and must do so by keyboard too */}
          <ul aria-label="What moves" tabIndex={0}>
            {moves.map((move) => {
              const words = moveText(move, names, evening.zone)
              return <li key={words}>{words}</li>
            })}
          </ul>
        </details>
      )}
    </div>
  )
}
