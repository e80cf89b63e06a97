'use client'

import { useParams, useRouter, useSearchParams } from 'next/navigation'
import { useMemo } from 'react'
import css from '#app/_recipes/recipes.module.css'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button, LinkButton } from '#app/_ui/button.tsx'
import { Cloth } from '#app/_ui/cloth.tsx'
import { tightText } from '#app/_words/chance.ts'
import { clashText, clashTitle, remedyText } from '#app/_words/clash.ts'
import { clockText, countOf, listText, sentence } from '#app/_words/clock.ts'
import { namesOf } from '#app/_words/names.ts'

/** What the first running order of a new evening says, in one look: it works, or it clashes here. Until it is put away. */
export function FirstVerdict() {
  const { evening, order } = usePlan()
  const router = useRouter()
  const isFirst = useSearchParams().get('first') !== null
  const id = String(useParams().id ?? evening.id)
  const names = useMemo(() => namesOf(evening), [evening])
  if (!isFirst || evening.steps.length === 0) return null
  // What clashes in a first answer often does not in the better one a second later.
  const planned = order.kind === 'current' && !(order.more && order.order.clashes.length > 0) ? order.order : null
  const clash = planned?.clashes[0]
  const more = (planned?.clashes.length ?? 0) - 1
  const way = clash?.ways[0]
  const tight = planned && order.kind === 'current' && !order.more ? tightText(planned.courses, names) : null
  const assumed = evening.dishes.filter((dish) => dish.notes !== '').length
  return (
    <div className={css.verdict}>
      <Cloth label="The first running order">
        <div role="status">
          {planned === null ? (
            <>
              <h2>
                {order.kind === 'failed' ? 'It could not be planned' : 'Your evening is made; its order is being worked out'}
              </h2>
              <p>{order.kind === 'failed' ? order.why : 'This takes a few seconds. Every dish is on the menu already.'}</p>
            </>
          ) : clash === undefined ? (
            <>
              <h2 className={css.works}>{tight ? 'This works, but it is tight' : 'This works'}</h2>
              <p>
                {listText(
                  planned.courses.map(
                    (course) => `${names.courseName(course.course)} ${clockText(course.toTable, evening.zone)}`,
                  ),
                )}
                : every course is ready when it is wanted, in this kitchen, with{' '}
                {listText(evening.cooks.map((cook) => cook.name))}.
              </p>
              {tight ? <p>{tight}</p> : null}
            </>
          ) : (
            <>
              <h2 className={css.clashes}>This clashes here</h2>
              <p>
                <b>{clashTitle(clash, evening.zone)}.</b> {clashText(clash, names, planned.cues)}
              </p>
              {way ? (
                <p>
                  <b>A way out:</b> {remedyText(way, names, evening)}. {way.said}
                </p>
              ) : null}
              {more > 0 ? <p>And {countOf(more, 'more clash', 'more clashes')}, told below.</p> : null}
            </>
          )}
          {assumed > 0 ? (
            <p>
              {assumed === 1
                ? 'One dish has something that was assumed or not understood: it stands in the notes of the dish.'
                : `${sentence(countOf(assumed, 'dish', 'dishes'))} have things that were assumed or not understood: they stand in the notes of each dish.`}
            </p>
          ) : null}
        </div>
        <div className={css.choices}>
          <LinkButton href={`/evenings/${id}/menu`}>Refine the menu</LinkButton>
          <LinkButton href={`/evenings/${id}/cooks`} tone="soft">
            Cooks and kitchen
          </LinkButton>
          <Button tone="soft" onClick={() => router.replace(`/evenings/${id}/order`, { scroll: false })}>
            Put this away
          </Button>
        </div>
      </Cloth>
    </div>
  )
}
