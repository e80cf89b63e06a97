import { z } from 'zod'
import { Id } from '#lib/domain/atoms.ts'

/** Where somebody is in the plan just now, as their device says it: the screen, and what is open on it, outermost first. */
export const Whereabouts = z.object({ screen: z.string().max(40), at: z.array(Id).max(8) })
export type Whereabouts = z.infer<typeof Whereabouts>

/** The same with who it is, which the server says. */
export const Shown = Whereabouts.extend({
  who: z.object({ member: Id, cook: Id.nullable(), name: z.string().max(200) }),
})
export type Shown = z.infer<typeof Shown>
