import { expect, test } from '@playwright/test'
import { openDatabase } from '#server/db/open.ts'
import { cook, course, dish, dishWith, evening, follows, step } from '#tests/support/evening-builders.ts'
import { clean, fits } from './look.ts'
import { openDish, ready, saved } from './people.ts'
import { plant, seated } from './seated.ts'

const NIGHTS = ['2026-03-07', '2026-05-09', '2026-08-15']
const dinner = evening(
  { covers: 8, date: '2099-03-06', name: 'A dinner to come', cooks: [cook('kim')] },
  course('main', dish('stew', dishWith({ name: 'Stew' }), step('chop', 20), step('braise', 60, follows('chop')))),
)

test('LE4 LE5 LE7 E16 what a step took on nights before stands at it, is taken in one tap, and the dish is found again with how it went', async ({
  browser,
  baseURL,
}) => {
  test.setTimeout(120_000)
  const { eveningId, userIds, pages, close } = await seated(
    browser,
    dinner,
    [{ name: 'Kim', cook: 'kim', baseURL: baseURL ?? '' }],
    'menu',
  )
  const [userId = ''] = userIds
  const [page] = pages
  if (!page) throw new Error('nobody came')
  const db = openDatabase(`${process.env.TABLEWARD_DATA}/tableward.db`)
  for (const [at, date] of NIGHTS.entries()) {
    const id = await plant({ ...dinner, date, name: `Night ${at + 1}` }, [{ userId, cook: 'kim', role: 'host' }])
    // Chopped in 30 min where 20 are written, each time.
    await db.stepMemory.create({
      data: {
        eveningId: id,
        step: 'chop',
        userId,
        closedAt: new Date(`${date}T23:00:00Z`),
        date,
        dish: 'stew',
        does: 'do chop',
        role: 'make',
        care: 'hands-on',
        kit: 'none',
        kitchen: dinner.kitchens[0]?.name.toLowerCase() ?? '',
        written: 20,
        took: 30,
        heatC: null,
        byDoneness: false,
      },
    })
  }
  await db.$disconnect()

  await openDish(page, eveningId, 'stew')
  await page.getByRole('button', { name: 'Do chop', exact: true }).click()
  const told = page.getByText(/^Usually .* here/)
  // 20 × 1.5^(3/4): three nights to one of what is written.
  await expect(told).toHaveText(/^Usually 27 min here, .* \(three nights; written: 20 min\)\./)
  await clean(page, 'a step with its usual minutes')
  await fits(page, 'a step with its usual minutes')
  await page.getByRole('button', { name: /take what it usually takes here/ }).click()
  await expect(page.getByText('Taken; undo takes it back.')).toBeVisible()
  await expect(page.getByLabel('Do chop: usual minutes')).toHaveValue('27 min')
  await expect(told).toHaveCount(0)
  await saved(page)

  await page.goto('/dishes')
  await ready(page)
  const stew = page.getByRole('region', { name: 'Stew' })
  await expect(stew.getByText('Night 3, Sat 15 August')).toBeVisible()
  await stew.getByText('Two evenings before').click()
  await expect(stew.getByText('Night 1, Sat 7 March')).toBeVisible()
  await stew.getByRole('radio', { name: 'With changes' }).first().check()
  await stew.getByLabel('What was left: Stew at Night 3').selectOption('about a quarter was left')
  // Eight, drawn halfway to the three quarters that were eaten.
  await expect(stew.getByText('For 8, make it for 7 next time: drawn from what was left.')).toBeVisible()
  await clean(page, 'one’s own dishes')
  await fits(page, 'one’s own dishes')
  await page.reload()
  await ready(page)
  await expect(stew.getByRole('radio', { name: 'With changes' }).first()).toBeChecked()
  await stew.getByRole('button', { name: 'Put Stew into the evening' }).click()
  await stew.getByRole('link', { name: 'See it there' }).click()
  await ready(page)
  await expect(page.getByRole('listitem', { name: /Step 1: Do chop/ })).toBeVisible()
  await close()
})
