import type { ReactNode } from 'react'
import { Bar } from '#app/_ui/bar.tsx'
import { PlateShape } from '#app/_ui/plate.tsx'
import css from './door.module.css'

/** The way in: what this is for on the left, what to write on the right. */
export function Door({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <>
      <Bar />
      <main id="main" className={css.door}>
        <section className={css.night} aria-label="What this is for">
          <p className={css.title}>
            Be at your
            <br />
            own table
          </p>
          <p className={css.sub}>
            Plan a dinner of several courses so that the work is done before your guests sit down, and you can sit with them.
          </p>
          <svg width="632" height="300" viewBox="0 0 632 300" aria-hidden="true">
            <path className={css.cloth} d="M0 400V60Q0 20 40 20H592Q632 20 632 60V400Z" />
            <path className={css.hem} d="M9 400V64Q9 29 44 29H588Q623 29 623 64V400" />
            {[100, 244, 388, 532].map((x) => (
              <g key={x}>
                <ellipse className={css.empty} cx={x} cy={8} rx={34} ry={7} />
                <PlateShape x={x} y={104} r={44} colour={null} />
              </g>
            ))}
          </svg>
        </section>
        <section className={css.form} aria-labelledby="door-title">
          <h1 id="door-title">{title}</h1>
          {children}
        </section>
      </main>
    </>
  )
}
