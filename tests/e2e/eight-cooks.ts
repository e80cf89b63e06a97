import type { Browser } from '@playwright/test'
import { chores, cook, cooks, course, dish, dishWith, evening, leave, role, step } from '#tests/support/evening-builders.ts'
import { type Seated, seated } from './seated.ts'

export const EIGHT = ['Ada', 'Bo', 'Cyd', 'Dot', 'Eli', 'Fay', 'Gus', 'Hal'] as const

/** Eight cooks of one evening. All are there from noon but for Hal, who comes when the guests sit down. */
const dinner = () => {
  const early = EIGHT.slice(0, 7).map((name) => cook(name.toLowerCase(), ['home 12:00 23:30'], { name, host: name === 'Ada' }))
  const hal = cook('hal', ['home 19:25 23:30'], { name: 'Hal', host: false })
  return evening(
    { name: 'Eight at the stove', cooks: [...early, hal], covers: 10 },
    course(
      'soup',
      dish('broth', dishWith({ name: 'Broth' }), step('stir', 20), step('ladle', 4, cooks(2), role('plate'))),
      dish('relish', dishWith({ name: 'Relish' }), step('steep', 60, leave)),
    ),
    course('main', dish('pie', dishWith({ name: 'Pie' }), step('line', 25), step('fill', 15), step('cut', 6, role('plate')))),
    chores(step('lay', 15)),
  )
}

/** Eight people who cook together, in the order of EIGHT, at the menu; Ada is the host. `baseURL`: the server's, or that of a cable to it. */
export const eightCooks = (browser: Browser, baseURL: string): Promise<Seated> =>
  seated(
    browser,
    dinner(),
    EIGHT.map((name) => ({ name, cook: name.toLowerCase(), baseURL })),
    'menu',
  )
