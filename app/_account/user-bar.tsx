import css from '#app/_ui/bar.module.css'
import { Bar } from '#app/_ui/bar.tsx'
import { Link } from '#app/_ui/link.tsx'

/** The bar of the pages that belong to a person and not to an evening. */
export function UserBar({ name }: { readonly name: string }) {
  return (
    <Bar>
      <nav className={css.nav} aria-label="You">
        <Link href="/">Evenings</Link>
        <Link href="/dishes">Dishes</Link>
        <Link href="/account">{name.length > 12 ? 'Your account' : name}</Link>
      </nav>
    </Bar>
  )
}
