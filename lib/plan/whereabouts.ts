import * as z from 'zod/mini'
import { Id } from '#lib/domain/atoms.ts'

/** Where somebody is in the plan just now, as their device says it: the screen, and what is open on it, outermost first. */
export const Whereabouts = z.object({ screen: z.string().check(z.maxLength(40)), at: z.array(Id).check(z.maxLength(8)) })
export type Whereabouts = z.infer<typeof Whereabouts>

/** The same with who it is, which the server says. */
export const Shown = z.extend(Whereabouts, {
  who: z.object({ member: Id, cook: z.nullable(Id), name: z.string().check(z.maxLength(200)) }),
})
export type Shown = z.infer<typeof Shown>
