import type { Browser } from '@playwright/test'
import type { Evening } from '#lib/domain/evening.ts'
import {
  cook,
  course,
  dish,
  dishWith,
  evening,
  follows,
  HOME_KIT,
  kitchen,
  oven,
  role,
  step,
} from '#tests/support/evening-builders.ts'
import { type Seated, seated } from './seated.ts'

const worded =
  (does: string) =>
  <T extends { readonly does: string }>(one: T): T => ({ ...one, does })

/** Ada cooks a pie that fills her oven before the main; the first course and the pudding are open. Bo and Cyd come from homes of their own. */
export const threeHomes = (): Evening =>
  evening(
    {
      name: 'From three homes',
      covers: 6,
      kitchens: [
        { ...kitchen('home', HOME_KIT), name: 'Ada’s kitchen' },
        {
          ...kitchen(
            'bos',
            HOME_KIT.map((kit) => ({ ...kit, id: `bo-${kit.id}` })),
            15,
          ),
          name: 'Bo’s kitchen',
        },
        {
          ...kitchen(
            'cyds',
            HOME_KIT.map((kit) => ({ ...kit, id: `cyd-${kit.id}` })),
            20,
          ),
          name: 'Cyd’s kitchen',
        },
      ],
      cooks: [
        cook('ada', ['home 12:00 23:30'], { name: 'Ada' }),
        cook('bo', ['bos 14:00 18:20', 'home 18:40 23:30'], { name: 'Bo', host: false }),
        cook('cyd', ['cyds 14:00 18:20', 'home 18:45 23:30'], { name: 'Cyd', host: false }),
      ],
    },
    { ...course('first'), course: { ...course('first').course, name: 'First course' } },
    {
      ...course('main'),
      course: { ...course('main').course, name: 'Main' },
      dishes: [
        dish(
          'pie',
          dishWith({ name: 'Leek pie', yields: 6, keeps: { how: 'hot', most: 'PT5M', kind: 'quality', uses: [] } }),
          step('fill', 20, worded('Fill the pie')),
          step('bake', 45, oven(200, 210, { shelves: 2 }), follows('fill'), worded('Bake the pie')),
          step('cut', 4, role('plate'), follows('bake', 0, 5), worded('Cut the pie')),
        ),
      ],
    },
    { ...course('last'), course: { ...course('last').course, name: 'Pudding' } },
  )

/** Three phones: Ada’s, who is the host, Bo’s and Cyd’s, all at what is brought. */
export const threePhones = (browser: Browser, made: Evening, baseURL: string): Promise<Seated> =>
  seated(
    browser,
    made,
    (['Ada', 'Bo', 'Cyd'] as const).map((name) => ({
      name,
      cook: name.toLowerCase(),
      baseURL,
      how: { viewport: { width: 390, height: 844 }, hasTouch: true },
    })),
    'bring',
  )
