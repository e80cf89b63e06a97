import { clockText, sentence } from '#app/_words/clock.ts'
import { homeBlocks, homeTitle, wayText } from '#app/_words/home-sheet.ts'
import type { Names } from '#app/_words/names.ts'
import { whenText } from '#app/_words/print.ts'
import { DEFER } from '#app/_words/safety.ts'
import type { Evening } from '#lib/domain/evening.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import { homeSheetOf } from '#lib/potluck/home-sheet.ts'
import css from './sheet.module.css'

interface Props {
  readonly kitchen: string
  readonly evening: Evening
  readonly order: RunningOrder
  readonly names: Names
  readonly foot: string
}

/** What one home brings, on paper: dish by dish what is made there, how it travels, when to leave and where it goes. */
export function HomeSheetPage({ kitchen, evening, order, names, foot }: Props) {
  const sheet = homeSheetOf(evening, order, { kitchen })
  const carries = sheet.items.some(({ kind }) => kind === 'dish')
  return (
    <article className={css.sheet} aria-label={`The sheet of ${names.kitchenName(kitchen)}`}>
      <header className={css.sheetHead}>
        <h2>{sentence(homeTitle(sheet, names).replace(/^from /, ''))}</h2>
        <p>
          <b>{evening.name}</b>. {whenText(evening)}.
        </p>
      </header>
      <div className={css.warnings}>
        <p>
          {sheet.start === null ? '' : <b>Start at {clockText(sheet.start, evening.zone)}. </b>}
          {carries ? <b>{wayText(evening, sheet.way)}</b> : 'There is nothing to carry but things.'}
        </p>
      </div>
      {homeBlocks(sheet, names, evening).map(({ title, lines }) => (
        <section key={title} className={css.block}>
          <h3>{title}</h3>
          <ul>
            {lines.map(({ part, text }) => (
              <li key={`${part} ${text}`} className={css.point}>
                <p>{text}</p>
                <span className={part === 'table' || part === 'plan' ? '' : css.box} aria-hidden="true" />
              </li>
            ))}
          </ul>
        </section>
      ))}
      <p className={css.served}>{DEFER}</p>
      <p className={css.foot}>{foot}</p>
    </article>
  )
}
