import { expect, type Page } from '@playwright/test'
import Database from 'libsql'

/** A link of the demo evening for one household, made as the guests' screen makes it; the host's page stands on some screen of ours. */
export const inviteHousehold = async (page: Page, eveningId: string, name: string, places: number): Promise<string> => {
  const made = await page.evaluate(
    async ([id, label, most]) => {
      const answer = await fetch(`/api/evenings/${id}/guests`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ kind: 'invite', label, names: [label], places: Number(most) }),
      })
      return (await answer.json()) as { path?: string }
    },
    [eveningId, name, String(places)] as const,
  )
  expect(made.path).toMatch(/^\/reply\/[\w-]{22}$/)
  return made.path ?? ''
}

/** The evening that a fresh install has, whatever else its cooks were given since. */
export const demoEveningId = (dataFolder = process.env.TABLEWARD_DATA): string => {
  const db = new Database(`${dataFolder}/tableward.db`, { timeout: 5000 })
  const [first] = db
    .prepare(
      "SELECT id FROM Evening WHERE json_extract(summary, '$.name') = 'Eight at the long table' ORDER BY createdAt LIMIT 1",
    )
    .all([]) as { readonly id: string }[]
  db.close()
  if (!first) throw new Error('there is no demo evening')
  return first.id
}
