import { listText } from '#app/_words/clock.ts'
import { ringLetters } from '#app/_words/kit.ts'
import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { type CookColumn, OTHERS } from './picture/columns.ts'
import type { Picture } from './picture/picture.ts'
import { fitText } from './picture/text.ts'
import css from './picture.module.css'

/** Height of the heads, above the drawing. */
const HEIGHT = 54

interface Props {
  readonly evening: Evening
  readonly picture: Picture
  readonly names: Names
}

/** What each column is. It stays in sight while the drawing scrolls below it. */
export function PaintHeads({ evening, picture, names }: Props) {
  const { columns } = picture
  return (
    <svg
      className={css.heads}
      viewBox={`0 0 ${picture.width} ${HEIGHT}`}
      width={picture.width}
      height={HEIGHT}
      aria-hidden="true"
    >
      {columns.cooks.map((column) => {
        const { title, sub } = headOf(evening, column, names)
        return <Head key={column.id} large x={column.x + column.width / 2} title={title} sub={sub} />
      })}
      <Head large x={columns.table.x + columns.table.width / 2} title="The table" sub={`${evening.covers} places`} />
      {columns.ovens.map((column) => {
        const kit = names.kit(column.id)?.kit
        if (kit?.kind !== 'oven') return null
        const shelves = kit.shelves === 1 ? '1 shelf' : `${kit.shelves} shelves`
        return <Head key={column.id} x={column.x + column.width / 2} title={kit.name || 'Oven'} sub={shelves} />
      })}
      {columns.rings ? (
        <>
          <Head x={columns.rings.board.x + columns.rings.board.width / 2} title="Rings" sub="" />
          {columns.rings.units.map((unit) => (
            <text className={css.small} key={unit.id} x={unit.x + unit.width / 2} y={40}>
              {ringLetters[unit.size]}
            </text>
          ))}
        </>
      ) : null}
      {columns.colds.map((column) => {
        const kit = names.kit(column.id)?.kit
        if (kit?.kind !== 'cold') return null
        const title = kit.keep === 'frozen' ? 'Ice' : 'Cold'
        return <Head key={column.id} x={column.x + column.width / 2} title={title} sub={String(kit.places)} />
      })}
    </svg>
  )
}

const headOf = (evening: Evening, column: CookColumn, names: Names): { title: string; sub: string } => {
  if (column.id === OTHERS)
    return { title: 'The others', sub: fitText(listText(column.cooks.map(names.cookName)), 12, column.width - 20) }
  const cook = evening.cooks.find((candidate) => candidate.id === column.id)
  const first = cook?.presence.find((presence) => presence.from.day === 0)
  const here = first ? `from ${first.from.time}` : ''
  return {
    title: names.cookName(column.id),
    sub: [cook?.host ? 'host' : 'here', here].filter(Boolean).join(cook?.host ? ', ' : ' '),
  }
}

function Head({ x, title, sub, large = false }: { x: number; title: string; sub: string; large?: boolean }) {
  return (
    <>
      <text className={large ? css.head : css.headSmall} x={x} y={22}>
        {title}
      </text>
      {sub ? (
        <text className={css.small} x={x} y={40}>
          {sub}
        </text>
      ) : null}
    </>
  )
}
