'use server'

import type { KnownNeed } from '#lib/domain/people.ts'
import { requireUser } from '#server/auth/who.ts'
import { needsFor } from '#server/guests/needs.ts'

/**
 * What guests keep away from, without names; null where that is not known of all of them, or not all of it told to this person. It is asked for apart
 * from the page, which a device keeps.
 */
export const needsToShopForAction = async (eveningId: string): Promise<readonly KnownNeed[] | null> => {
  const user = await requireUser()
  const found = await needsFor(user.id, eveningId)
  return found.ok && found.value.scope === 'all' && found.value.unknown === 0 ? found.value.needs : null
}
