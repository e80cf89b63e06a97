import { expect, type Page, test } from '@playwright/test'
import { cook, course, dish, dishWith, evening, follows, role, step } from '#tests/support/evening-builders.ts'
import { tonightEvening } from '#tests/support/tonight-evening.ts'
import { tabTo } from './keyboard.ts'
import { clean } from './look.ts'
import { bringEvening, firstDemo, ready, signIn } from './people.ts'

const worded =
  (does: string) =>
  <T extends { readonly does: string }>(one: T): T => ({ ...one, does })

/** One course by one cook, all of it wanted at once: sit-down is two minutes away. */
const dinner = () =>
  evening(
    { name: 'Soup tonight', cooks: [cook('kim', ['home 12:00 23:30'], { name: 'Kim' })], covers: 4 },
    course(
      'soup',
      dish(
        'broth',
        dishWith({ name: 'Broth' }),
        step('stir', 9, worded('Stir the broth')),
        step('ladle', 4, role('plate'), follows('stir'), worded('Ladle the broth')),
      ),
    ),
  )

/** With a finger on a phone, with keys alone where it is wide. */
const presser =
  (page: Page, isPhone: boolean) =>
  async (name: RegExp): Promise<void> => {
    const button = page.getByRole('button', { name })
    await expect(button.first()).toBeVisible()
    if (isPhone) return button.first().click()
    // A new order, or a course whose plates are next, may bring another page under the keys on the way.
    await expect(async () => {
      await page.evaluate(() => (document.activeElement instanceof HTMLElement ? document.activeElement.blur() : undefined))
      await tabTo(page, name)
    }).toPass({ timeout: 30_000 })
    await page.keyboard.press('Enter')
  }

test('U50 U54 a night is told by one tap or key each: begun, done, taken back, longer, to the table', async ({ page }, info) => {
  const isPhone = info.project.name === 'phone'
  const press = presser(page, isPhone)
  await signIn(page, firstDemo())
  const id = await bringEvening(page, tonightEvening(dinner(), Date.now(), 2))
  await page.goto(`/evenings/${id}/tonight`)
  await ready(page)
  await press(/^Begin the evening$/)
  if (isPhone) await press(/^Kim$/)
  const verb = page.getByRole('heading', { level: 1 })
  await expect(verb).toHaveText('Stir the broth')

  const main = page.getByRole('button', { name: 'Done: Stir the broth', exact: true })
  const [box, view] = [await main.boundingBox(), page.viewportSize()]
  expect(box?.height, 'hit with a knuckle').toBeGreaterThanOrEqual(88)
  expect((box?.y ?? 0) + (box?.height ?? 0), 'seen without scrolling').toBeLessThanOrEqual(view?.height ?? 0)
  await clean(page, 'the board')

  await press(/^Done: Stir the broth$/)
  await expect(verb).not.toHaveText('Stir the broth')
  await press(/^Take it back$/)
  await expect(verb).toHaveText('Stir the broth')
  await press(/^10 minutes longer: Stir the broth$/)
  await expect(page.getByText('10 min longer: Stir the broth.')).toBeVisible()
  await press(/^Done: Stir the broth$/)
  await press(/ladle the broth$/i)
  await press(/^Course soup to table$/)
  await expect(page.getByText('Every course is out')).toBeVisible()
})
