import { expect, type Page, test } from '@playwright/test'
import { cleanText } from '#lib/domain/atoms.ts'
import { printEvening } from '#lib/domain/parse.ts'
import { loadEvening } from '#tests/support/load-evening.ts'
import { PAYLOADS } from '#tests/support/recipes/payloads.ts'
import { newPerson, ready, saved } from './people.ts'
import { proveTripwire, watch } from './tripwire.ts'

const PER_DISH = 12

/** Every second one: the phone's and the wide screen's tests show all of them together. */
const payloadsFor = (project: string): readonly string[] => PAYLOADS.filter((_, at) => (at % 2 === 0) === (project === 'phone'))

/** Recipes that say each payload twice: as a food and as what is done. */
const recipesOf = (payloads: readonly string[]): string =>
  Array.from({ length: Math.ceil(payloads.length / PER_DISH) }, (_, dish) => {
    const own = payloads.slice(dish * PER_DISH, (dish + 1) * PER_DISH)
    const lines = own.map((text, at) => `${at + 1} g powder ${text}`)
    const steps = own.map((text, at) => `${at + 1}. Stir in ${text} for 1 minute.`)
    return [
      `Dish number ${'ABCDEFGHIJKLMNOP'.charAt(dish)}`,
      'Serves 6',
      '',
      'Ingredients',
      ...lines,
      '',
      'Method',
      ...steps,
    ].join('\n')
  }).join('\n\n\n')

// Controls, marks of direction and halves of characters may be dropped, and white space may change; nothing else.
const bare = (text: string): string => text.normalize('NFC').replace(/[\p{C}\p{Z}\s]+/gu, '')

/** Everything that stands on the page as text, in fields too. */
const shown = async (page: Page): Promise<string> =>
  bare(
    await page.evaluate(() =>
      [
        document.body.textContent,
        ...Array.from(
          document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>('input, textarea'),
          (field) => field.value,
        ),
      ].join('\n'),
    ),
  )

/** The payloads of which some piece is not on the page as it was written; lines and semicolons part a recipe's steps. */
const missing = async (page: Page, payloads: readonly string[]): Promise<readonly string[]> => {
  const text = await shown(page)
  return payloads.filter((payload) => payload.split(/[\n\r\u0085\u2028\u2029;]/u).some((line) => !text.includes(bare(line))))
}

test('E10 recipes full of what would run, load or hide elsewhere are shown as text: preview, menu, dish, order', async ({
  browser,
  baseURL,
}, info) => {
  test.setTimeout(300_000)
  expect(PAYLOADS.length).toBeGreaterThanOrEqual(200)
  const payloads = payloadsFor(info.project.name)
  expect(payloads.length).toBeGreaterThanOrEqual(100)
  const { page } = await newPerson(browser, 'Vic', `vic-${info.project.name}@example.test`, baseURL)
  const wire = await watch(page)
  await page.goto('/evenings/new')
  await ready(page)
  await page.getByLabel('Paste a menu or recipes').fill(recipesOf(payloads))
  await expect(page.getByRole('heading', { name: 'What was understood' })).toBeVisible()
  const folded = page.getByRole('button', { name: /^Look over/ })
  while ((await folded.count()) > 0) await folded.first().click()
  expect(await missing(page, payloads), 'in the preview').toEqual([])
  expect(wire.found, 'in the preview').toEqual([])

  await page.getByLabel('What is it called?').fill('Supper <img src=x onerror=tripped()>')
  await page.getByLabel('What is it called?').press('Enter')
  await page.getByRole('button', { name: 'Make the running order' }).click()
  await page.waitForURL(/\/evenings\/[^/]+\/order/)
  const evening = new URL(page.url()).pathname.replace('/order', '')
  await page.goto(`${evening}/menu`)
  await ready(page)
  const dishes = await page
    .getByRole('link', { name: /Dish number/ })
    .evaluateAll((links) =>
      [...new Set(links.map((link) => link.getAttribute('href') ?? ''))].filter((href) => href.includes('/menu/')),
    )
  expect(dishes).toHaveLength(Math.ceil(payloads.length / PER_DISH))
  for (const [dish, href] of dishes.entries()) {
    await page.goto(href)
    await ready(page)
    expect(await missing(page, payloads.slice(dish * PER_DISH, (dish + 1) * PER_DISH)), `in dish ${dish + 1}`).toEqual([])
  }
  await page.goto(`${evening}/order?view=list`)
  await ready(page)
  await expect(page.getByRole('listitem').filter({ hasText: 'Stir in' }).first()).toBeVisible()
  expect(await missing(page, payloads), 'in the order').toEqual([])
  await page.goto(`${evening}/order`)
  await ready(page)
  await saved(page)
  expect(wire.found).toEqual([])
  await proveTripwire(page, wire)
})

test('E10 names full of the same, from a file, are shown as text on every screen', async ({ browser, baseURL }, info) => {
  test.setTimeout(300_000)
  const { page } = await newPerson(browser, 'Wim', `wim-${info.project.name}@example.test`, baseURL)
  const wire = await watch(page)
  const payloads = payloadsFor(info.project.name).filter((text) => text.length <= 110 && !/[\n\r\u0085\u2028\u2029]/u.test(text))
  let next = 0
  const name = (): string => {
    const text = payloads[next % payloads.length] ?? ''
    next += 1
    return cleanText(`x ${text}`, false)
  }
  const lamb = loadEvening('a-lamb')
  const evening = {
    ...lamb,
    name: name(),
    kitchens: lamb.kitchens.map((each) => ({ ...each, name: name() })),
    cooks: lamb.cooks.map((each) => ({ ...each, name: cleanText(`${each.name} <b>&amp;`, false) })),
    courses: lamb.courses.map((each) => ({ ...each, name: name() })),
    dishes: lamb.dishes.map((each) => ({ ...each, name: name(), notes: name() })),
    steps: lamb.steps.map((each) => ({ ...each, does: name() })),
    ingredients: lamb.ingredients.map((each) => ({ ...each, food: name() })),
  }
  expect(next).toBeGreaterThanOrEqual(40)
  await page.goto('/evenings/new')
  await ready(page)
  await page
    .getByLabel('Evening file')
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from(printEvening(evening)) })
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await page.waitForURL(/\/evenings\/[^/]+\/menu$/)
  await ready(page)
  await saved(page)
  const at = new URL(page.url()).pathname.replace('/menu', '')
  expect(
    await missing(
      page,
      evening.dishes.map((dish) => dish.name),
    ),
    'on the menu',
  ).toEqual([])
  for (const dish of evening.dishes) {
    await page.goto(`${at}/menu/${dish.id}`)
    await ready(page)
    const own = evening.steps.filter((step) => step.dish === dish.id).map((step) => step.does)
    expect(await missing(page, [dish.name, ...own]), dish.id).toEqual([])
  }
  for (const path of [`${at}/cooks`, `${at}/order?view=list`, `${at}/order`, '/']) {
    await page.goto(path)
    await ready(page)
  }
  expect(wire.found).toEqual([])
  await proveTripwire(page, wire)
})
