import { networkInterfaces } from 'node:os'
import { expect, type Locator, type Page, test } from '@playwright/test'
import type { Step } from '#lib/domain/menu.ts'
import { openCable } from '#tests/support/cable.ts'
import {
  claim,
  cook,
  cooks,
  course,
  courseWith,
  dish,
  dishWith,
  evening,
  follows,
  role,
  step,
} from '#tests/support/evening-builders.ts'
import { tonightEvening } from '#tests/support/tonight-evening.ts'
import { clean, fits } from './look.ts'
import { badge, ready } from './people.ts'
import { seated } from './seated.ts'

test.describe.configure({ timeout: 180_000 })

/** For what waits until the order has been planned again, also on a busy machine. */
const LONG = { timeout: 30_000 }
const NEXT_MINUTE = { timeout: 75_000 }
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true }

const words = (does: string) => (each: Step) => ({ ...each, does })

/** A soup for which three cooks must begin at once, or it comes later still: it cannot be in time. And a pie for later. */
const supper = () =>
  tonightEvening(
    evening(
      {
        name: 'Soup tonight',
        cooks: [
          cook('ada', undefined, { name: 'Ada' }),
          cook('bo', undefined, { name: 'Bo' }),
          cook('cyd', undefined, { name: 'Cyd' }),
        ],
        claims: [
          claim('stir', 'ada'),
          claim('chop', 'bo'),
          claim('whip', 'cyd'),
          claim('ladle', 'ada', 'bo'),
          claim('slice', 'cyd'),
        ],
      },
      course(
        'soup',
        courseWith({ name: 'Soup' }),
        dish(
          'broth',
          dishWith({ name: 'Broth' }),
          step('stir', 24, words('Stir the broth')),
          step('ladle', 4, words('Ladle the soup'), follows('stir'), cooks(2), role('plate')),
        ),
        dish('herbs', dishWith({ name: 'Herbs' }), step('chop', 24, words('Chop the herbs'))),
        dish('cream', dishWith({ name: 'Cream' }), step('whip', 28, words('Whip the cream'))),
      ),
      course(
        'main',
        courseWith({ name: 'Pie' }),
        dish('pie', dishWith({ name: 'Pie' }), step('slice', 30, words('Slice the apples'))),
      ),
    ),
    Date.now(),
    3,
  )

const server = () => new URL(process.env.TABLEWARD_ADDRESS ?? '')

/** Plain http as a phone in the kitchen has it: an address of this machine that is not localhost, or the name that stands for one. */
const otherAddress = (): string => {
  const found = Object.values(networkInterfaces())
    .flat()
    .find((one) => one && one.family === 'IPv4' && !one.internal)
  return `http://${found?.address ?? 'kitchen.test'}:${server().port}`
}

const stage = (page: Page) => page.locator('main[data-phase]')
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).first()
/** Beside the board the plates' page has the same tap under a shorter name. */
const done = (page: Page, what: string) => page.getByRole('button', { name: new RegExp(`^Done:? ${what}$`, 'i') }).first()
const lateBy = async (page: Page): Promise<number> => Number(/(\d+) late/.exec((await stage(page).textContent()) ?? '')?.[1] ?? 0)

/** What the server has of the night, without the moments. */
const toldOf = async (page: Page, eveningId: string): Promise<readonly string[]> => {
  const { night } = (await (await page.request.get(`/api/evenings/${eveningId}/file`)).json()) as {
    night: { step?: string; done?: string; extra?: string; course?: string; toTable?: string }[]
  }
  return night
    .flatMap((fact) => [
      ...(fact.extra ? [`${fact.step} ${fact.extra}`] : []),
      ...(fact.done ? [`${fact.step} done`] : []),
      ...(fact.toTable ? [`${fact.course} to table`] : []),
    ])
    .sort()
}

