import { longDate } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import { peopleText } from '#app/_words/print.ts'
import {
  aisleText,
  drinksText,
  labelText,
  lineAmountText,
  lineText,
  shopText,
  unwrittenText,
  wantedText,
  whenText,
  whoText,
} from '#app/_words/shopping.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { groupLines } from '#lib/shopping/groups.ts'
import { isOpen, type Line } from '#lib/shopping/line.ts'
import css from './sheet.module.css'

interface Props {
  readonly evening: Evening
  readonly names: Names
  /** What is to be on it; what is in the basket or in the house already is left out here. */
  readonly lines: readonly Line[]
  readonly foot: string
}

/** What is still to be bought, shop by shop and along the aisles, with boxes to tick. */
export function ShoppingSheet({ evening, names, lines, foot }: Props) {
  const open = lines.filter(isOpen)
  const unwritten = unwrittenText(evening, names)
  const shops = groupLines(open)
  const withShops = shops.length > 1 || shops.some(({ shop }) => shop !== null)
  const Aisle = withShops ? 'h4' : 'h3'
  return (
    <article className={css.sheet} aria-label="Shopping list">
      <header className={css.sheetHead}>
        <h2>Shopping</h2>
        <p>
          <b>{evening.name}</b> {peopleText(evening)}, {longDate(evening.date)}.
        </p>
      </header>
      {shops.length === 0 ? <p>{lines.length === 0 ? 'Nothing is on the list yet.' : 'Nothing on it is left to buy.'}</p> : null}
      {shops.map(({ shop, aisles }) => (
        <section key={shop ?? ''}>
          {withShops ? <h3 className={css.shop}>{shopText(shop)}</h3> : null}
          <div className={css.aisles}>
            {aisles.map(({ aisle, lines: here }) => (
              <section key={aisleText(aisle)} className={css.aisleBlock}>
                <Aisle>{aisleText(aisle)}</Aisle>
                <ul>
                  {here.map((line) => (
                    <BuyLine key={line.key} line={line} evening={evening} names={names} />
                  ))}
                </ul>
              </section>
            ))}
          </div>
        </section>
      ))}
      {unwritten ? <p>{unwritten}</p> : null}
      <p className={css.foot}>
        {drinksText(open, evening)} {foot}
      </p>
    </article>
  )
}

function BuyLine({ line, evening, names }: { readonly line: Line } & Pick<Props, 'evening' | 'names'>) {
  const { standing, unit } = line
  const more = standing.kind === 'more' && unit !== null ? `${lineAmountText(standing.n, unit)} more ${line.food}` : ''
  const about = [wantedText(line), whenText(line.when, evening.date), whoText(line, names)].filter(Boolean)
  const label = labelText(line)
  return (
    <li className={css.buy}>
      <span className={css.box} aria-hidden="true" />
      <div>
        <b>{more || lineText(line)}</b>
        {about.length > 0 ? <small>{about.join('; ')}</small> : null}
        {label ? <small>{label}</small> : null}
      </div>
    </li>
  )
}
