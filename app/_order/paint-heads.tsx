import type { Names } from '#app/_words/names.ts'
import type { Evening } from '#lib/domain/evening.ts'
import { Head } from './paint-kit.tsx'
import type { Picture } from './picture/picture.ts'

/** Who works in which column, and since when. */
export function PaintHeads({ evening, picture, names, top }: { evening: Evening; picture: Picture; names: Names; top: number }) {
  return (
    <>
      {picture.columns.cooks.map((column) => {
        const cook = evening.cooks.find((candidate) => candidate.id === column.id)
        const first = cook?.presence.find((presence) => presence.from.day === 0)
        const here = first ? `from ${first.from.time}` : ''
        return (
          <Head
            key={column.id}
            large
            x={column.x + column.width / 2}
            y={-top}
            title={names.cookName(column.id)}
            sub={[cook?.host ? 'host' : 'here', here].filter(Boolean).join(cook?.host ? ', ' : ' ')}
          />
        )
      })}
      <Head
        large
        x={picture.columns.table.x + picture.columns.table.width / 2}
        y={-top}
        title="The table"
        sub={`${evening.covers} places`}
      />
    </>
  )
}
