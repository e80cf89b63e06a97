import type { Evening } from '#lib/domain/evening.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import { dishesOn } from './coverage.ts'
import { dishVerdict } from './dish-verdict.ts'
import { isSomething } from './verdict.ts'
import type { Warning } from './warning.ts'

const GRAVEST: readonly KnownNeed['grade'][] = ['severe', 'allergy', 'avoids', 'dislikes']

/**
 * The courses that have no dish known to be right for a need somebody has told. A dislike leaves something to eat and is not one of them.
 * Needs that are surely not met stand apart from those that are only not confirmed; the gravest first.
 */
export const nothingFor = (evening: Evening, needs: readonly KnownNeed[]): Warning[] =>
  evening.courses.flatMap((course) => {
    const dishes = dishesOn(evening, course.id)
    if (dishes.length === 0) return []
    const told = needs
      .filter(({ grade }) => grade !== 'dislikes')
      .toSorted((a, b) => GRAVEST.indexOf(a.grade) - GRAVEST.indexOf(b.grade))
    const found = told.map((need) => ({
      need,
      all: dishes.map((dish) => ({ dish, verdict: dishVerdict(evening, dish, [need]) })),
    }))
    const missing = found.filter(({ all }) => !all.some(({ verdict }) => isSomething(verdict)))
    const open = ({ all }: (typeof found)[number]) =>
      all.filter(({ verdict }) => verdict.kind === 'not-confirmed').map(({ dish }) => dish.id)
    const warning = (those: typeof found): Warning[] =>
      those.length === 0
        ? []
        : [
            {
              kind: 'nothing-for',
              course: course.id,
              needs: those.map(({ need }) => need),
              open: [...new Set(those.flatMap(open))],
            },
          ]
    return [
      ...warning(missing.filter((one) => open(one).length === 0)),
      ...warning(missing.filter((one) => open(one).length > 0)),
    ]
  })
