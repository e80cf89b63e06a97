import { describe, expect, test } from 'vitest'
import { LONGEST_MENU, type MenuPreview, readMenu } from '#lib/recipes/menu.ts'

const told = (menu: MenuPreview) => menu.courses.map((course) => [course.name, ...course.dishes.map((dish) => dish.value)])

describe('a pasted menu', () => {
  test('Z8 courses by heading on one line, dishes cut at "with", the cut ones not certain', () => {
    const text = 'Starter: Celeriac soup / Main: Lamb shoulder with roast potatoes, red cabbage and beans / Pudding: Lemon posset'
    const menu = readMenu(text)
    expect(told(menu)).toEqual([
      ['Starter', 'Celeriac soup'],
      ['Main', 'Lamb shoulder', 'roast potatoes', 'red cabbage', 'beans'],
      ['Pudding', 'Lemon posset'],
    ])
    const dishes = menu.courses.flatMap((course) => course.dishes)
    expect(dishes.map((dish) => dish.certain)).toEqual([true, false, false, false, false, true])
    for (const dish of dishes) expect(text.slice(dish.from, dish.to)).toBe(dish.value)
  })
  test('Z8 headings with lines below, a welcome before, sides with their main', () => {
    const menu = readMenu(
      'Canapés\n- Cheese straws\n- Olives\n\nto start\nTrout, cucumber and rye\n\nMAINS\nPork belly\nsides:\nGreens\nMash\n\nDessert – Plum tart',
    )
    expect(told(menu)).toEqual([
      ['Canapés', 'Cheese straws', 'Olives'],
      ['To start', 'Trout, cucumber and rye'],
      ['MAINS', 'Pork belly', 'Greens', 'Mash'],
      ['Dessert', 'Plum tart'],
    ])
    expect(menu.courses.map((course) => course.welcome)).toEqual([true, false, false, false])
  })
  test('Z8 three lines without headings are starter, main and dessert; four are numbered', () => {
    expect(told(readMenu('Soup\nFish and chips\nApple crumble'))).toEqual([
      ['Starter', 'Soup'],
      ['Main', 'Fish and chips'],
      ['Dessert', 'Apple crumble'],
    ])
    expect(readMenu('a\nb\nc\nd').courses.map((course) => course.name)).toEqual(['Course 1', 'Course 2', 'Course 3', 'Course 4'])
  })
  test('Z8 what stands before two or more headings is talk, left over; before one it may be a course', () => {
    const menu = readMenu('Von: Ilse\n> see you saturday!\nMENU for eight, 19.30\nStarter: Leek tart\nMain: Beef olives')
    expect(told(menu)).toEqual([
      ['Starter', 'Leek tart'],
      ['Main', 'Beef olives'],
    ])
    expect(menu.leftOver.map((line) => line.text)).toEqual(['Von: Ilse', '> see you saturday!', 'MENU for eight, 19.30'])
    expect(told(readMenu('Pea soup\nMain: Lamb'))).toEqual([
      ['Course 1', 'Pea soup'],
      ['Main', 'Lamb'],
    ])
  })
  test('Z8 nothing is nothing, and what is too long is left over', () => {
    expect(readMenu(' \n - \n')).toEqual({ courses: [], leftOver: [] })
    expect(readMenu('soup\n'.repeat(LONGEST_MENU)).leftOver.length).toBeGreaterThan(0)
  })
})
