import { LinkButton } from '#app/_ui/button.tsx'
import { TablePicture } from '#app/_ui/table-picture.tsx'
import css from './evenings.module.css'

/** Nobody has planned anything yet: an empty table. */
export function EmptyHome() {
  return (
    <section className={css.next} aria-labelledby="empty">
      <div>
        <h1 id="empty">Be at your own table</h1>
        <p className={css.about}>
          Plan a dinner of several courses so that the work is done before your guests sit down, and you can sit with them.
          <br />
          <span>Begin with a name and a day; or ask a host to add you as a cook, and their evening shows up here.</span>
        </p>
        <div className={css.go}>
          <LinkButton href="/evenings/new" tone="now" large>
            Plan an evening
          </LinkButton>
        </div>
      </div>
      <div className={css.picture}>
        <TablePicture width={560} height={372} covers={8} people={[]} colour={null} label="An empty table for eight" names />
      </div>
    </section>
  )
}
