'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useMemo } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Fold } from '#app/_ui/fold.tsx'
import { dishColour } from '#app/_ui/plate.tsx'
import { PlateState } from '#app/_ui/plate-state.tsx'
import { bringText } from '#app/_words/bring.ts'
import { countOf, sentence } from '#app/_words/clock.ts'
import { missingText } from '#app/_words/missing.ts'
import type { Names } from '#app/_words/names.ts'
import type { Offer } from '#lib/domain/offer.ts'
import { headsOf } from '#lib/domain/portions.ts'
import { iceGrams } from '#lib/drinks/amounts.ts'
import { type Missing, missingOf } from '#lib/potluck/missing.ts'
import css from './bring.module.css'
import { HouseWords } from './house-words.tsx'
import type { MissingByNeed } from './missing-by-need.ts'
import { offerFor } from './offer-for.ts'

interface Props {
  readonly names: Names
  readonly byNeed: MissingByNeed
  /** Somebody wants to bring something for it. */
  readonly onBring: (offer: Offer) => void
}

/** What nobody brings yet, by course and then for the table; a tap on one begins the sentence that offers it. */
export function MissingList({ names, byNeed, onBring }: Props) {
  const { evening, me, onGuests } = usePlan()
  const router = useRouter()
  useEffect(() => onGuests(() => router.refresh()), [onGuests, router])
  useFresh(JSON.stringify([evening.dishes, evening.ingredients, evening.offers?.map(({ suits }) => suits)]), router.refresh)
  const missing = useMemo(() => {
    const plain = missingOf(evening, { gaps: null, unknown: 0, iceGrams: iceGrams(headsOf(evening), evening.drinks) })
    // Those of a course beside what else it lacks.
    const place = (each: Missing) => ('course' in each ? evening.courses.findIndex(({ id }) => id === each.course) : 999)
    return [...plain, ...byNeed].toSorted((a, b) => place(a) - place(b))
  }, [evening, byNeed])
  const [first, open] = [missing.filter(({ kind }) => kind !== 'not-said'), missing.filter(({ kind }) => kind === 'not-said')]
  const isHost = me?.role === 'host'
  const cook = me?.cook ?? null
  return (
    <section aria-labelledby="missing">
      <h2 id="missing">Still missing</h2>
      {first.length === 0 ? <p className={css.quiet}>Nothing, as far as is known.</p> : null}
      <ul>
        {first.map((each) => (
          <Line key={keyOf(each)} missing={each} names={names} cook={cook} onBring={onBring} />
        ))}
      </ul>
      {isHost ? (
        <Fold title={open.length === 0 ? 'What the house has' : `What the house has: ${countOf(open.length, 'thing')} not said`}>
          <HouseWords />
        </Fold>
      ) : open.length > 0 ? (
        <p className={css.quiet}>{sentence(countOf(open.length, 'thing'))} of the house nobody has counted yet.</p>
      ) : null}
    </section>
  )
}

/** What the page worked out of needs is asked for again when the plan has changed. */
const useFresh = (of: string, refresh: () => void) => {
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever the plan says something else
  useEffect(() => {
    const timer = setTimeout(refresh, SETTLED_MS)
    return () => clearTimeout(timer)
  }, [of])
}
/** An edit is with the server by then. */
const SETTLED_MS = 1_500

const keyOf = (missing: Missing): string =>
  [
    missing.kind,
    'course' in missing ? missing.course : '',
    'needs' in missing ? missing.needs.map(({ need, grade }) => `${need} ${grade}`).join() : '',
    'thing' in missing ? missing.thing : '',
    'tool' in missing ? missing.tool : '',
  ].join(' ')

interface LineProps {
  readonly missing: Missing
  readonly names: Names
  readonly cook: string | null
  readonly onBring: (offer: Offer) => void
}

function Line({ missing, names, cook, onBring }: LineProps) {
  const { evening } = usePlan()
  const at = 'course' in missing ? evening.courses.findIndex(({ id }) => id === missing.course) : 3
  const waiting = missing.offers.length
  const asked = bringText(missing)
  return (
    <li className={css.lack}>
      <PlateState
        standing={missing.kind === 'needs-unknown' || missing.offers.length > 0 ? 'not-confirmed' : 'does-not'}
        colour={dishColour(at)}
        size={40}
      />
      <div>
        <p>
          {sentence(missingText(missing, names))}.{waiting > 0 ? ` ${sentence(countOf(waiting, 'offer'))} may do.` : ''}
        </p>
        {cook !== null && asked !== null ? (
          <button
            type="button"
            className={css.press}
            aria-label={'course' in missing ? `${asked}, for ${names.courseName(missing.course)}` : asked}
            onClick={() => {
              const offer = offerFor(evening, cook, missing, newId())
              if (offer) onBring(offer)
            }}
          >
            {asked}
          </button>
        ) : null}
      </div>
    </li>
  )
}
