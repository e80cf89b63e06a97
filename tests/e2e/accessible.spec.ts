import { expect, type Page, test } from '@playwright/test'
import { DINNER } from './dinner.ts'
import { demoEveningId, inviteHousehold } from './household.ts'
import { tabTo } from './keyboard.ts'
import { clean, fits } from './look.ts'
import { bringLamb, demo, firstDemo, ready, signIn } from './people.ts'

/**
 * Every screen is looked at for what does not fit; axe, which takes a second or two of a screen, sees every other one on the
 * phone and those between where it is wide. `AXE=all` shows it all of them in both: that contrast holds in both themes has a
 * test of its own.
 */
const openLook = (isPhone: boolean) => {
  let count = 0
  return async (page: Page, what: string): Promise<void> => {
    await fits(page, what)
    count += 1
    if (process.env.AXE === 'all' || (count % 2 === 0) === isPhone) await clean(page, what)
  }
}

/** Opens whatever is folded: details at once, buttons one after the other, for opening one may bring others. */
const unfold = async (page: Page): Promise<void> => {
  const openDetails = () =>
    page.evaluate(() => {
      for (const each of document.querySelectorAll('main details')) each.setAttribute('open', '')
    })
  await openDetails()
  const folded = page.locator('main button[aria-expanded="false"]:visible')
  for (let clicks = 0; clicks < 30 && (await folded.count()) > 0; clicks += 1) await folded.first().click()
  await openDetails()
}

test('E5 every screen is free of what axe finds, light on a phone or dark where it is wide', async ({ page }, info) => {
  test.setTimeout(600_000)
  const look = openLook(info.project.name === 'phone')
  await page.emulateMedia({ colorScheme: info.project.name === 'phone' ? 'light' : 'dark', reducedMotion: 'reduce' })
  for (const path of ['/sign-in', '/sign-up']) {
    await page.goto(path)
    await ready(page)
    await look(page, path)
  }
  await signIn(page, firstDemo())
  await look(page, '/')
  const evening = `/evenings/${demoEveningId()}`
  for (const path of [
    '/evenings/new',
    '/account',
    '/dishes',
    `${evening}/menu`,
    `${evening}/chores`,
    `${evening}/drinks`,
    `${evening}/shopping`,
    `${evening}/bring`,
    `${evening}/history`,
    `${evening}/order?view=list`,
    `${evening}/order?view=share`,
    `${evening}/order`,
  ]) {
    await page.goto(path)
    await ready(page)
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
    if (path.includes('/order')) await expect(page.getByText('19:30').first()).toBeVisible()
    await look(page, path)
  }
  const link = await inviteHousehold(page, demoEveningId(), 'Noor', 2)
  await page.goto(link)
  await page.getByLabel('You: coming or not').selectOption('yes')
  await page.getByLabel('You: what is eaten').selectOption('but')
  await unfold(page)
  await look(page, 'a reply with everything open')
  await page.goto('/evenings/new')
  await ready(page)
  await page.getByLabel('Paste a menu or recipes').fill(DINNER)
  await expect(page.getByRole('heading', { name: 'What was understood' })).toBeVisible()
  await unfold(page)
  await look(page, 'a new evening with its preview')
  await page.getByLabel('Paste a menu or recipes').fill('')
  await page.goto(`${evening}/recipe`)
  await ready(page)
  await page.getByLabel('Paste a recipe').fill(DINNER.slice(DINNER.indexOf('Baked pears\nServes')))
  await expect(page.getByText('soft brown sugar').first()).toBeVisible()
  await unfold(page)
  await look(page, 'a recipe that comes in')
  await page.goto(`${evening}/cooks`)
  await ready(page)
  await unfold(page)
  await look(page, 'cooks and kitchens with everything open')
  await page.goto(`${evening}/guests`)
  await ready(page)
  await unfold(page)
  await look(page, 'guests with everything open')
  await page.goto(`${evening}/menu`)
  await ready(page)
  await page.getByRole('button', { name: 'Change the menu' }).click()
  await unfold(page)
  await look(page, 'the menu while it is changed, with everything open')
  await page
    .getByRole('link', { name: /^Method of/ })
    .nth(2)
    .click()
  await page.waitForURL(/\/menu\/.+/)
  await page
    .getByRole('listitem', { name: /^Step 1/ })
    .getByRole('button')
    .first()
    .click()
  await unfold(page)
  await look(page, 'a dish with its steps and everything else open')
})

test('E6 the main path goes by keyboard alone: sign in, change a step, claim it, read the order', async ({ page }, info) => {
  test.setTimeout(120_000)
  const { keyboard } = page
  const who = demo()[info.project.name === 'phone' ? 0 : 1] ?? { email: '', password: '' }
  await page.goto('/sign-in')
  await ready(page)
  await tabTo(page, /^E-mail address/)
  await keyboard.type(who.email)
  await tabTo(page, /^Password/)
  await keyboard.type(who.password)
  await keyboard.press('Enter')
  await page.waitForURL((url) => url.pathname === '/')
  const eveningId = await bringLamb(page)
  await page.goto(`/evenings/${eveningId}/menu`)
  await ready(page)
  await tabTo(page, /^Lamb shoulder/)
  await keyboard.press('Enter')
  await page.waitForURL(/\/menu\/lamb$/)
  await tabTo(page, /^Peel potatoes$/)
  await keyboard.press('Enter')
  await tabTo(page, /^Peel potatoes: usual minutes$/)
  await keyboard.press('Control+A')
  await keyboard.type('18 min')
  await keyboard.press('Enter')
  await expect(page.locator('[data-link]')).toHaveAttribute('data-link', 'saved')
  await tabTo(page, /^Give Peel potatoes to Kim$/)
  await keyboard.press('Enter')
  const dear = page.getByRole('button', { name: 'Give Peel potatoes to Kim all the same' })
  await expect(dear.or(page.getByText('Kim has this').first()).first()).toBeVisible()
  if (await dear.isVisible()) await keyboard.press('Enter')
  await expect(page.getByRole('listitem', { name: /Peel potatoes/ })).toContainText('Kim has this')
  await tabTo(page, /^Running order$|^Menu$/)
  await page.goto(`/evenings/${eveningId}/order?view=list`)
  await ready(page)
  await tabTo(page, /^Peel potatoes/)
  await keyboard.press('Enter')
  await expect(page.getByRole('listitem').filter({ hasText: 'Peel potatoes' }).first()).toContainText('Kim, 18 min')
})
