import { expect, test } from 'vitest'
import { namesOf } from '#app/_words/names.ts'
import { fightProvedText } from '#app/_words/wish.ts'
import { course, dish, evening, follows, step } from '#tests/support/evening-builders.ts'

test('N5 a proved fight is said in words, each kind of wish in its own', () => {
  const names = namesOf(evening(course('main', dish('roast', step('rest', 10), step('carve', 5, follows('rest', 0, 3))))))
  expect(fightProvedText(['sit-down main'], names)).toBe('Nobody can have Course main when you sit down.')
  expect(fightProvedText(['lag rest carve', 'keeps roast', 'carry roast', 'wait main'], names)).toBe(
    'Nobody can have all of these: “Do carve” in time after “Do rest”, Dish roast no longer than it keeps, Dish roast not too long on its way and no long wait for Course main.',
  )
})
