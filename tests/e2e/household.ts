import { expect, type Page } from '@playwright/test'

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

export const demoEveningId = async (page: Page): Promise<string> => {
  const menu = await page.getByRole('link', { name: 'Menu' }).first().getAttribute('href')
  return /\/evenings\/([^/]+)\/menu/.exec(menu ?? '')?.[1] ?? ''
}
