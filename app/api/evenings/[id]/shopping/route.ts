import { listOf } from '#app/_shopping/list-of.ts'
import { namesOf } from '#app/_words/names.ts'
import { TABLE_HEAD, tableRow } from '#app/_words/shopping-table.ts'
import { groupLines } from '#lib/shopping/groups.ts'
import { currentUser } from '#server/auth/who.ts'
import { readEvening } from '#server/evenings/read.ts'
import { csvText } from '#server/web/csv.ts'

/** The shopping list as a table for a spreadsheet; of the guests' needs it says nothing. */
export const GET = async (_request: Request, { params }: { params: Promise<{ id: string }> }): Promise<Response> => {
  const user = await currentUser()
  if (!user) return new Response('Sign in first.\n', { status: 401 })
  const found = await readEvening(user.id, (await params).id)
  if (!found.ok) return new Response('There is no such evening.\n', { status: 404 })
  const { evening, order } = found.value
  const names = namesOf(evening)
  const rows = groupLines(listOf(evening, order, null).lines).flatMap(({ aisles }) =>
    aisles.flatMap(({ lines }) => lines.map((line) => tableRow(line, evening, names))),
  )
  return new Response(csvText(TABLE_HEAD, rows), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="shopping-${evening.date}.csv"`,
      'cache-control': 'private, no-store',
    },
  })
}
