import { expect, test } from 'vitest'
import { Rules } from '#lib/domain/ingredient.ts'
import { dishVerdict } from '#lib/table/dish-verdict.ts'
import { expectedRow, LETTER, SITTERS, TABLE_DISHES, tableEvening } from '#tests/support/table-fixture.ts'

test.each(Rules.options)(
  'Y10 twenty guests at fifteen dishes get exactly the verdicts that were written by hand, under %s rules',
  (rules) => {
    const of = tableEvening(rules)
    expect(SITTERS).toHaveLength(20)
    expect(TABLE_DISHES).toHaveLength(15)
    const rows = SITTERS.map((sitter) => [
      sitter.id,
      TABLE_DISHES.map((id) => {
        const dish = of.dishes.find((each) => each.id === id)
        return dish ? LETTER[dishVerdict(of, dish, sitter.needs).kind] : '?'
      }).join(''),
    ])
    expect(rows).toEqual(SITTERS.map((sitter) => [sitter.id, expectedRow(sitter, rules)]))
  },
)