test('E11 a night is cooked on a tablet and two phones, one on plain http and one that is cut off: a slip is answered on all, and no tap is lost', async ({
  browser,
}) => {
  const cable = await openCable(() => Number(server().port))
  const { eveningId, pages, close } = await seated(
    browser,
    supper(),
    [
      { name: 'Ada', cook: 'ada', baseURL: server().origin },
      { name: 'Bo', cook: 'bo', baseURL: otherAddress(), how: PHONE },
      { name: 'Cyd', cook: 'cyd', baseURL: `http://localhost:${cable.port}`, how: PHONE },
    ],
    'tonight',
  )
  const [ada, bo, cyd] = pages
  if (!ada || !bo || !cyd) throw new Error('three pages')
  expect(await bo.evaluate(() => window.isSecureContext)).toBe(false)

  await button(ada, 'Begin the evening').click(LONG)
  for (const page of pages) await expect(stage(page)).toHaveAttribute('data-phase', 'cooking', LONG)
  await expect(stage(ada)).toHaveAttribute('data-shape', 'worktop')
  await expect(stage(bo)).toHaveAttribute('data-shape', 'mine')
  // One cook is large on the worktop, whoever is the most urgent.
  const own = button(ada, 'I’ve got it: Stir the broth')
  await expect(async () => {
    if (!(await own.isVisible())) await button(ada, 'Show Ada large').click({ timeout: 2_000 })
    await own.click({ timeout: 2_000 })
  }).toPass(LONG)
  // What is told moves what nobody has begun, by a minute perhaps: it is offered again when that has come.
  await button(bo, 'I’ve got it: Chop the herbs').click(NEXT_MINUTE)
  await button(cyd, 'I’ve got it: Whip the cream').click(NEXT_MINUTE)
  // While it is being planned again it does not stand there how late.
  let before = 0
  const look = async () => {
    before = await lateBy(ada)
    return before
  }
  await expect.poll(look, LONG).toBeGreaterThan(10)

  // A slip on one phone is a new order on the others.
  await button(bo, '20 minutes longer: Chop the herbs').click()
  for (const page of [ada, cyd]) {
    await expect.poll(() => lateBy(page), LONG).toBeGreaterThanOrEqual(before + 15)
    await expect(stage(page)).toContainText('because of the herbs', LONG)
  }

  // A phone without a connection takes the tap, says that it has gone nowhere yet, and brings it when there is one.
  cable.pull()
  await expect(badge(cyd)).toHaveAttribute('data-link', 'offline', LONG)
  await done(cyd, 'Whip the cream').click()
  await expect(badge(cyd)).toContainText('one tap kept on this device')
  await expect(done(cyd, 'Whip the cream')).toBeHidden(LONG)
  await expect(done(ada, 'Whip the cream')).toBeVisible()
  cable.plugIn()
  await expect(done(ada, 'Whip the cream')).toBeHidden(LONG)
  await expect(badge(cyd)).toHaveAttribute('data-link', 'saved', LONG)

  // What two do together is told by both at once, and is done once.
  await done(ada, 'Stir the broth').click()
  await done(bo, 'Chop the herbs').click()
  // Both have the button in hand before either taps: a finger that looked again would find it gone by the other's tap.
  const both = await Promise.all([ada, bo].map((page) => done(page, 'Ladle the soup').elementHandle(LONG)))
  await Promise.all(both.map((tap) => tap?.evaluate((element) => (element as HTMLElement).click())))
  for (const page of pages) await expect(button(page, 'Soup to table')).toBeVisible(LONG)
  await button(bo, 'Soup to table').click()
  for (const page of pages) await expect(stage(page)).toContainText('Pie to table', LONG)

  for (const page of pages) {
    await page.reload()
    await ready(page)
    await expect(badge(page)).toHaveAttribute('data-link', 'saved', LONG)
    await expect(stage(page)).toContainText('Pie to table', LONG)
    for (const what of ['Stir the broth', 'Chop the herbs', 'Whip the cream', 'Ladle the soup'])
      await expect(done(page, what)).toBeHidden()
  }
  expect(await toldOf(ada, eveningId)).toEqual([
    'chop PT20M',
    'chop done',
    'ladle done',
    'soup to table',
    'stir done',
    'whip done',
  ])
  await close()
  await cable.close()
})

/** Of a line to the first ground behind it, by WCAG 2.2's relative luminance. */
const contrast = (line: Locator): Promise<number> =>
  line.evaluate((element) => {
    const paint = document.createElement('canvas').getContext('2d')
    if (!paint) throw new Error('no canvas')
    const rgbOf = (colour: string) => {
      paint.clearRect(0, 0, 1, 1)
      paint.fillStyle = colour
      paint.fillRect(0, 0, 1, 1)
      return [...paint.getImageData(0, 0, 1, 1).data]
    }
    const luminance = (colour: string): number => {
      const [red = 0, green = 0, blue = 0] = rgbOf(colour).map((byte) => {
        const part = byte / 255
        return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
      })
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue
    }
    let behind: Element | null = element
    while (behind && rgbOf(getComputedStyle(behind).backgroundColor)[3] !== 255) behind = behind.parentElement
    if (!behind) throw new Error('no ground')
    const both = [luminance(getComputedStyle(element).color), luminance(getComputedStyle(behind).backgroundColor)]
    return (Math.max(...both) + 0.05) / (Math.min(...both) + 0.05)
  })

/** Width, height and theme, the themes in turn; the last one is 1280 px at 200 %. */
const LOOKS = [
  [390, 844, 'light'],
  [390, 844, 'dark'],
  [768, 1024, 'light'],
  [1280, 800, 'dark'],
  [640, 400, 'light'],
] as const

test('E12 the board fits at 390, 768 and 1280 px and at 200 %, light or dark, with nothing for axe to find and 7 : 1 on the line of now', async ({
  browser,
}) => {
  const { pages, close } = await seated(browser, supper(), [{ name: 'Ada', cook: 'ada', baseURL: server().origin }], 'tonight')
  const [ada] = pages
  if (!ada) throw new Error('a page')
  await button(ada, 'Begin the evening').click(LONG)
  await expect.poll(() => lateBy(ada), LONG).toBeGreaterThan(10)
  const line = stage(ada).getByRole('heading', { level: 1 })
  for (const [width, height, colorScheme] of LOOKS) {
    const what = `${width} px, ${colorScheme}`
    await ada.setViewportSize({ width, height })
    await ada.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
    await expect(stage(ada)).toHaveAttribute('data-shape', width < 700 ? 'mine' : 'worktop')
    await expect(line).toHaveText('Stir the broth')
    await fits(ada, what)
    await clean(ada, what)
    // WCAG 2.2, 1.4.6 asks for 4.5 : 1 of large text; here it is 7 : 1, for it is read from across the kitchen.
    expect(await contrast(line), `${what}: the line of now`).toBeGreaterThanOrEqual(7)
  }
  await close()
})
