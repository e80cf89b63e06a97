import { afterEach, expect, test } from 'vitest'
import { pageShelf } from '#app/_sync/shelf.ts'
import type { Whereabouts } from '#lib/plan/whereabouts.ts'
import { readEvening } from '#tests/support/read-evening.ts'
import { type APage, aPage } from './a-page.ts'
import { type AServer, aServer } from './a-server.ts'

const lamb = readEvening('a-lamb')
const [kim, other] = lamb.cooks
const dish = lamb.dishes[1]?.id ?? ''

let server: AServer
const pages: APage[] = []
afterEach(async () => {
  for (const page of pages.splice(0)) page.close()
  await server.close()
})

const open = (user: string): APage => {
  const page = aPage({ port: server.port(), eveningId: lamb.id, user, shelf: pageShelf() })
  pages.push(page)
  return page
}
/** Resolves when this page sees the others so. */
const sees = (
  page: APage,
  wanted: readonly (readonly [name: string, cook: string | null, where: Whereabouts])[],
): Promise<void> => {
  const { company } = page
  const text = JSON.stringify(wanted.map(([name, cook, where]) => ({ ...where, who: { member: `m-${name}`, cook, name } })))
  return new Promise((resolve) => {
    const look = () => {
      if (JSON.stringify(company.others()) !== text) return
      stop()
      resolve()
    }
    const stop = company.subscribe(look)
    look()
  })
}

const menu: Whereabouts = { screen: 'menu', at: [] }
const atDish: Whereabouts = { screen: 'menu', at: [dish] }

test('B9 each sees where the others are, as it changes, until they look away or go; nobody sees themselves', async () => {
  server = await aServer(lamb)
  await server.seat('kim', 'host', kim?.id)
  await server.seat('noor', 'cook', other?.id ?? null)
  const [first, second] = [open('kim'), open('noor')]
  first.company.stand(menu)
  await Promise.all([first.saved(), second.saved()])
  await sees(second, [['kim', kim?.id ?? '', menu]])
  expect(first.company.others()).toEqual([])
  second.company.stand(atDish)
  await sees(first, [['noor', other?.id ?? null, atDish]])
  first.company.stand(atDish)
  await sees(second, [['kim', kim?.id ?? '', atDish]])
  second.company.stand(null)
  await sees(first, [])
  second.company.stand(menu)
  await sees(first, [['noor', other?.id ?? null, menu]])
  second.tryAgain()
  await sees(first, [])
  await sees(first, [['noor', other?.id ?? null, menu]])
  await sees(second, [['kim', kim?.id ?? '', atDish]])
  pages.pop()?.close()
  await sees(first, [])
})

test('B9 two pages of one person are one, and whoever comes later is told who is there; also after the server comes back', async () => {
  server = await aServer(lamb)
  await server.seat('kim', 'host', kim?.id)
  await server.seat('noor')
  const [one, two] = [open('kim'), open('kim')]
  one.company.stand(menu)
  two.company.stand(menu)
  await Promise.all([one.saved(), two.saved()])
  const late = open('noor')
  await sees(late, [['kim', kim?.id ?? '', menu]])
  expect([one.company.others(), two.company.others()]).toEqual([[], []])
  late.company.stand(atDish)
  await sees(one, [['noor', null, atDish]])
  await server.restart()
  await sees(one, [])
  await sees(one, [['noor', null, atDish]])
  await sees(late, [['kim', kim?.id ?? '', menu]])
})
