import type { Evening } from '#lib/domain/evening.ts'
import type { Offer } from '#lib/domain/offer.ts'
import type { Says } from '#lib/potluck/become.ts'
import type { Variant } from '#lib/potluck/variant.ts'
import { listText } from './clock.ts'
import { keptWords } from './offer-how.ts'

const LONGEST = 400

/** "in the blue tin, in the cool box": what it travels in. */
export const packedText = ({ vessel, box }: Pick<Offer, 'vessel' | 'box'>): string =>
  [vessel, box].flatMap((one) => (one?.name.trim() ? [`in ${one.name.trim()}`] : [])).join(', ')

const joined = (...parts: readonly string[]): string => parts.filter(Boolean).join(', ').slice(0, LONGEST)

/** What the steps of an accepted dish say, in the form in which it was accepted. */
export const saysOf = (evening: Evening, offer: Offer, form: Pick<Offer, 'how' | 'arrives' | 'box'>, variant: Variant): Says => {
  const name = offer.name.trim() || 'what you bring'
  const who = evening.cooks.find(({ id }) => id === offer.cook)?.name.trim() || 'its owner'
  const meant = (offer.suits ?? []).map((need) => need.replaceAll('-', ' '))
  return {
    make: joined(variant.kind === 'hot' ? `Make ${name} and heat it last thing` : `Make ${name}`),
    chill:
      variant.kind === 'cold'
        ? `Put ${name} into shallow boxes and chill it in the fridge`.slice(0, LONGEST)
        : `Keep ${name} in the ${form.how === 'frozen' ? 'freezer' : 'fridge'} until you leave`.slice(0, LONGEST),
    carry: joined(`Carry ${name} ${keptWords[form.how]}`, packedText({ vessel: offer.vessel, box: form.box })),
    fridge: `Put ${name} in the ${form.how === 'frozen' ? 'freezer' : 'fridge'} here`.slice(0, LONGEST),
    heat: `Heat ${name}`.slice(0, LONGEST),
    hot: form.arrives === 'to-heat' ? 'steaming hot throughout' : 'hot',
    finish: (form.arrives === 'to-assemble' ? `Put ${name} together` : `Finish ${name}`).slice(0, LONGEST),
    plate: `Plate: ${name}`.slice(0, LONGEST),
    giveBack: joined(`Wash ${offer.vessel?.name.trim() || `what ${name} came in`} and give it back to ${who}`),
    notes:
      meant.length === 0
        ? ''
        : `${who} means it for: ${listText(meant)}. It counts once the ingredients are written down and the labels are read.`,
  }
}
