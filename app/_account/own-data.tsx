import css from './account.module.css'

/** All of one's own, to take away. */
export function OwnData() {
  return (
    <section className={css.part} aria-labelledby="own-data">
      <h2 id="own-data">All of your own in one file</h2>
      <p>
        Your account, your evenings with their plans, what you chose and what you changed. Of the evenings that you host it also
        holds the guests and what they answered: keep it where others do not read it. An evening can be brought in again out of
        it.
      </p>
      <a href="/api/account/file" download>
        Take it away
      </a>
    </section>
  )
}
