import type { Evening } from '#lib/domain/evening.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import type { Known } from '#lib/potluck/missing.ts'
import { coverage } from '#lib/table/coverage.ts'
import { isSomething } from '#lib/table/verdict.ts'

/**
 * Courses in which no dish is known to be right for a need, each need looked at by itself, with the dishes that may be once somebody says
 * what is in them; needs of which these are the same are one gap. What somebody would rather not have is no gap.
 */
export const gapsOf = (evening: Evening, needs: readonly KnownNeed[]): NonNullable<Known['gaps']> => {
  const kept = needs.filter(({ grade }) => grade !== 'dislikes')
  const eaters = kept.map(({ need, grade }, at) => ({
    id: String(at),
    reply: 'yes' as const,
    needs: [{ need, grade }],
    drinks: 'unknown' as const,
    child: false,
  }))
  return coverage(evening, eaters).flatMap(({ course, guests }) => {
    const without = guests.filter(({ best }) => best !== null && !isSomething(best.verdict))
    if (without.length === 0) return []
    const needsOf = new Map<string, { readonly open: readonly string[]; readonly needs: KnownNeed[] }>()
    for (const { guest, dishes } of without) {
      const open = dishes.flatMap(({ dish, verdict }) => (verdict.kind === 'not-confirmed' ? [dish] : []))
      const alike = needsOf.get(open.join()) ?? { open, needs: [] }
      const need = kept[Number(guest)]
      if (need) needsOf.set(open.join(), { open, needs: [...alike.needs, need] })
    }
    return [...needsOf.values()].map(({ open, needs: those }) => ({ course, needs: those, open }))
  })
}
